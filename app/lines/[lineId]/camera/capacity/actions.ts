"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { PLUMBING_CODES, SLOPE_NAMES } from "#lib/domain/facts/plumbing-code.ts";
import { saveLine } from "#lib/operations/save-line.ts";

/** Chooses the code whose tables are used, and the least slope that is tested. */
export async function saveTablesAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const code = textOf(form, "plumbingCode");
  const plumbingCode = oneOf(PLUMBING_CODES, code);
  if (plumbingCode === null && code !== "") return refused("Select a code.", form, "plumbingCode");
  const slope = textOf(form, "leastSlope");
  const leastSlope = oneOf(SLOPE_NAMES, slope);
  if (leastSlope === null && slope !== "") return refused("Select a slope.", form, "leastSlope");
  const saved = saveLine(act, { lineId, facts: { plumbingCode, leastSlope } });
  if (saved.ok) revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(saved, { words: "Saved. All results use it.", form });
}
