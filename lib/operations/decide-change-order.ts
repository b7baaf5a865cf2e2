import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import type { ChangeOrder } from "#lib/domain/facts/change-order.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { hasWorkBegun } from "#lib/domain/permit/steps.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { decidedDeeds, deedsOfAll } from "#lib/domain/split/work-deeds.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";

interface Decision {
  readonly lineId: string;
  readonly changeOrderId: string;
  readonly state: "agreed" | "refused";
  /** Who said so, as a person's name. */
  readonly by: string;
  readonly reason: string;
}

/**
 * A named person agrees to a change order or refuses it, with the reason. From then on an agreed
 * order counts in every amount, and its items stay as they are; what has to change again is another
 * order. Refuses an order that is decided already, one that changes nothing, one out of turn, and one that a hold stops.
 */
export function decideChangeOrder(
  act: Act,
  { lineId, changeOrderId, state, by, reason }: Decision,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-change-order" } as const;
  return changeLine(act, deal, (file) => {
    const order = find(file.changeOrders, changeOrderId, {
      path: "changeOrderId",
      what: "the change order",
    });
    if (!order.ok) return order;
    const wrong = wrongIn(file, order.value, { state, by, reason });
    if (wrong !== null) return wrong;
    const held = state === "agreed" ? heldOrder(act, file, order.value) : null;
    if (held !== null) return held;
    const verb = state === "agreed" ? "Agreed" : "Refused";
    const words = `${verb} by ${by.trim()} on ${formatDate(act.today)}: ${reason.trim()}`;
    const note = [order.value.note, words].filter((each) => each !== "").join(" ");
    const after: ChangeOrder = { ...order.value, state, note };
    return ok({
      value: null,
      sentence: `Change order ${after.number}, “${after.title}”: ${words}`,
      detail: { before: order.value, after },
      write: (db) => {
        updateRow(db, "changeOrders", { lineId, row: after });
        countSave(db, { lineId, table: "changeOrders", by: act.actor.name, at: act.now });
      },
    });
  });
}

/** What the order adds, as far as a hold stops how it is done, or the digging once work has begun. */
function heldOrder(act: Act, file: LineFile, order: ChangeOrder) {
  const comes = file.scope.filter(({ addedById }) => addedById === order.id);
  const report = reportOn(file, act.today);
  const deeds = deedsOfAll(comes, { options: file.options, tieIns: report.tieIns });
  return refuseHeld(report, decidedDeeds(deeds, hasWorkBegun(file)), "state");
}

function wrongIn(
  file: LineFile,
  order: ChangeOrder,
  { state, by, reason }: Pick<Decision, "state" | "by" | "reason">,
) {
  if (order.state !== "proposed")
    return refuse(
      "not-in-this-state",
      "",
      `Change order ${order.number} is already ${order.state === "agreed" ? "approved" : "rejected"}; add another one`,
    );
  if (by.trim() === "") return refuse("missing-value", "by", "Enter who decided");
  if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
  if (state === "refused") return null;
  const names = file.scope.some(
    (item) => item.addedById === order.id || item.droppedById === order.id,
  );
  if (!names)
    return refuse(
      "not-in-this-state",
      "",
      "No items are linked yet; in the scope of work, set which items it adds or drops",
    );
  const waiting = file.changeOrders.find(
    (each) => each.state === "proposed" && each.number < order.number,
  );
  return waiting === undefined
    ? null
    : refuse("not-in-this-state", "", `Decide change order ${waiting.number} first`);
}
