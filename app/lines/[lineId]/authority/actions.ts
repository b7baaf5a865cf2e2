"use server";

import { revalidatePath } from "next/cache";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { PERMIT_KINDS, PERMIT_STATES, REQUIREMENT_STATES } from "#lib/domain/facts/permit.ts";
import { addPermit } from "#lib/operations/add-permit.ts";
import { correctPermit } from "#lib/operations/correct-permit.ts";
import { markRequirement } from "#lib/operations/mark-requirement.ts";
import { recordBuilt } from "#lib/operations/record-built.ts";
import { startJob } from "#lib/operations/start-job.ts";
import { stepPermit } from "#lib/operations/step-permit.ts";

/** What the office says of one requirement, with the paper that meets it. */
export async function markRequirementAction(
  { lineId, requirementId }: { readonly lineId: string; readonly requirementId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const state = oneOf(REQUIREMENT_STATES, textOf(form, "state"));
  if (state === null) return refused("Select the status.", form, "state");
  const marked = markRequirement(act, {
    lineId,
    requirementId,
    state,
    uploadId: textOrNull(form, "uploadId"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(marked, { words: "Saved.", form });
}

export async function addPermitAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(PERMIT_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Select the kind of permit.", form, "kind");
  const added = addPermit(act, {
    lineId,
    kind,
    number: textOf(form, "number"),
    expiresOn: textOrNull(form, "expiresOn"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(added, { words: "Permit added.", form });
}

/** What is printed on a permit: its number and its day of expiry, whenever they come. */
export async function correctPermitAction(
  { lineId, permitId }: { readonly lineId: string; readonly permitId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const corrected = correctPermit(act, {
    lineId,
    permitId,
    number: textOf(form, "number"),
    expiresOn: textOrNull(form, "expiresOn"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(corrected, { words: "Saved.", form });
}

/** What was carried out, on a named person's word; the crew may say it too. */
export async function recordBuiltAction(
  { lineId, itemId }: { readonly lineId: string; readonly itemId: string | null },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const recorded = recordBuilt(act, {
    lineId,
    itemId,
    on: textOf(form, "on"),
    by: textOf(form, "by"),
    words: textOf(form, "words"),
    uploadId: textOrNull(form, "uploadId"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(recorded, { words: "Recorded.", form });
}

/** Records where a permit has got to. */
export async function stepPermitAction(
  { lineId, permitId }: { readonly lineId: string; readonly permitId: string },
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const state = oneOf(PERMIT_STATES, textOf(form, "state"));
  if (state === null) return refused("Select the next step.", form, "state");
  const stepped = stepPermit(act, {
    lineId,
    permitId,
    state,
    on: textOf(form, "on"),
    note: textOf(form, "note"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(stepped, { words: "Recorded.", form });
}

/** Starts the whole packet being made as one PDF. */
export async function buildPacketAction(lineId: string): Promise<JobStart> {
  const act = await requireAct("work-the-file");
  const started = startJob(act, { kind: "packet", lineId, subjectIds: [] });
  if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
  return { ok: true, jobId: started.value.jobId };
}
