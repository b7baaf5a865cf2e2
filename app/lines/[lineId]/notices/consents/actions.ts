"use server";

import { z } from "zod";
import { formAction, onLine, onLineAt } from "#app/action.ts";
import { id, oneIn, orNull, text, textOrNull, twoIds } from "#app/fields.ts";
import { CONSENT_KINDS, RECORDED_STATES } from "#lib/domain/facts/consent.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";
import { decideSignedName } from "#lib/operations/decide-signed-name.ts";
import { recordConsent } from "#lib/operations/record-consent.ts";

/** Records one consent of one signer, with the paper and the amount that it is on. */
export const recordConsentAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    signer: twoIds("Choose the signer."),
    kind: oneIn(CONSENT_KINDS, "Choose the consent."),
    state: oneIn(RECORDED_STATES, "Choose a status."),
    amount: orNull(parseCents, (typed) => `“${typed}” is not an amount. Enter it as 1250.00.`),
    stateOn: text,
    splitId: textOrNull,
    recordingNumber: text,
    uploadId: textOrNull,
    note: text,
  }),
  does: (act, { signer: [partyId, propertyId], splitId, amount, ...typed }) =>
    recordConsent(act, {
      ...typed,
      partyId,
      propertyId,
      splitId: typed.kind === "pay" ? splitId : null,
      amount: typed.kind === "pay" ? amount : null,
    }),
  says: "The consent is recorded.",
});

/** Takes a name typed under a signature for the signer's, or does not, with the reason. */
export const decideNameAction = formAction(onLineAt({ consentId: id }), {
  may: "work-the-file",
  typed: z.object({
    answer: oneIn(["accepted", "refused"], "Choose whether it was the signer."),
    reason: text,
  }),
  does: (act, { answer, ...word }) =>
    decideSignedName(act, { ...word, accepted: answer === "accepted" }),
  says: (_value, { answer }) =>
    answer === "accepted"
      ? "Accepted. The consent counts from now on."
      : "Not accepted. The consent does not count; ask for a new signature.",
});
