import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery, DeliveryOutcome } from "#lib/domain/facts/notice.ts";
import { OUTCOME_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { withOutcome } from "./change-delivery.ts";

interface Outcomes {
  readonly lineId: string;
  readonly deliveryIds: readonly string[];
  readonly outcome: DeliveryOutcome;
  readonly outcomeOn: Day | null;
  /** Tracking numbers by delivery; one that is not named keeps its own. */
  readonly tracking: Readonly<Record<string, string>>;
  /** One document for all of them: the post office's list, a photo of the receipts. */
  readonly proofUploadId: string | null;
}

/**
 * Records one result for several deliveries at once: all of them or none. Refuses what
 * `changeDelivery` refuses, and a delivery whose result is recorded already: that is corrected on the
 * letter's own page, with a reason.
 */
export function changeDeliveries(act: Act, changes: Outcomes): Result<{ count: number }, Refusal> {
  const { lineId, deliveryIds, outcome, outcomeOn } = changes;
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "change-deliveries",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    if (deliveryIds.length === 0)
      return refuse("missing-value", "deliveryIds", "Select at least one letter");
    if (outcome === "on-its-way") return refuse("bad-value", "outcome", "Choose a result");
    const pairs: { before: Delivery; after: Delivery }[] = [];
    for (const deliveryId of new Set(deliveryIds)) {
      const pair = pairOf(act, file, { changes, deliveryId });
      if (!pair.ok) return pair;
      pairs.push(pair.value);
    }
    const letters = pairs.map(({ after }) => nameRow(file, "notices", after.noticeId)).join(", ");
    const day = outcomeOn === null ? "" : ` on ${formatDate(outcomeOn)}`;
    return ok({
      value: { count: pairs.length },
      sentence: `Recorded as ${OUTCOME_WORDS[outcome]}${day}: ${letters}.`,
      detail: pairs,
      write: (db) => {
        for (const { after } of pairs) updateRow(db, "deliveries", { lineId, row: after });
      },
    });
  });
}

function pairOf(
  act: Act,
  file: LineFile,
  { changes, deliveryId }: { readonly changes: Outcomes; readonly deliveryId: string },
): Result<{ before: Delivery; after: Delivery }, Refusal> {
  const { outcome, outcomeOn, tracking, proofUploadId } = changes;
  const found = find(file.deliveries, deliveryId, { path: "deliveryIds", what: "the delivery" });
  if (!found.ok) return found;
  const before = found.value;
  const letter = nameRow(file, "notices", before.noticeId);
  if (before.outcome !== "on-its-way")
    return refuse(
      "not-in-this-state",
      "deliveryIds",
      `The result of the ${letter} is recorded already; correct it on the letter's own page`,
    );
  const after = withOutcome(act, file, {
    delivery: before,
    change: {
      outcome,
      outcomeOn,
      tracking: tracking[deliveryId] ?? before.tracking,
      note: before.note,
      proofUploadId: proofUploadId ?? before.proofUploadId,
    },
  });
  if (after.ok) return ok({ before, after: after.value });
  const { reason, path, detail } = after.error;
  const isAboutAll = path === "outcomeOn" && reason === "missing-value";
  return refuse(reason, path, isAboutAll ? detail : `The ${letter}: ${detail}`);
}
