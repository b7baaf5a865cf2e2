"use server";

import { revalidatePath } from "next/cache";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { AGREEMENT_STEP_KINDS } from "#lib/domain/facts/agreement-step.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { stepAgreement } from "#lib/operations/step-agreement.ts";

/** Records what happened to an agreement on its way to the record. */
export async function stepAgreementAction(
  { lineId, agreementId }: { readonly lineId: string; readonly agreementId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(AGREEMENT_STEP_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Select the step.", form, "kind");
  const stepped = stepAgreement(act, {
    lineId,
    agreementId,
    kind,
    on: textOf(form, "on"),
    partyId: textOrNull(form, "partyId"),
    number: textOf(form, "number"),
    uploadId: textOrNull(form, "uploadId"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(stepped, { words: "Step saved.", form });
}

/** Has the draft of an agreement made for paper. */
export async function printAgreementAction(lineId: string, agreementId: string): Promise<JobStart> {
  const act = await requireAct();
  const started = startJob(act, { kind: "agreement", lineId, subjectIds: [agreementId] });
  if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
  return { ok: true, jobId: started.value.jobId };
}
