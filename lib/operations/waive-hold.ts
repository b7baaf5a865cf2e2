import { insertRow } from "#db/queries/row.ts";
import type { Waiver } from "#lib/domain/facts/hold.ts";
import { isWaivable } from "#lib/domain/holds/holds.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface WaiverWord {
  readonly lineId: string;
  readonly holdKey: string;
  readonly reason: string;
}

/** Lets work go on despite a hold, in the name of who says so. Refuses without a reason. */
export function waiveHold(
  act: Act,
  { lineId, holdKey, reason }: WaiverWord,
): Result<{ waiverId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "waive-hold" } as const;
  return changeLine(act, deal, (file) => {
    const hold = reportOn(file, act.today).holds.find(({ key }) => key === holdKey);
    if (!hold) return refuse("not-found", "holdKey", "the hold");
    if (!isWaivable(hold.cause))
      return refuse(
        "not-in-this-state",
        "holdKey",
        "A household’s need can’t be waived. Call them and record what was agreed",
      );
    if (hold.waiver !== null)
      return refuse("already-there", "holdKey", `${hold.waiver.by} waived it already`);
    if (reason.trim() === "")
      return refuse("missing-value", "reason", "Enter why work can proceed");
    const waiver: Waiver = {
      id: act.newId(),
      holdKey,
      reason: reason.trim(),
      by: act.actor.name,
      on: act.today,
    };
    return ok({
      value: { waiverId: waiver.id },
      sentence: `Waived the hold on ${hold.subjectLabel}: ${waiver.reason}`,
      detail: { hold: hold.sentence, stops: hold.stops, waiver },
      write: (db) => insertRow(db, "waivers", { lineId, row: waiver }),
    });
  });
}
