import type { DeliveryOutcome } from "#lib/domain/facts/notice.ts";

/** Results of a delivery, as the history and the refusals say them. */
export const OUTCOME_SAID: Record<DeliveryOutcome, string> = {
  "on-its-way": "in transit",
  delivered: "delivered",
  returned: "returned to sender",
  unclaimed: "unclaimed",
  failed: "not delivered",
};
