"use server";

import { revalidatePath } from "next/cache";
import type { JobStart } from "#app/_components/job-button.client.tsx";
import { type FormState, ticked } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { startJob } from "#lib/operations/start-job.ts";

/** Has the statements of these properties made as one PDF. */
export async function printStatementsAction(
  lineId: string,
  propertyIds: readonly string[],
): Promise<JobStart> {
  const act = await requireAct();
  const started = startJob(act, { kind: "statements", lineId, subjectIds: [...propertyIds] });
  if (!started.ok) return { ok: false, message: sentenceOf(started.error) };
  return { ok: true, jobId: started.value.jobId };
}

/** Decides what every statement of the line shows beside its reader’s own amount. */
export async function decideStatementsAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const facts = { statementOthers: ticked(form, "others"), statementRules: ticked(form, "rules") };
  const saved = saveLine(act, { lineId, facts });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(saved, { words: "Saved; the statements use it from now on.", form });
}
