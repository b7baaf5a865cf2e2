"use server";

import { z } from "zod";
import { formAction, jobAction, onLineAt } from "#app/action.ts";
import { id, oneIn, text, textOrNull } from "#app/fields.ts";
import { AGREEMENT_STEP_KINDS } from "#lib/domain/facts/agreement-step.ts";
import { stepAgreement } from "#lib/operations/step-agreement.ts";

/** Records what happened to an agreement on its way to the record. */
export const stepAgreementAction = formAction(onLineAt({ agreementId: id }), {
  may: "work-the-file",
  typed: z.object({
    kind: oneIn(AGREEMENT_STEP_KINDS, "Select the step."),
    on: text,
    partyId: textOrNull,
    number: text,
    uploadId: textOrNull,
    note: text,
  }),
  does: stepAgreement,
  says: "Step saved.",
});

/** Has the draft of an agreement made for paper. */
export const printAgreementAction = jobAction("agreement", null);
