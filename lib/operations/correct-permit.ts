import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { changedOnLine, fieldsSeen } from "./seen.ts";

interface PermitPaper {
  readonly lineId: string;
  readonly permitId: string;
  /** As the authority gave it; empty until it does. */
  readonly number: string;
  /** As printed on the permit or its extension; null where it prints none. */
  readonly expiresOn: Day | null;
  readonly note: string;
  /** `seenOf(printedSeen(permit))` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/** What is printed on a permit, as the form was filled in from it. */
export function printedSeen(permit: Permit) {
  return fieldsSeen(permit, ["number", "expiresOn", "note"]);
}

/**
 * Takes down what is printed on a permit whenever it comes: its number, its day of expiry. Refuses a
 * number that another permit of the kind has.
 */
export function correctPermit(
  act: Act,
  { lineId, permitId, seen, ...paper }: PermitPaper,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "correct-permit" } as const;
  return changeLine(act, deal, (file) => {
    const permit = find(file.permits, permitId, { path: "permitId", what: "the permit" });
    if (!permit.ok) return permit;
    const before = permit.value;
    const now = printedSeen(before);
    const changed = changedOnLine(file, seen, { now, about: [permitId] });
    if (changed !== null) return changed;
    const after: Permit = {
      ...before,
      number: paper.number.trim(),
      expiresOn: paper.expiresOn,
      note: paper.note.trim(),
    };
    const wrong = wrongIn(file, after);
    if (wrong !== null) return wrong;
    const same = JSON.stringify(before) === JSON.stringify(after);
    return ok({
      value: null,
      sentence: same ? null : sentenceOf(before, after),
      detail: { before, after },
      write: (db) => {
        updateRow(db, "permits", { lineId, row: after });
        countSave(db, { lineId, table: "permits", by: act.actor.name, at: act.now });
      },
    });
  });
}

function wrongIn(file: LineFile, { id, kind, number, expiresOn }: Permit) {
  if (expiresOn !== null && !isDay(expiresOn))
    return refuse("bad-value", "expiresOn", "Enter a date as 11/25/2026");
  const other = file.permits.find(
    (each) => each.id !== id && each.kind === kind && number !== "" && each.number === number,
  );
  return other === undefined
    ? null
    : refuse("already-there", "number", `${permitName(other)} is already in the file`);
}

function sentenceOf(before: Permit, after: Permit): string {
  const parts = [
    ...(before.number === after.number
      ? []
      : [
          `number ${after.number || "taken out"}${before.number === "" ? "" : `, was ${before.number}`}`,
        ]),
    ...(before.expiresOn === after.expiresOn
      ? []
      : [
          `printed to expire ${dayWords(after.expiresOn)}${before.expiresOn === null ? "" : `, was ${dayWords(before.expiresOn)}`}`,
        ]),
    ...(before.note === after.note ? [] : [`note “${after.note}”`]),
  ];
  return `${permitName(before)}: ${parts.join("; ")}.`;
}

function dayWords(day: Day | null): string {
  return day === null ? "on no day" : formatDate(day);
}
