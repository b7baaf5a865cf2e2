import { insertRow, updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { formatFeet } from "#lib/domain/line/station.ts";
import type { Pairing, PairingState } from "#lib/domain/reconcile/pairing.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface PairingWord {
  readonly lineId: string;
  readonly entryId: string;
  readonly tieInId: string;
  readonly state: PairingState;
  readonly reason: string;
}

/**
 * A person's word that a record entry and a tie-in are the same thing, or are not. One entry is
 * accepted for one tie-in at most, and a tie-in for one entry of each record: several records may
 * show the same connection. What was decided of the same two before is replaced, and stays in the
 * history. Refuses without a reason.
 */
export function decidePairing(
  act: Act,
  { lineId, entryId, tieInId, state, reason }: PairingWord,
): Result<{ pairingId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-pairing" } as const;
  return changeLine(act, deal, (file) => {
    const entry = find(file.entries, entryId, { path: "entryId", what: "the record entry" });
    if (!entry.ok) return entry;
    const tieIn = find(file.tieIns, tieInId, { path: "tieInId", what: "the tie-in" });
    if (!tieIn.ok) return tieIn;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
    const rival = state === "accepted" ? rivalOf(file, { entryId, tieInId }) : null;
    if (rival !== null) return refuse("already-there", "tieInId", rival);
    const old = file.pairings.find((each) => each.entryId === entryId && each.tieInId === tieInId);
    const pairing: Pairing = {
      id: old?.id ?? act.newId(),
      entryId,
      tieInId,
      state,
      distance: distanceOf(reportOn(file, act.today), { entryId, tieInId }),
      reason: reason.trim(),
      decidedBy: act.actor.name,
      decidedOn: act.today,
    };
    const verb = state === "accepted" ? "is" : "is not";
    return ok({
      value: { pairingId: pairing.id },
      sentence: `Decided that ${entry.value.label || "the record entry"} ${verb} ${tieIn.value.label}${apart(pairing)}: ${pairing.reason}`,
      detail: { before: old ?? null, after: pairing },
      write: (db) => {
        if (!updateRow(db, "pairings", { lineId, row: pairing }))
          insertRow(db, "pairings", { lineId, row: pairing });
      },
    });
  });
}

function labelOf(rows: readonly { id: string; label: string }[], id: string): string {
  return rows.find((row) => row.id === id)?.label || "the record entry";
}

function rivalOf(
  file: LineFile,
  { entryId, tieInId }: { entryId: string; tieInId: string },
): string | null {
  const accepted = file.pairings.filter(({ state }) => state === "accepted");
  const sameEntry = accepted.find((each) => each.entryId === entryId && each.tieInId !== tieInId);
  if (sameEntry)
    return `${labelOf(file.entries, entryId)} is accepted as ${labelOf(file.tieIns, sameEntry.tieInId)}; take that back first`;
  const recordOf = (id: string) => file.entries.find((entry) => entry.id === id)?.recordId;
  const sameTieIn = accepted.find(
    (each) =>
      each.tieInId === tieInId &&
      each.entryId !== entryId &&
      recordOf(each.entryId) === recordOf(entryId),
  );
  if (sameTieIn)
    return `${labelOf(file.tieIns, tieInId)} is accepted as ${labelOf(file.entries, sameTieIn.entryId)}; take that back first`;
  return null;
}

/** Tie-in minus entry, after shift and scale, as far as both have a station. */
function distanceOf(
  report: Report,
  { entryId, tieInId }: { entryId: string; tieInId: string },
): number | null {
  const entry = report.entries.find((each) => each.entryId === entryId)?.station ?? null;
  const tieIn = report.tieIns.find((each) => each.tieIn.id === tieInId)?.station ?? null;
  return entry === null || tieIn === null ? null : tieIn - entry;
}

function apart({ distance }: Pairing): string {
  return distance === null ? "" : `, ${formatFeet(Math.abs(distance))} apart`;
}
