"use server";

import { revalidatePath } from "next/cache";
import { type FormState, textOf, textOrNull } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { saveLine } from "#lib/operations/save-line.ts";

/** Saves for how long and for what the office stands behind the work. */
export async function saveWarrantyAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const months = textOrNull(form, "warrantyMonths");
  const saved = saveLine(act, {
    lineId,
    facts: {
      warrantyMonths: months === null ? null : Number(months),
      warrantyCovers: textOf(form, "warrantyCovers"),
    },
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(saved, { words: "Saved.", form });
}
