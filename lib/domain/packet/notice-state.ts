import type { LineFile } from "../facts/line-file.ts";
import type { DeliveryMethod } from "../facts/notice.ts";
import { COPY_ROLES } from "../facts/party.ts";
import { arrivalOf } from "../notices/arrival.ts";
import { isReached } from "../notices/told.ts";

/** What each way of delivery is called in a packet. */
export const DELIVERY_WORDS: Record<DeliveryMethod, string> = {
  "first-class": "first-class mail",
  certified: "certified mail",
  "mail-message": "e-mail",
  "by-hand": "by hand",
  posted: "posted at the site",
  "door-hanger": "door hanger",
};

/** Whether every owner on file is shown to have been reached, and who is not. */
export function noticeState({ file }: { readonly file: LineFile }): {
  complete: boolean;
  sentences: string[];
} {
  const owners = file.parties.filter(({ id }) =>
    file.roles.some(
      ({ partyId, role }) => partyId === id && role !== "occupant" && !COPY_ROLES.includes(role),
    ),
  );
  if (owners.length === 0)
    return {
      complete: false,
      sentences: ["No owner is on file, so no one can be shown to have been reached."],
    };
  const missing = owners
    .filter(({ id }) => !isReached(file, id))
    .map(({ id, name }) => {
      const went = waysTo(file, id);
      return went.length === 0
        ? `No letter was sent to ${name}.`
        : `Nothing shows that a letter reached ${name} (${went.join(", ")}).`;
    });
  if (missing.length > 0) return { complete: false, sentences: missing };
  const counting = file.notices.some(
    (notice) => notice.state === "sent" && arrivalOf(file, notice).state === "counts",
  );
  return {
    complete: true,
    sentences: [
      counting
        ? "Every owner on file has been reached, or counts as notified by this authority’s rules of proof."
        : "Every owner on file has been reached.",
    ],
  };
}

function waysTo(file: LineFile, partyId: string): string[] {
  const sent = file.notices.filter((each) => each.partyId === partyId && each.state === "sent");
  const attempts = file.deliveries.filter(({ noticeId }) => sent.some(({ id }) => id === noticeId));
  const ways = [...new Set(attempts.map(({ method }) => DELIVERY_WORDS[method]))];
  return sent.length > 0 && ways.length === 0 ? ["no attempt on file"] : ways;
}
