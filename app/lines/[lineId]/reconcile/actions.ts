"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull, textsOf, ticked } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { TIE_IN_KINDS } from "#lib/domain/facts/line.ts";
import { PAIRING_STATES } from "#lib/domain/facts/pairing.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { acceptProposals } from "#lib/operations/accept-proposals.ts";
import { acceptWay } from "#lib/operations/accept-way.ts";
import type { Act, Refusal } from "#lib/operations/act.ts";
import { decideAlignment, withdrawAlignment } from "#lib/operations/decide-alignment.ts";
import { decidePairing } from "#lib/operations/decide-pairing.ts";
import { explainEntry } from "#lib/operations/explain-entry.ts";
import { liftWaiver } from "#lib/operations/lift-waiver.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { withdrawPairing } from "#lib/operations/withdraw-pairing.ts";
import type { Result } from "#lib/result.ts";
import { appendRows } from "../append-rows.ts";
import { rowFromForm } from "../row-form.ts";
import { signedNumber } from "./line-up/line-up-view.ts";
import { reasonFrom } from "./reasons.ts";
import { TEST_BLANK, testColumns } from "./undocumented/test-columns.ts";

const NO_REASON = "Select a reason, or type one.";

/** Accepts or rejects that an entry and a tie-in are the same, with the person's reason. */
export async function decideAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const state = oneOf(PAIRING_STATES, textOf(form, "state"));
  const reason = reasonOf(form);
  const tieInId = textOf(form, "tieInId");
  if (tieInId === "") return refused("Select the matching tie-in.", form, "tieInId");
  if (state === null || reason === null) return refused(NO_REASON, form, "words");
  const decided = decidePairing(act, {
    lineId,
    entryId: textOf(form, "entryId"),
    tieInId,
    state,
    reason,
  });
  const words = state === "accepted" ? "Accepted." : "Rejected (kept on file).";
  return settled(decided, { lineId, words, form });
}

/** Accepts, in one go, the proposals that stood on the page as sure: all of them or none. */
export async function acceptSureAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const entryIds = textsOf(form, "entryId");
  const tieInIds = textsOf(form, "tieInId");
  const pairs = entryIds.map((entryId, at) => ({ entryId, tieInId: tieInIds[at] ?? "" }));
  const accepted = acceptProposals(act, { lineId, pairs, reason });
  const count = accepted.ok ? accepted.value.count : 0;
  const words = count === 1 ? "1 match accepted." : `${count} matches accepted.`;
  return settled(accepted, { lineId, words, form });
}

/** Undoes a decision, with the reason; both stay in the history. */
export async function withdrawAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const pairingId = textOf(form, "pairingId");
  const withdrawn = withdrawPairing(act, { lineId, pairingId, reason });
  return settled(withdrawn, { lineId, words: "Decision undone.", form });
}

/** Explains an entry with no matching tie-in; an empty explanation removes it. */
export async function explainAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const explanation = reasonOf(form);
  if (explanation === null) return refused("Enter what happened to it.", form, "words");
  const explained = explainEntry(act, { lineId, entryId: textOf(form, "entryId"), explanation });
  return settled(explained, { lineId, words: "Explanation saved.", form });
}

/** Says what a tie-in is and whose, on the evidence that the person names. */
export async function settleAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(TIE_IN_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Select what it carries.", form, "kind");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const tieIn = settleTieIn(act, {
    lineId,
    tieInId: textOf(form, "tieInId"),
    kind,
    propertyId: textOrNull(form, "propertyId"),
    inactive: ticked(form, "inactive"),
    ownerAccepted: ticked(form, "ownerAccepted"),
    reason,
  });
  return settled(tieIn, { lineId, words: "Saved, with your name and the day.", form });
}

/** Lets work go on despite a hold, in the name of the person who says so. */
export async function waiveAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = textOf(form, "words");
  if (reason === "")
    return refused("Enter why work can proceed; it prints in the packet.", form, "words");
  const waived = waiveHold(act, { lineId, holdKey: textOf(form, "holdKey"), reason });
  return settled(waived, { lineId, words: "Waived under your name.", form });
}

/** Withdraws a waiver: the hold is back in effect. */
export async function liftWaiverAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const lifted = liftWaiver(act, { lineId, waiverId: textOf(form, "waiverId") });
  return settled(lifted, { lineId, words: "The hold is back in effect.", form });
}

/** Adds one test of a tie-in. */
export async function addTestAction(
  lineId: string,
  tieInId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const file = getLineFile(act.db, lineId);
  if (file === null) return refused("This line no longer exists.", form);
  const read = rowFromForm(testColumns(file), form, TEST_BLANK);
  if (!read.ok) return refused(read.error.message, form, read.error.path);
  const row = { ...read.value, id: act.newId(), tieInId };
  return appendRows(act, { lineId, table: "tests", rows: [row] }, { form, words: "Added." });
}

/** Accepts or rejects how the records, or one of them, line up with the camera. */
export async function alignAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const typed = textOf(form, "typed") !== "";
  const shift = signedNumber(textOf(form, "shift"), typed ? 100 : 1);
  if (shift === null) return refused("Enter feet, e.g. 2.4 or −2.4.", form, "shift");
  const scale = signedNumber(textOf(form, "scale"), typed ? 10_000 : 1);
  if (scale === null) return refused("Enter a percentage, e.g. 1.5.", form, "scale");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const state = textOf(form, "state") === "refused" ? "refused" : "accepted";
  const recordId = textOrNull(form, "recordId");
  const decided = decideAlignment(act, { lineId, recordId, shift, scale, state, reason });
  const words = state === "accepted" ? "Accepted." : "Rejected; it is not proposed again.";
  return settled(decided, { lineId, words, form });
}

/** Undoes a decision on how they line up. */
export async function withdrawAlignmentAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const alignmentId = textOf(form, "alignmentId");
  const withdrawn = withdrawAlignment(act, { lineId, alignmentId, reason });
  return settled(withdrawn, { lineId, words: "Decision undone.", form });
}

/**
 * Accepts another way to pair: its shift and scale; or, where those are the same as now, the pairs in
 * which it differs.
 */
export async function acceptAlternativeAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const reason = reasonOf(form);
  if (reason === null) return refused(NO_REASON, form, "words");
  const accepted = acceptAlternative(act, { lineId, key: textOf(form, "key"), reason });
  return settled(accepted, { lineId, words: "Accepted in your name.", form });
}

function acceptAlternative(
  act: Act,
  { lineId, key, reason }: { lineId: string; key: string; reason: string },
): Result<unknown, Refusal> {
  const file = getLineFile(act.db, lineId);
  const report = file && reportOn(file, act.today);
  const way = report?.alternatives.find((each) => each.key === key);
  const own = report?.alignment?.own.find((each) => each.recordId === way?.recordId);
  const now = own ?? report?.alignment;
  const same = way?.shift === now?.shift && way?.scale === now?.scale;
  if (way === undefined || same) return acceptWay(act, { lineId, key, reason });
  const { recordId, shift, scale } = way;
  const word = { lineId, recordId, shift, scale, reason };
  return decideAlignment(act, { ...word, state: "accepted" });
}

function reasonOf(form: FormData): string | null {
  return reasonFrom(textOf(form, "reason"), textOf(form, "words"));
}

function settled<T>(
  result: Result<T, Refusal>,
  { lineId, words, form }: { lineId: string; words: string; form: FormData },
): FormState {
  if (result.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(result, { words, form });
}
