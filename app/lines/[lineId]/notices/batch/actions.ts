"use server";

import { z } from "zod";
import { formAction, jobAction, onLine } from "#app/action.ts";
import { checked, oneIn, someTexts, text, textOrNull } from "#app/fields.ts";
import { newToken } from "#app/session.ts";
import { LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import { DELIVERY_METHODS, LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { draftBatch } from "#lib/operations/draft-batch.ts";
import { newCodes } from "#lib/operations/link-code.ts";
import { numberDeliveries } from "#lib/operations/number-deliveries.ts";
import { printMailing } from "#lib/operations/print-mailing.ts";
import { CODED_METHODS, type CodeWish } from "#lib/operations/printed-codes.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { counted } from "../../names.ts";
import { officeAddress } from "../link-address.ts";

/** Writes the letter to everyone the file proposes who has none yet. */
export const draftBatchAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ kind: oneIn(LETTER_KINDS, "Choose a letter first."), replyBy: textOrNull }),
  does: draftBatch,
  says: ({ noticeIds }) => `${counted(noticeIds.length, "draft")} written.`,
});

/** Records the selected drafts as sent and prints them in mailing order; email goes to the outbox. */
export const sendBatchAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    notice: someTexts("Select the letters to send."),
    method: oneIn(DELIVERY_METHODS, "Choose a delivery method."),
    sentOn: text,
    despite: text,
    codes: checked,
  }),
  does: async (act, { notice, codes, ...sent }) => {
    const order = { ...sent, noticeIds: notice };
    if (sent.method === "mail-message")
      return sendNotices(act, { ...order, ...(codes ? { links: mailedLinks() } : {}) });
    const coded = codes && CODED_METHODS.includes(sent.method);
    const print = coded ? { codes: await codesFor(notice) } : {};
    return sendNotices(act, { ...order, print });
  },
  says: (_value, { notice, method }) =>
    method === "mail-message"
      ? `${counted(notice.length, "letter")} queued to send.`
      : `${counted(notice.length, "letter")} recorded as sent. The print is being made.`,
});

/** Prints letters that are out once more, with new codes where they are wished. */
export const printAgainAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ notice: someTexts("Select the letters to print."), codes: checked }),
  does: async (act, { lineId, notice, codes }) =>
    printMailing(act, {
      ...{ lineId, noticeIds: notice },
      ...(codes ? { codes: await codesFor(notice) } : {}),
    }),
  says: "The print is being made.",
});

const NUMBER = "number:";

/** Numbers of certified mail, each at its own delivery. */
export const saveNumbersAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.looseObject({}),
  does: (act, { lineId }, form) => numberDeliveries(act, { lineId, numbers: numbersIn(form) }),
  says: ({ count }) =>
    count === 0 ? "Nothing has changed." : `${counted(count, "number")} saved.`,
  field: (path) => `${NUMBER}${path}`,
});

function numbersIn(form: FormData): Record<string, string> {
  const typed = [...form.keys()].filter((name) => name.startsWith(NUMBER));
  return Object.fromEntries(
    typed.map((name) => [name.slice(NUMBER.length), text.parse(form.get(name))]),
  );
}

function mailedLinks() {
  return { days: LINK_DAYS, address: officeAddress(), newSecret: newToken };
}

async function codesFor(noticeIds: readonly string[]): Promise<CodeWish> {
  const codes = await newCodes(noticeIds.slice(0, MOST_CODES));
  return { days: LINK_DAYS, address: officeAddress(), codes };
}

/** No line has more letters of one kind; a form that was forged asks for no more work than that. */
const MOST_CODES = 1_000;

/** Label sheets: the kind of sheet first, then the letters. */
export const printLabelsAction = jobAction("labels", null);

export const printHangersAction = jobAction("door-hangers", null);
