import { insertRow, updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Pairing, PairingState } from "#lib/domain/facts/pairing.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { distanceOf } from "#lib/domain/report/pairs-now.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { type Change, find, refuse } from "./change.ts";

export interface Pair {
  readonly entryId: string;
  readonly tieInId: string;
}

/** A person's word on one pair, as it will stand in the file. */
interface Decided {
  readonly pairing: Pairing;
  /** What was decided of the same two before. */
  readonly old: Pairing | null;
  /** `House 14 is T3, 0.2 ft apart`. */
  readonly words: string;
}

/** What was decided of an entry so far: what a form that decides on it was filled in from. */
export function decidedOf({ pairings }: Pick<LineFile, "pairings">, entryId: string): Pairing[] {
  return pairings.filter((each) => each.entryId === entryId);
}

/**
 * The row that says whether an entry and a tie-in are the same. Refuses what is not in the file, and
 * to accept an entry for two tie-ins, or a tie-in for two entries of one record.
 */
export function decidePair(
  act: Act,
  file: LineFile,
  word: Pair & { readonly state: PairingState; readonly reason: string; readonly report: Report },
): Result<Decided, Refusal> {
  const { entryId, tieInId, state, reason, report } = word;
  const entry = find(file.entries, entryId, { path: "entryId", what: "the record entry" });
  if (!entry.ok) return entry;
  const tieIn = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
  if (!tieIn.ok) return tieIn;
  if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
  const rival = state === "accepted" ? rivalOf(file, word) : null;
  if (rival !== null) return refuse("already-there", "tieInId", rival);
  const old = file.pairings.find((each) => each.entryId === entryId && each.tieInId === tieInId);
  const pairing: Pairing = {
    id: old?.id ?? act.newId(),
    entryId,
    tieInId,
    state,
    distance: distanceOf(report, word),
    reason: reason.trim(),
    decidedBy: act.actor.name,
    decidedOn: act.today,
  };
  const verb = state === "accepted" ? "is" : "is not";
  const words = `${entry.value.label || "the record entry"} ${verb} ${tieIn.value.label}${apart(pairing)}`;
  return ok({ pairing, old: old ?? null, words });
}

/** Many pairs accepted as one change: all of them, or none with the words of the first that cannot be. */
export function acceptPairs(
  act: Act,
  file: LineFile,
  { pairs, reason }: { readonly pairs: readonly Pair[]; readonly reason: string },
): Result<Change<{ count: number }>, Refusal> {
  const report = reportOn(file, act.today);
  const decided: Decided[] = [];
  let now = file;
  for (const pair of pairs) {
    const one = decidePair(act, now, { ...pair, state: "accepted", reason, report });
    if (!one.ok) return one;
    decided.push(one.value);
    now = {
      ...now,
      pairings: [
        ...now.pairings.filter(({ id }) => id !== one.value.pairing.id),
        one.value.pairing,
      ],
    };
  }
  const rows = decided.map(({ pairing }) => pairing);
  return ok({
    value: { count: rows.length },
    sentence:
      rows.length === 0
        ? null
        : `Decided that ${decided.map(({ words }) => words).join("; ")}: ${reason.trim()}`,
    detail: {
      pairings: {
        added: decided.filter(({ old }) => old === null).map(({ pairing }) => pairing),
        changed: decided.flatMap(({ old, pairing }) =>
          old === null ? [] : [{ id: pairing.id, before: old, after: pairing }],
        ),
      },
    },
    write: (db) => {
      for (const row of rows) writePairing({ ...act, db }, file.line.id, row);
    },
  });
}

/** Puts the row in place of what was decided of the same two before, or adds it. */
export function writePairing({ db }: Pick<Act, "db">, lineId: string, row: Pairing): void {
  if (!updateRow(db, "pairings", { lineId, row })) insertRow(db, "pairings", { lineId, row });
}

function labelOf(rows: readonly { id: string; label: string }[], id: string): string {
  return rows.find((row) => row.id === id)?.label || "the record entry";
}

function rivalOf(file: LineFile, { entryId, tieInId }: Pair): string | null {
  const accepted = file.pairings.filter(({ state }) => state === "accepted");
  const sameEntry = accepted.find((each) => each.entryId === entryId && each.tieInId !== tieInId);
  if (sameEntry)
    return `${labelOf(file.entries, entryId)} is accepted as ${labelOf(file.tieIns, sameEntry.tieInId)}; undo that first`;
  const recordOf = (id: string) => file.entries.find((entry) => entry.id === id)?.recordId;
  const sameTieIn = accepted.find(
    (each) =>
      each.tieInId === tieInId &&
      each.entryId !== entryId &&
      recordOf(each.entryId) === recordOf(entryId),
  );
  if (sameTieIn)
    return `${labelOf(file.tieIns, tieInId)} is accepted as ${labelOf(file.entries, sameTieIn.entryId)}; undo that first`;
  return null;
}

function apart({ distance }: Pairing): string {
  return distance === null ? "" : `, ${formatFeet(Math.abs(distance))} apart`;
}
