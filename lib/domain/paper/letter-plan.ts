import type { CallPurpose } from "../facts/household-call.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { PartyRole } from "../facts/party.ts";
import type { Report } from "../findings/report.ts";
import type { Language } from "../say/language.ts";
import type { Deed } from "../stops/stopped-by.ts";
import type { Day } from "../time/day.ts";
import type { Recipient } from "./addressed.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import type { LetterWords } from "./words-en.ts";

export type CautionKey = keyof LetterWords["caution"];

/** Households that are called about something on a day before it is announced. */
export interface CallAsked {
  readonly purpose: CallPurpose;
  /** Null: no day is set, so that nobody can have agreed to it. */
  readonly day: Day | null;
  /** Properties. */
  readonly places: readonly string[];
}

/** What on file calls for a letter, and from which day on a letter counts for that. */
interface Cause {
  readonly because: string;
  readonly since?: Day;
}

/**
 * All of one kind of letter but what lower rooms ask of it (facts/letter-kind.ts): to whom, what it
 * says and asks, what it may not go without.
 */
export interface LetterPlan {
  readonly title: Readonly<Record<Language, string>>;
  /** Another title for some of its readers; null: the usual one. */
  readonly titleFor?: (facts: LetterFacts) => string | null;
  /** Who gets it as the file stands, each party once for each property and tie-in it is about. */
  readonly recipients: (file: LineFile, report: Report) => Recipient[];
  /** Who gets a copy for their file where the letter goes to a property's owners; left out: nobody. */
  readonly copiesTo?: readonly PartyRole[];
  /** What each letter has to name besides its reader. */
  readonly about?: "tie-in" | "split" | "paper";
  /** It, or at least its reminder, goes only to those whom the file names for it. */
  readonly named?: "always" | "reminders";
  /** It lacks something without a day to reply by. */
  readonly wantsReply?: true;
  /** The day that it tells of, as what: an answer is of use only before it. Null: none is set. */
  readonly ahead?: (facts: LetterFacts) => { readonly what: string; readonly on: Day } | null;
  /** Whether it asks this reader for no consent, though its kind does. */
  readonly asksNothing?: (facts: LetterFacts) => boolean;
  /** The office’s own wording may stand in place of the sentences that are the same in every letter. */
  readonly ownProse?: true;
  /** What stands between greeting and cautions. */
  readonly body: (facts: LetterFacts) => LetterBlock[];
  /** The answers that a reader may tick; none where no answer is asked for. */
  readonly choices: (facts: LetterFacts) => readonly string[];
  /** Always, and in this order: no part of what an office can edit. */
  readonly cautions: readonly CautionKey[];
  /** Cautions on what does not happen at this reader’s. */
  readonly spared?: (facts: LetterFacts) => readonly CautionKey[];
  /** Each says in a sentence what to enter before it goes; null: nothing. */
  readonly gaps: readonly ((facts: LetterFacts) => string | null)[];
  /** Null: nothing on file calls for it now. Without this, nothing ever does by itself. */
  readonly due?: (file: LineFile, report: Report) => Cause | null;
  /** What it does or announces, and holds may stop. */
  readonly deeds?: (file: LineFile, report: Report) => readonly Deed[];
  readonly callsFirst?: (
    file: LineFile,
    report: Report,
    propertyId: string | null,
  ) => readonly CallAsked[];
}
