import { countSave } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import type { ChangeOrder } from "#lib/domain/facts/change-order.ts";
import { nextOrderNumber } from "#lib/domain/split/change-order-effect.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface Proposal {
  readonly lineId: string;
  readonly title: string;
  /** What came up. */
  readonly reason: string;
  /** Who asks for it. */
  readonly orderedBy: string;
}

/**
 * Opens the next change order, as proposed. Which work it adds and drops is then said on the scope
 * items. Refuses without a title, a reason, or who asks for it.
 */
export function proposeChangeOrder(
  act: Act,
  { lineId, title, reason, orderedBy }: Proposal,
): Result<{ changeOrderId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "propose-change-order" } as const;
  return changeLine(act, deal, (file) => {
    if (title.trim() === "") return refuse("missing-value", "title", "Enter a title");
    if (reason.trim() === "") return refuse("missing-value", "reason", "Enter the reason");
    if (orderedBy.trim() === "")
      return refuse("missing-value", "orderedBy", "Enter who requested it");
    const order: ChangeOrder = {
      id: act.newId(),
      number: nextOrderNumber(file),
      title: title.trim(),
      reason: reason.trim(),
      state: "proposed",
      orderedBy: orderedBy.trim(),
      orderedOn: act.today,
      note: "",
    };
    return ok({
      value: { changeOrderId: order.id },
      sentence: `Added change order ${order.number}, “${order.title}”, requested by ${order.orderedBy}: ${order.reason}`,
      detail: { after: order },
      write: (db) => {
        insertRow(db, "changeOrders", { lineId, row: order });
        countSave(db, { lineId, table: "changeOrders", by: act.actor.name, at: act.now });
      },
    });
  });
}
