import { getOffice } from "#db/queries/office.ts";
import { insertOutgoing } from "#db/queries/outgoing.ts";
import { insertRow } from "#db/queries/row.ts";
import { DELIVERY_METHODS, type Delivery, type DeliveryMethod } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { frozenLetter, UNREADABLE_LETTER } from "#lib/domain/paper/frozen-letter.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { outgoingOf, wrongAddress } from "./outgoing.ts";
import { pastDay } from "./past-day.ts";

interface Attempt {
  readonly lineId: string;
  readonly noticeId: string;
  readonly method: DeliveryMethod;
  readonly sentOn: Day;
  readonly tracking: string;
  readonly note: string;
}

/** One more attempt to deliver a letter that was sent: the same letter, as it was frozen. */
export function recordDelivery(
  act: Act,
  attempt: Attempt,
): Result<{ deliveryId: string }, Refusal> {
  const { lineId, noticeId, method, sentOn, tracking, note } = attempt;
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "record-delivery",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file, db) => {
    const notice = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
    if (!notice.ok) return notice;
    const { frozen, partyId } = notice.value;
    if (frozen === null)
      return refuse("not-in-this-state", "noticeId", "The letter is a draft; send it first");
    const wrong = wrongAttempt(act, attempt);
    if (wrong !== null) return wrong;
    const party = file.parties.find(({ id }) => id === partyId);
    const noAddress = method === "mail-message" ? wrongAddress(party) : null;
    if (noAddress !== null) return refuse("missing-value", "method", noAddress);
    const letter = frozenLetter(frozen);
    if (method === "mail-message" && letter === null)
      return refuse("not-in-this-state", "method", UNREADABLE_LETTER);
    const office = getOffice(db);
    const delivery: Delivery = {
      id: act.newId(),
      noticeId,
      method,
      sentOn,
      by: act.actor.name,
      tracking,
      outcome: "on-its-way",
      outcomeOn: null,
      proofUploadId: null,
      note,
    };
    return ok({
      value: { deliveryId: delivery.id },
      sentence: `Sent ${nameRow(file, "notices", noticeId)} again (${METHOD_WORDS[method]}).`,
      detail: { after: delivery },
      write: (one) => {
        insertRow(one, "deliveries", { lineId, row: delivery });
        if (method !== "mail-message" || !party || !office || !letter) return;
        insertOutgoing(one, outgoingOf(act, { lineId, letter, delivery, party, office }));
      },
    });
  });
}

function wrongAttempt(act: Act, { method, sentOn }: Attempt) {
  if (!DELIVERY_METHODS.includes(method))
    return refuse("bad-value", "method", "Choose a delivery method");
  return pastDay(act, { day: sentOn, path: "sentOn" });
}
