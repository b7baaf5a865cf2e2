import { insertUse, insertWording, listUses, listWordings } from "#db/queries/wording.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import { HOUSE_WORDING } from "#lib/domain/facts/wording.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import { parseWording, type WordingProblem } from "#lib/domain/wording/parse-wording.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

interface Which {
  readonly kind: LetterKind;
  readonly language: Language;
}

/**
 * Saves a wording as a new version, which is not in use yet. Refuses what `parseWording` refuses, each
 * problem with its line, and where somebody saved another version since (`seen`: `seenOf` the newest
 * version, or of the house's).
 */
export function saveWording(
  act: Act,
  {
    kind,
    language,
    text,
    seen,
  }: Which & { readonly text: string; readonly seen?: string | undefined },
): Result<{ version: number }, Refusal> {
  const deal = { deed: "run-the-office", action: "save-wording" } as const;
  return changeOffice(act, deal, (db) => {
    const wrong = wrongKind({ kind, language });
    if (wrong !== null) return wrong;
    const parsed = parseWording(text);
    if (!parsed.ok) return refuse("bad-value", "text", parsed.error.map(problemWords).join(" "));
    const before = listWordings(db, kind, language).at(-1);
    const newest = before?.version ?? HOUSE_WORDING;
    const last = before === undefined ? null : { by: before.savedBy };
    const changed = changedSince(seen, { now: newest, last });
    if (changed !== null) return changed;
    const version = newest + 1;
    if (before?.text === text)
      return ok({
        value: { version: before.version },
        sentence: null,
        detail: {},
        write: () => {},
      });
    const wording = {
      ...{ kind, language, version, text },
      ...{ savedBy: act.actor.name, savedAt: act.now },
    };
    return ok({
      value: { version },
      sentence: `Saved version ${version} of the wording of the ${LETTER_SAID[kind]} (${NAMES[language]}).`,
      detail: wording,
      write: (one) => insertWording(one, wording),
    });
  });
}

/** Puts a version into use, or the house's own wording again. Letters that were sent stay as they are. */
export function useWording(
  act: Act,
  {
    kind,
    language,
    version,
    seen,
  }: Which & {
    readonly version: number;
    /** `seenOf` the version that was in use on the page; not given: whichever it is now. */
    readonly seen?: string | undefined;
  },
): Result<{ version: number }, Refusal> {
  const deal = { deed: "run-the-office", action: "use-wording" } as const;
  return changeOffice(act, deal, (db) => {
    const wrong = wrongKind({ kind, language });
    if (wrong !== null) return wrong;
    const versions = listWordings(db, kind, language);
    if (version !== HOUSE_WORDING && !versions.some((each) => each.version === version))
      return refuse("not-found", "version", "the version");
    const now = listUses(db).find((use) => use.kind === kind && use.language === language);
    const inUse = now?.version ?? HOUSE_WORDING;
    const changed = changedSince(seen, { now: inUse, last: now });
    if (changed !== null) return changed;
    const same = inUse === version;
    const which = version === HOUSE_WORDING ? "The house’s wording" : `Version ${version}`;
    const use = { kind, language, version, by: act.actor.name, at: act.now };
    return ok({
      value: { version },
      sentence: same
        ? null
        : `${which} of the ${LETTER_SAID[kind]} (${NAMES[language]}) is in use.`,
      detail: { before: now?.version ?? HOUSE_WORDING, after: use },
      write: (one) => insertUse(one, use),
    });
  });
}

const NAMES: Record<Language, string> = { en: "English", es: "Spanish" };

function wrongKind({ kind, language }: Which) {
  if (LETTER_KINDS.includes(kind) && LANGUAGES.includes(language)) return null;
  return refuse("not-found", "kind", "the letter");
}

function problemWords({ line, reason }: WordingProblem): string {
  return line === null ? reason : `Line ${line}: ${reason}`;
}
