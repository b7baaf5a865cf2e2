import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, Notice } from "../facts/notice.ts";
import { arrivalOf, cameBack } from "./arrival.ts";

/** How to bring a letter that came back, and why so. */
export interface NextWay {
  readonly method: DeliveryMethod;
  readonly because: string;
}

/** What is tried after each way failed, the best first. */
const AFTER: Record<DeliveryMethod, readonly DeliveryMethod[]> = {
  "first-class": ["by-hand", "posted", "door-hanger", "mail-message"],
  certified: ["first-class", "by-hand", "posted", "door-hanger"],
  "mail-message": ["first-class", "by-hand", "posted", "door-hanger"],
  "by-hand": ["posted", "certified", "first-class", "door-hanger"],
  posted: ["by-hand", "certified", "first-class", "door-hanger"],
  "door-hanger": ["by-hand", "posted", "certified", "first-class"],
};

/**
 * The next way to bring a letter that was returned, not collected or not delivered: one that was not
 * tried yet; email only to a party with an address. Null while nothing came back, and where all were
 * tried.
 */
export function nextWay(
  file: Pick<LineFile, "authority" | "deliveries" | "replies" | "consents" | "parties">,
  notice: Notice,
): NextWay | null {
  const { state, attempt } = arrivalOf(file, notice);
  if (attempt === null || !cameBack(state)) return null;
  const tried = new Set(
    file.deliveries.filter(({ noticeId }) => noticeId === notice.id).map(({ method }) => method),
  );
  const party = file.parties.find(({ id }) => id === notice.partyId);
  const hasEmail = party !== undefined && party.email !== "";
  const method = AFTER[attempt.method].find(
    (each) => !tried.has(each) && (each !== "mail-message" || hasEmail),
  );
  return method === undefined ? null : { method, because: becauseOf(attempt) };
}

function becauseOf({ method, outcome }: Delivery): string {
  if (outcome === "unclaimed")
    return "No one signed for it. Mail that needs no signature may arrive";
  if (method === "mail-message") return "The email was not taken";
  if (method === "certified" || method === "first-class")
    return "It came back: check the mailing address before mailing again";
  return "No one was reached that way";
}
