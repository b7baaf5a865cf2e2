"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { CONSENT_KINDS, RECORDED_STATES } from "#lib/domain/facts/consent.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";
import { decideSignedName } from "#lib/operations/decide-signed-name.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";

/** Records one consent of one signer, with the paper and the amount that it is on. */
export async function recordConsentAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const [partyId = "", propertyId = ""] = textOf(form, "signer").split(" ");
  if (partyId === "" || propertyId === "") return refused("Choose the signer.", form, "signer");
  const kind = oneOf(CONSENT_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Choose the consent.", form, "kind");
  const state = oneOf(RECORDED_STATES, textOf(form, "state"));
  if (state === null) return refused("Choose a status.", form, "state");
  const amount = textOf(form, "amount");
  const cents = amount === "" ? null : parseCents(amount);
  if (amount !== "" && cents === null) {
    return refused(`“${amount}” is not an amount. Enter it as 1250.00.`, form, "amount");
  }
  const recorded = recordConsent(act, {
    lineId,
    kind,
    partyId,
    propertyId,
    state,
    stateOn: textOf(form, "stateOn"),
    splitId: kind === "pay" ? textOrNull(form, "splitId") : null,
    amount: kind === "pay" ? cents : null,
    recordingNumber: textOf(form, "recordingNumber"),
    uploadId: textOrNull(form, "uploadId"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(recorded, { words: "The consent is recorded.", form });
}

/** Takes a name typed under a signature for the signer's, or does not, with the reason. */
export async function decideNameAction(
  { lineId, consentId }: { readonly lineId: string; readonly consentId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const answer = oneOf(["accepted", "refused"] as const, textOf(form, "answer"));
  if (answer === null) return refused("Choose whether it was the signer.", form, "answer");
  const accepted = answer === "accepted";
  const decided = decideSignedName(act, {
    ...{ lineId, consentId, accepted },
    reason: textOf(form, "reason"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words = accepted
    ? "Accepted. The consent counts from now on."
    : "Not accepted. The consent does not count; ask for a new signature.";
  return stateOf(decided, { words, form });
}
