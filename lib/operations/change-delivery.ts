import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  DELIVERY_OUTCOMES,
  type Delivery,
  type DeliveryOutcome,
} from "#lib/domain/facts/notice.ts";
import { OUTCOME_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { canBeTaken, wayRuleOf } from "#lib/domain/notices/way-rule.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";
import { wrongNumber } from "./record-delivery.ts";
import { changedOnLine } from "./seen.ts";

/** What became of a delivery, with its proof. */
interface Said {
  readonly outcome: DeliveryOutcome;
  readonly outcomeOn: Day | null;
  readonly tracking: string;
  readonly note: string;
  readonly proofUploadId: string | null;
}

interface Outcome extends Said {
  readonly lineId: string;
  readonly deliveryId: string;
  /** `seenOf(delivery)` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string | undefined;
}

/**
 * Says what became of a delivery, with its proof. Every outcome but "on its way" has a day. An outcome
 * or a proof that was recorded counts as proof of notice: it is corrected with a reason, which is added
 * to the note, and what the note said before stays. Refuses "delivered" where the way of delivery can't
 * show it.
 */
export function changeDelivery(act: Act, change: Outcome): Result<null, Refusal> {
  const { lineId, deliveryId } = change;
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "change-delivery",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    const delivery = find(file.deliveries, deliveryId, {
      path: "deliveryId",
      what: "the delivery",
    });
    if (!delivery.ok) return delivery;
    const about = [deliveryId];
    const changed = changedOnLine(file, change.seen, { now: delivery.value, about });
    if (changed !== null) return changed;
    const after = withOutcome(act, file, { delivery: delivery.value, change });
    if (!after.ok) return after;
    const { outcome, outcomeOn, noticeId } = after.value;
    const same = JSON.stringify(after.value) === JSON.stringify(delivery.value);
    return ok({
      value: null,
      sentence: same
        ? null
        : `The ${nameRow(file, "notices", noticeId)}: ${OUTCOME_WORDS[outcome]}${outcomeOn ? ` on ${formatDate(outcomeOn)}` : ""}.`,
      detail: { before: delivery.value, after: after.value },
      write: (db) => void updateRow(db, "deliveries", { lineId, row: after.value }),
    });
  });
}

/** A delivery with what became of it, or why that can't be said of it. */
export function withOutcome(
  act: Act,
  file: LineFile,
  { delivery, change }: { readonly delivery: Delivery; readonly change: Said },
): Result<Delivery, Refusal> {
  const { outcome, outcomeOn, tracking, note, proofUploadId } = change;
  const after: Delivery = {
    ...delivery,
    outcome,
    outcomeOn: outcome === "on-its-way" ? null : outcomeOn,
    tracking,
    note,
    proofUploadId,
  };
  return wrongOutcome(act, file, { change, delivery }) ?? unexplained(delivery, after) ?? ok(after);
}

/** A correction of what was recorded as proof, without a further word that says why. */
function unexplained(before: Delivery, after: Delivery) {
  const corrected =
    before.outcome !== after.outcome ||
    before.outcomeOn !== after.outcomeOn ||
    (before.proofUploadId !== null && before.proofUploadId !== after.proofUploadId);
  if (before.outcome === "on-its-way" || !corrected) return null;
  const says = after.note.startsWith(before.note) && after.note.trim() !== before.note.trim();
  if (says) return null;
  const kept = before.note === "" ? "" : `; keep “${before.note}” as it is`;
  return refuse(
    "missing-value",
    "note",
    `This was recorded as ${OUTCOME_WORDS[before.outcome]} already. Add to the note why that was wrong${kept}`,
  );
}

function wrongOutcome(
  act: Act,
  file: LineFile,
  { change, delivery }: { change: Said; delivery: Delivery },
) {
  const { outcome, outcomeOn, proofUploadId, tracking } = change;
  const number = tracking === delivery.tracking ? null : wrongNumber(delivery.method, tracking);
  if (number !== null) return refuse("bad-value", "tracking", number);
  if (!DELIVERY_OUTCOMES.includes(outcome))
    return refuse("bad-value", "outcome", "Choose a result");
  if (proofUploadId !== null && !file.uploads.some(({ id }) => id === proofUploadId))
    return refuse("not-found", "proofUploadId", "the stored proof");
  if (outcome === "on-its-way") return null;
  const rule = wayRuleOf(file, delivery);
  const taken = canBeTaken(delivery.method, rule);
  if (outcome === "delivered" && delivery.outcome !== "delivered" && !taken)
    return refuse(
      "bad-value",
      "outcome",
      `${rule.because} Record what they answer, or deliver the letter by hand or by certified mail`,
    );
  if (outcomeOn === null) return refuse("missing-value", "outcomeOn", "Enter the date");
  if (outcomeOn < delivery.sentOn)
    return refuse("bad-value", "outcomeOn", `It was only sent on ${formatDate(delivery.sentOn)}`);
  return pastDay(act, { day: outcomeOn, path: "outcomeOn" });
}
