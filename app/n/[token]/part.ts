import type { LinkWords } from "#lib/domain/consent/words-en.ts";
import type { LinkView } from "#lib/domain/paper/link-view.ts";
import type { Language } from "#lib/domain/say/language.ts";

/** What every part of a private page knows. */
export interface PartProps {
  readonly token: string;
  readonly view: LinkView;
  readonly language: Language;
  readonly words: LinkWords;
  /** The page comes back after a form that a browser without scripts sent. */
  readonly isPosted: boolean;
  /** Names the forms of the page as it was made now: what they send again is told by it. */
  readonly form: string;
}
