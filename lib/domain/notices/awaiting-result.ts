import type { LineFile } from "../facts/line-file.ts";
import type { Delivery } from "../facts/notice.ts";
import { arrivalOf } from "./arrival.ts";
import { canBeTaken, wayRuleOf } from "./way-rule.ts";

/**
 * Deliveries whose result is not recorded, of letters of which nothing shows the arrival yet: the
 * certified ones first, as they can be shown to have arrived; the rest can only come back. Email is
 * left out: the outbox says what became of it. The oldest first.
 */
export function awaitingResult(
  file: Pick<LineFile, "authority" | "notices" | "deliveries" | "replies" | "consents">,
): Delivery[] {
  const open = file.deliveries.filter(({ noticeId, outcome, method }) => {
    const notice = file.notices.find(({ id }) => id === noticeId);
    return (
      outcome === "on-its-way" &&
      method !== "mail-message" &&
      notice !== undefined &&
      arrivalOf(file, notice).on === null
    );
  });
  const rank = (each: Delivery) => (canBeTaken(each.method, wayRuleOf(file, each)) ? 0 : 1);
  return open.toSorted(
    (one, other) => rank(one) - rank(other) || one.sentOn.localeCompare(other.sentOn),
  );
}
