import { insertRow, removeRow } from "#db/queries/row.ts";
import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { RULING_KINDS, type Ruling, type RulingKind } from "#lib/domain/facts/ruling.ts";
import { ruledWords, rulingInForce } from "#lib/domain/tiein/ruling-in-force.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";
import { changedSince } from "./seen.ts";

interface RulingWord {
  readonly lineId: string;
  readonly tieInId: string;
  readonly kind: RulingKind;
  /** The officer or office who decided. */
  readonly decidedBy: string;
  readonly decidedOn: Day;
  readonly dueOn: Day | null;
  /** Case number, letter or section. */
  readonly reference: string;
  readonly uploadId: string | null;
  readonly note: string;
  /** `seenOf(ruledSeen(file, tieInId))` as the form was filled in; not given: whatever holds now. */
  readonly seen?: string | undefined;
}

/** Which rulings on a tie-in were there when the form was filled in. */
export function ruledSeen({ rulings }: Pick<LineFile, "rulings">, of: string): string[] {
  return rulings.filter(({ tieInId }) => tieInId === of).map(({ id }) => id);
}

/** Rulings that lift a hold by being written down: they need the paper's number or section. */
const NEEDS_REFERENCE: readonly RulingKind[] = ["accepted-as-legacy", "record-corrected"];

/**
 * Takes down what the authority ruled on a tie-in. A later ruling replaces an earlier one; both stay.
 * Refuses to cap what is not proven dead, since somebody unseen may live on it; to accept without a
 * reference; a day that has not come, one to be done by that lies before the ruling, and a ruling over
 * one that somebody else took down or out since the form was filled in.
 */
export function recordRuling(
  act: Act,
  { lineId, seen, ...word }: RulingWord,
): Result<{ rulingId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-ruling" } as const;
  return changeLine(act, deal, (file) => {
    const tieIn = find(file.tieIns, word.tieInId, { path: "tieInId", what: "the tie-in" });
    if (!tieIn.ok) return tieIn;
    const last = file.history.findLast(
      ({ action, detail }) =>
        /^(record|withdraw)-ruling$/.test(action) && detail.includes(JSON.stringify(word.tieInId)),
    );
    const changed = changedSince(seen, { now: ruledSeen(file, word.tieInId), last });
    if (changed !== null) return changed;
    const wrong = wrongWord(act, word) ?? wrongFor(file, tieIn.value, word);
    if (wrong !== null) return wrong;
    const ruling: Ruling = {
      ...word,
      id: act.newId(),
      decidedBy: word.decidedBy.trim(),
      reference: word.reference.trim(),
      note: word.note.trim(),
      enteredBy: act.actor.name,
    };
    return ok({
      value: { rulingId: ruling.id },
      sentence: `${tieIn.value.label} ${ruledWords(ruling)}.`,
      detail: { before: rulingInForce(file.rulings, word.tieInId), after: ruling },
      write: (db) => insertRow(db, "rulings", { lineId, row: ruling }),
    });
  });
}

/** Takes out a ruling that was entered wrongly, with the reason; the one before it holds again. */
export function withdrawRuling(
  act: Act,
  { lineId, rulingId, reason }: { lineId: string; rulingId: string; reason: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "withdraw-ruling" } as const;
  return changeLine(act, deal, (file) => {
    const ruling = find(file.rulings, rulingId, { path: "rulingId", what: "the ruling" });
    if (!ruling.ok) return ruling;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
    const label = file.tieIns.find(({ id }) => id === ruling.value.tieInId)?.label ?? "a tie-in";
    return ok({
      value: null,
      sentence: `Deleted the ruling that ${label} ${ruledWords(ruling.value)}. Reason: ${reason.trim()}`,
      detail: { before: ruling.value, reason: reason.trim() },
      write: (db) => void removeRow(db, "rulings", { lineId, id: rulingId }),
    });
  });
}

function wrongWord(act: Act, word: Omit<RulingWord, "lineId">) {
  const { kind, decidedBy, decidedOn, dueOn, reference } = word;
  if (!RULING_KINDS.includes(kind)) return refuse("bad-value", "kind", "Select the ruling");
  if (decidedBy.trim() === "") return refuse("missing-value", "decidedBy", "Enter who decided it");
  if (NEEDS_REFERENCE.includes(kind) && reference.trim() === "")
    return refuse("missing-value", "reference", "Enter the case, letter or section");
  const day = pastDay(act, { day: decidedOn, path: "decidedOn" });
  if (day !== null || dueOn === null) return day;
  if (!isDay(dueOn)) return refuse("bad-value", "dueOn", "Enter a date as 11/25/2026");
  return dueOn < decidedOn
    ? refuse("bad-value", "dueOn", "It can’t be due before it was ruled")
    : null;
}

function wrongFor(file: LineFile, tieIn: TieIn, { kind, uploadId }: Omit<RulingWord, "lineId">) {
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the ruling’s paper");
  if (kind === "cap" && !tieIn.inactive)
    return refuse(
      "not-in-this-state",
      "kind",
      `${tieIn.label} is not proven inactive: show that nothing flows through it and settle that first`,
    );
  return null;
}
