import { getOffice } from "#db/queries/office.ts";
import { insertOutgoing } from "#db/queries/outgoing.ts";
import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { DELIVERY_METHODS, type Delivery, type DeliveryMethod } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { numberFault } from "#lib/domain/notices/tracking.ts";
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
  /** Who did it, where that was not the person who records it. */
  readonly doneBy?: string;
  readonly at?: string;
  readonly place?: string;
  readonly handedTo?: string;
  /** A photo of the posted notice, a receipt. */
  readonly proofUploadId?: string | null;
}

/**
 * One more attempt to deliver a letter that was sent: the same letter, as it was frozen; who did it,
 * when and where, as far as somebody says so. Refuses what can't be a certified mail number, a notice
 * said to be posted without saying where, and a time that is none.
 */
export function recordDelivery(
  act: Act,
  attempt: Attempt,
): Result<{ deliveryId: string }, Refusal> {
  const { lineId, noticeId, method } = attempt;
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
    const wrong = wrongAttempt(act, file, attempt);
    if (wrong !== null) return wrong;
    const party = file.parties.find(({ id }) => id === partyId);
    const noAddress = method === "mail-message" ? wrongAddress(party) : null;
    if (noAddress !== null) return refuse("missing-value", "method", noAddress);
    const letter = frozenLetter(frozen);
    if (method === "mail-message" && letter === null)
      return refuse("not-in-this-state", "method", UNREADABLE_LETTER);
    const office = getOffice(db);
    const delivery = deliveryOf(act, attempt);
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

function deliveryOf(act: Act, attempt: Attempt): Delivery {
  const { noticeId, method, sentOn, tracking, note, at = "", proofUploadId = null } = attempt;
  return {
    id: act.newId(),
    ...{ noticeId, method, sentOn, tracking, note, at, proofUploadId },
    by: attempt.doneBy?.trim() || act.actor.name,
    outcome: "on-its-way",
    outcomeOn: null,
    place: attempt.place?.trim() ?? "",
    handedTo: attempt.handedTo?.trim() ?? "",
    declaredUploadId: null,
  };
}

const TIME_OF_DAY = /^([01]\d|2[0-3]):[0-5]\d$/;

function wrongAttempt(act: Act, file: LineFile, attempt: Attempt) {
  const { method, sentOn, tracking, at = "", place = "", proofUploadId = null } = attempt;
  if (!DELIVERY_METHODS.includes(method))
    return refuse("bad-value", "method", "Choose a delivery method");
  const number = wrongNumber(method, tracking);
  if (number !== null) return refuse("bad-value", "tracking", number);
  if (at !== "" && !TIME_OF_DAY.test(at)) return refuse("bad-value", "at", "Enter a time as 16:05");
  if (method === "posted" && place.trim() === "")
    return refuse("missing-value", "place", "Say where it was posted, as front door of unit 2");
  if (proofUploadId !== null && !file.uploads.some(({ id }) => id === proofUploadId))
    return refuse("not-found", "proofUploadId", "the stored proof");
  return pastDay(act, { day: sentOn, path: "sentOn" });
}

/** Why a number can't be one of certified mail; null for every other way, and where it can. */
export function wrongNumber(method: DeliveryMethod, tracking: string): string | null {
  const fault = method === "certified" ? numberFault(tracking) : null;
  return fault?.fault === "no-number" ? fault.words : null;
}
