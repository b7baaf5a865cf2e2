"use server";

import { revalidatePath } from "next/cache";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import { type FormState, oneOf, refused, textOf, textOrNull, textsOf, ticked } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import type { Account } from "#lib/domain/ledger/balance.ts";
import { BILLINGS } from "#lib/domain/ledger/propose.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";
import { ENTERED_KINDS, enterMoney } from "#lib/operations/enter-money.ts";
import { invoiceSplit } from "#lib/operations/invoice-split.ts";
import { reverseEntry } from "#lib/operations/reverse-entry.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { counted } from "../../names.ts";

/** Records a payment, deposit, credit or refund. */
export async function enterMoneyAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(ENTERED_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Select the type.", form, "kind");
  const [partyId = "", propertyId = ""] = textOf(form, "account").split(" ");
  if (partyId === "" || propertyId === "") return refused("Select the account.", form, "account");
  const typed = textOf(form, "amount");
  const amount = parseCents(typed);
  if (amount === null)
    return refused(`“${typed}” is not an amount. Enter it like $1,234.56.`, form, "amount");
  const method = oneOf(PAYMENT_METHODS, textOf(form, "method"));
  const entered = enterMoney(act, {
    lineId,
    kind,
    partyId,
    propertyId,
    amount,
    on: textOf(form, "on"),
    method: kind === "credit" ? null : method,
    reference: textOf(form, "reference"),
    uploadId: textOrNull(form, "uploadId"),
    note: textOf(form, "note"),
    beyond: ticked(form, "beyond"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const number = entered.ok ? entered.value.number : 0;
  return stateOf(entered, { words: `Posted as No. ${number}.`, form });
}

/** Reverses one entry whole, with the reason. */
export async function reverseEntryAction(
  { lineId, entryId }: { readonly lineId: string; readonly entryId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = textOf(form, "reason");
  const reversed = reverseEntry(act, { lineId, entryId, reason });
  revalidatePath(`/lines/${lineId}`, "layout");
  const number = reversed.ok ? reversed.value.number : 0;
  return stateOf(reversed, { words: `Reversed by No. ${number}.`, form });
}

/** Posts what the preview showed, for the properties that were checked, and has the invoices printed. */
export async function invoiceSplitAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const propertyIds = textsOf(form, "property");
  if (propertyIds.length === 0) return refused("Check at least one property.", form);
  const invoiced = invoiceSplit(act, {
    lineId,
    billing: oneOf(BILLINGS, textOf(form, "billing")) ?? "one-invoice",
    dueOn: textOf(form, "dueOn"),
    seen: textOf(form, "seen"),
    propertyIds,
  });
  if (invoiced.ok && invoiced.value.invoiceIds.length > 0)
    startJob(act, { kind: "accounts", lineId, subjectIds: invoiced.value.invoiceIds });
  revalidatePath(`/lines/${lineId}`, "layout");
  const many = counted(invoiced.ok ? invoiced.value.entryIds.length : 0, "entry", "entries");
  return stateOf(invoiced, { words: `${many} posted to the ledger.`, form });
}

/** The balance due of one account, paid today by check. */
export async function payInFullAction(
  {
    lineId,
    partyId,
    propertyId,
    owed,
  }: Account & { readonly lineId: string; readonly owed: Cents },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const entered = enterMoney(act, {
    lineId,
    kind: "payment",
    partyId,
    propertyId,
    amount: owed,
    on: act.today,
    method: "check",
    reference: textOf(form, "reference"),
    uploadId: null,
    note: "",
    beyond: false,
    inFull: true,
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const number = entered.ok ? entered.value.number : 0;
  return stateOf(entered, { words: `Posted as No. ${number}.`, form });
}

/** Starts the PDF of statements or invoices. */
export async function printAccountsAction(
  lineId: string,
  subjectIds: readonly string[],
): Promise<JobStart> {
  const act = await requireAct();
  const started = startJob(act, { kind: "accounts", lineId, subjectIds: [...subjectIds] });
  if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
  return { ok: true, jobId: started.value.jobId };
}
