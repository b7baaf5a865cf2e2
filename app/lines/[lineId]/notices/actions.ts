"use server";

import { z } from "zod";
import { formAction, jobAction, onLine, onLineAt } from "#app/action.ts";
import {
  checked,
  id,
  needed,
  oneIn,
  orNull,
  somePacked,
  someTexts,
  text,
  textOrNull,
} from "#app/fields.ts";
import { newToken } from "#app/session.ts";
import { LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import {
  DEALT_HOWS,
  DELIVERY_METHODS,
  DELIVERY_OUTCOMES,
  LETTER_KINDS,
  REPLY_KINDS,
} from "#lib/domain/facts/notice.ts";
import { parseTime } from "#lib/domain/time/time-of-day.ts";
import { changeDeliveries } from "#lib/operations/change-deliveries.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { dealWithReply, reopenReply } from "#lib/operations/deal-with-reply.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { draftReminders } from "#lib/operations/draft-reminders.ts";
import { dropDraft } from "#lib/operations/drop-draft.ts";
import { fileDeclaration } from "#lib/operations/file-declaration.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { saveNoticeWords } from "#lib/operations/save-notice-words.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { counted } from "../names.ts";
import { languagesOf } from "./letter-languages.ts";
import { officeAddress } from "./link-address.ts";

const Recipient = z.object({
  partyId: z.string(),
  propertyId: z.string().nullable(),
  tieInId: z.string().nullable(),
  splitId: z.string().nullable(),
  paperId: z.string().optional(),
});

const drafts = (lineId: string) => `/lines/${lineId}/notices#drafts`;

/** Writes a draft to everyone who was selected, then leads to the drafts. */
export const draftLettersAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    kind: oneIn(LETTER_KINDS, "Choose a letter first."),
    recipient: somePacked(Recipient, "Select at least one person."),
    replyBy: textOrNull,
  }),
  does: (act, { recipient, ...draft }) => draftNotices(act, { ...draft, recipients: recipient }),
  says: "",
  leadsTo: (_value, { lineId }) => drafts(lineId),
});

const delivered = oneIn(DELIVERY_METHODS, "Choose a delivery method.");

/** Records the selected drafts as sent; their words are frozen. Email goes through the outbox. */
export const sendLettersAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    notice: someTexts("Select the letters that were sent."),
    method: delivered,
    sentOn: text,
    despite: text,
    links: checked,
  }),
  does: (act, { notice, links, ...sent }, form) =>
    sendNotices(act, {
      ...sent,
      noticeIds: notice,
      tracking: trackingOf(form, notice),
      ...(sent.method === "mail-message" && links ? { links: linkWish() } : {}),
    }),
  says: (_value, { notice, method }) =>
    `${counted(notice.length, "letter")} ${method === "mail-message" ? "queued to send" : "recorded as sent"}.`,
});

/** A private link in each message, as long as links are good by themselves. */
function linkWish() {
  return { days: LINK_DAYS, address: officeAddress(), newSecret: newToken };
}

function trackingOf(form: FormData, ids: readonly string[]): Record<string, string> {
  const numbers = ids.map((each) => [each, text.parse(form.get(`tracking:${each}`))] as const);
  return Object.fromEntries(numbers.filter(([, number]) => number !== ""));
}

/** Drafts a reminder to everyone whose reply is past due, then leads to the drafts. */
export const draftRemindersAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({}),
  does: draftReminders,
  says: "",
  leadsTo: (_value, { lineId }) => drafts(lineId),
});

const outcome = {
  outcome: oneIn(DELIVERY_OUTCOMES, "Choose a result."),
  outcomeOn: textOrNull,
  proofUploadId: textOrNull,
};

/** One result for all deliveries that were selected. */
export const changeDeliveriesAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ delivery: someTexts("Select the letters first."), ...outcome }),
  does: (act, { delivery, ...result }, form) => {
    const numbers = delivery.map((each) => [each, text.parse(form.get(`tracking:${each}`))]);
    const tracking = Object.fromEntries(numbers);
    return changeDeliveries(act, { ...result, deliveryIds: delivery, tracking });
  },
  says: (_value, { delivery }) => `${counted(delivery.length, "result")} recorded.`,
});

/** Starts one PDF of several letters being made. */
export const printLettersAction = jobAction("letters", null);

/** Starts a declaration of delivery being made, for each person who did one of these. */
export const declareDeliveriesAction = jobAction("declaration", null);

/** The declaration as it was signed, kept with every delivery that it is on. */
export const fileDeclarationAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    declared: someTexts("Select the deliveries that it is about."),
    uploadId: needed("Add the signed declaration as a PDF or a photo."),
  }),
  does: (act, { declared, ...paper }) => fileDeclaration(act, { ...paper, deliveryIds: declared }),
  says: (_value, { declared }) =>
    `Filed with ${counted(declared.length, "delivery", "deliveries")}.`,
});

const onLetter = onLineAt({ noticeId: id });

export const saveWordsAction = formAction(onLetter, {
  may: "work-the-file",
  typed: z.object({ ownWords: text, languages: text, replyBy: textOrNull, seen: text }),
  does: (act, { languages, ...words }) =>
    saveNoticeWords(act, { ...words, ...languagesOf(languages) }),
  says: "Saved; see the preview.",
  theirs: "in the preview",
});

export const dropDraftAction = formAction(onLetter, {
  may: "work-the-file",
  typed: z.object({}),
  does: dropDraft,
  says: "",
  leadsTo: (_value, { lineId }) => `/lines/${lineId}/notices`,
});

const time = orNull(parseTime, "Enter a time as 4:05 pm, or leave it blank.").transform(
  (at) => at ?? "",
);

/** One more attempt to bring a letter that was sent already. */
export const recordDeliveryAction = formAction(onLetter, {
  may: "work-the-file",
  typed: z.object({
    ...{ method: delivered, sentOn: text, at: time, doneBy: text, place: text, handedTo: text },
    ...{ tracking: text, note: text, proofUploadId: textOrNull },
  }),
  does: recordDelivery,
  says: "The delivery attempt is recorded.",
});

/** What became of an attempt, with its proof. */
export const changeDeliveryAction = formAction(onLineAt({ deliveryId: id }), {
  may: "work-the-file",
  typed: z.object({ ...outcome, tracking: text, note: text, seen: text }),
  does: changeDelivery,
  says: "Recorded.",
  theirs: "with the delivery, above the form",
});

export const recordReplyAction = formAction(onLetter, {
  may: "work-the-file",
  typed: z.object({
    kind: oneIn(REPLY_KINDS, "Choose what the reply says."),
    receivedOn: text,
    words: text,
    suitsOn: textOrNull,
    uploadId: textOrNull,
  }),
  does: recordReply,
  says: "The reply is recorded. It waits until someone has dealt with it.",
});

const onReply = onLineAt({ replyId: id });

/** A person dealt with a reply: how, when, and what came of it. */
export const dealWithReplyAction = formAction(onReply, {
  may: "work-the-file",
  typed: z.object({
    how: oneIn(DEALT_HOWS, "Choose how it was dealt with."),
    on: text,
    words: text,
    seen: text,
  }),
  does: dealWithReply,
  says: "Recorded.",
  theirs: "with the reply",
});

/** A reply waits again, with the reason. */
export const reopenReplyAction = formAction(onReply, {
  may: "work-the-file",
  typed: z.object({ reason: text }),
  does: reopenReply,
  says: "The reply is open again.",
});
