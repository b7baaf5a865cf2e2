"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { RULING_KINDS } from "#lib/domain/facts/ruling.ts";
import { recordRuling, withdrawRuling } from "#lib/operations/record-ruling.ts";

/** Records what the authority ruled on a tie-in. */
export async function recordRulingAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const kind = oneOf(RULING_KINDS, textOf(form, "kind"));
  if (kind === null) return refused("Select the ruling.", form, "kind");
  const recorded = recordRuling(act, {
    lineId,
    tieInId: textOf(form, "tieInId"),
    kind,
    decidedBy: textOf(form, "decidedBy"),
    decidedOn: textOf(form, "decidedOn"),
    dueOn: textOrNull(form, "dueOn"),
    reference: textOf(form, "reference"),
    uploadId: textOrNull(form, "uploadId"),
    note: textOf(form, "note"),
  });
  if (recorded.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(recorded, { words: "Ruling saved; its effects are calculated.", form });
}

/** Deletes a ruling that was entered in error; the one before it is in force again. */
export async function withdrawRulingAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const withdrawn = withdrawRuling(act, {
    lineId,
    rulingId: textOf(form, "rulingId"),
    reason: textOf(form, "reason"),
  });
  if (withdrawn.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(withdrawn, { words: "Ruling deleted.", form });
}
