"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { z } from "zod";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import {
  done,
  type FormState,
  oneOf,
  refused,
  textOf,
  textOrNull,
  textsOf,
  ticked,
} from "#app/form.ts";
import { overtaken, sentenceOf, stateOf } from "#app/messages.ts";
import { newToken, requireAct } from "#app/session.ts";
import { LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import {
  DEALT_HOWS,
  DELIVERY_METHODS,
  DELIVERY_OUTCOMES,
  LETTER_KINDS,
  REPLY_KINDS,
} from "#lib/domain/facts/notice.ts";
import { changeDeliveries } from "#lib/operations/change-deliveries.ts";
import { changeDelivery } from "#lib/operations/change-delivery.ts";
import { dealWithReply, reopenReply } from "#lib/operations/deal-with-reply.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { draftReminders } from "#lib/operations/draft-reminders.ts";
import { dropDraft } from "#lib/operations/drop-draft.ts";
import { recordDelivery } from "#lib/operations/record-delivery.ts";
import { recordReply } from "#lib/operations/record-reply.ts";
import { saveNoticeWords } from "#lib/operations/save-notice-words.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { counted } from "../names.ts";
import { languagesOf } from "./letter-languages.ts";
import { officeAddress } from "./link-address.ts";

const Recipient = z.object({
  partyId: z.string(),
  propertyId: z.string().nullable(),
  tieInId: z.string().nullable(),
  splitId: z.string().nullable(),
});

/** Writes a draft to everyone who was selected, then leads to the drafts. */
export async function draftLettersAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(LETTER_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Choose a letter first.", form);
  const recipients = textsOf(form, "recipient").map((text) => Recipient.parse(JSON.parse(text)));
  if (recipients.length === 0) return refused("Select at least one person.", form);
  const drafted = draftNotices(act, {
    lineId,
    kind,
    replyBy: textOrNull(form, "replyBy"),
    recipients,
  });
  if (!drafted.ok) return refused(sentenceOf(drafted.error), form, drafted.error.path);
  revalidatePath(`/lines/${lineId}`, "layout");
  redirect(`/lines/${lineId}/notices#drafts`);
}

/** Records the selected drafts as sent; their words are frozen. Email goes through the outbox. */
export async function sendLettersAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const noticeIds = textsOf(form, "notice");
  if (noticeIds.length === 0) return refused("Select the letters that were sent.", form);
  const method = oneOf(DELIVERY_METHODS, textOf(form, "method"));
  if (method === null) return refused("Choose a delivery method.", form, "method");
  const sent = sendNotices(act, {
    lineId,
    noticeIds,
    method,
    sentOn: textOf(form, "sentOn"),
    despite: textOf(form, "despite"),
    tracking: trackingOf(form, noticeIds),
    ...(method === "mail-message" && ticked(form, "links") ? { links: linkWish() } : {}),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const letters = counted(noticeIds.length, "letter");
  const words =
    method === "mail-message" ? `${letters} queued to send.` : `${letters} recorded as sent.`;
  return stateOf(sent, { words, form });
}

/** A private link in each message, as long as links are good by themselves. */
function linkWish() {
  return { days: LINK_DAYS, address: officeAddress(), newSecret: newToken };
}

function trackingOf(form: FormData, noticeIds: readonly string[]): Record<string, string> {
  const numbers = noticeIds.map((id) => [id, textOf(form, `tracking:${id}`)] as const);
  return Object.fromEntries(numbers.filter(([, number]) => number !== ""));
}

/** Drafts a reminder to everyone whose reply is past due, then leads to the drafts. */
export async function draftRemindersAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const drafted = draftReminders(act, { lineId });
  if (!drafted.ok) return refused(sentenceOf(drafted.error), form);
  revalidatePath(`/lines/${lineId}`, "layout");
  redirect(`/lines/${lineId}/notices#drafts`);
}

/** One result for all deliveries that were selected. */
export async function changeDeliveriesAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const deliveryIds = textsOf(form, "delivery");
  if (deliveryIds.length === 0) return refused("Select the letters first.", form);
  const outcome = oneOf(DELIVERY_OUTCOMES, textOf(form, "outcome"));
  if (outcome === null) return refused("Choose a result.", form, "outcome");
  const changed = changeDeliveries(act, {
    lineId,
    deliveryIds,
    outcome,
    outcomeOn: textOrNull(form, "outcomeOn"),
    tracking: Object.fromEntries(deliveryIds.map((id) => [id, textOf(form, `tracking:${id}`)])),
    proofUploadId: textOrNull(form, "proofUploadId"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words = `${counted(deliveryIds.length, "result")} recorded.`;
  return stateOf(changed, { words, form });
}

/** Starts one PDF of several letters being made. */
export async function printLettersAction(
  lineId: string,
  noticeIds: readonly string[],
): Promise<JobStart> {
  const act = await requireAct();
  const started = startJob(act, { kind: "letters", lineId, subjectIds: [...noticeIds] });
  if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
  return { ok: true, jobId: started.value.jobId };
}

export async function saveWordsAction(
  { lineId, noticeId }: LetterPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const saved = saveNoticeWords(act, {
    lineId,
    noticeId,
    ownWords: textOf(form, "ownWords"),
    replyBy: textOrNull(form, "replyBy"),
    ...languagesOf(textOf(form, "languages")),
    seen: textOf(form, "seen"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  if (!saved.ok && saved.error.reason === "changed-meanwhile")
    return overtaken(saved.error.detail, { where: "in the preview", form });
  return stateOf(saved, { words: "Saved; see the preview.", form });
}

interface LetterPlace {
  readonly lineId: string;
  readonly noticeId: string;
}

export async function dropDraftAction(
  { lineId, noticeId }: LetterPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const dropped = dropDraft(act, { lineId, noticeId });
  if (!dropped.ok) return refused(sentenceOf(dropped.error), form);
  revalidatePath(`/lines/${lineId}`, "layout");
  redirect(`/lines/${lineId}/notices`);
}

/** One more attempt to bring a letter that was sent already. */
export async function recordDeliveryAction(
  { lineId, noticeId }: LetterPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const method = oneOf(DELIVERY_METHODS, textOf(form, "method"));
  if (method === null) return refused("Choose a delivery method.", form, "method");
  const recorded = recordDelivery(act, {
    lineId,
    noticeId,
    method,
    sentOn: textOf(form, "sentOn"),
    tracking: textOf(form, "tracking"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(recorded, { words: "The delivery attempt is recorded.", form });
}

/** What became of an attempt, with its proof. */
export async function changeDeliveryAction(
  { lineId, deliveryId }: { readonly lineId: string; readonly deliveryId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const outcome = oneOf(DELIVERY_OUTCOMES, textOf(form, "outcome"));
  if (outcome === null) return refused("Choose a result.", form, "outcome");
  const changed = changeDelivery(act, {
    lineId,
    deliveryId,
    outcome,
    outcomeOn: textOrNull(form, "outcomeOn"),
    tracking: textOf(form, "tracking"),
    note: textOf(form, "note"),
    proofUploadId: textOrNull(form, "proofUploadId"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(changed, { words: "Recorded.", form });
}

export async function recordReplyAction(
  { lineId, noticeId }: LetterPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(REPLY_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Choose what the reply says.", form, "kind");
  const recorded = recordReply(act, {
    lineId,
    noticeId,
    kind,
    receivedOn: textOf(form, "receivedOn"),
    words: textOf(form, "words"),
    suitsOn: textOrNull(form, "suitsOn"),
    uploadId: textOrNull(form, "uploadId"),
  });
  if (!recorded.ok) return refused(sentenceOf(recorded.error), form, recorded.error.path);
  revalidatePath(`/lines/${lineId}`, "layout");
  return done("The reply is recorded. It waits until someone has dealt with it.");
}

interface ReplyPlace {
  readonly lineId: string;
  readonly replyId: string;
}

/** A person dealt with a reply: how, when, and what came of it. */
export async function dealWithReplyAction(
  { lineId, replyId }: ReplyPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const how = oneOf(DEALT_HOWS, textOf(form, "how"));
  if (how === null) return refused("Choose how it was dealt with.", form, "how");
  const dealt = dealWithReply(act, {
    lineId,
    replyId,
    how,
    on: textOf(form, "on"),
    words: textOf(form, "words"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(dealt, { words: "Recorded.", form });
}

/** A reply waits again, with the reason. */
export async function reopenReplyAction(
  { lineId, replyId }: ReplyPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const opened = reopenReply(act, { lineId, replyId, reason: textOf(form, "reason") });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(opened, { words: "The reply is open again.", form });
}
