"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/_form.ts";
import { stateOf } from "#app/_messages.ts";
import { requireAct } from "#app/_session.ts";
import { CONSENT_KINDS, CONSENT_STATES } from "#lib/domain/consent/consent.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";

/** Records one consent of one signer, with the paper and the amount that it is on. */
export async function recordConsentAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const [partyId = "", propertyId = ""] = textOf(form, "signer").split(" ");
  if (partyId === "" || propertyId === "") return refused("Say who it is.", form, "signer");
  const kind = oneOf(CONSENT_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Say which consent it is.", form, "kind");
  const state = oneOf(CONSENT_STATES, textOf(form, "state"));
  if (state === null) return refused("Say how it stands.", form, "state");
  const amount = textOf(form, "amount");
  const cents = amount === "" ? null : parseCents(amount);
  if (amount !== "" && cents === null) {
    return refused(`“${amount}” is not an amount. Type it as 1250.00.`, form, "amount");
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
