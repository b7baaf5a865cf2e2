"use server";

import { revalidatePath } from "next/cache";
import { type FormState, refused, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { judgeParties, undoSameParty } from "#lib/operations/merge-parties.ts";

/** Says of two people on the list that they are one, under which name, or that they are two. */
export async function judgePartiesAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const [a, b, keep] = [textOf(form, "a"), textOf(form, "b"), textOf(form, "keep")];
  if (a === "") return refused("Choose a person.", form, "a");
  if (b === "") return refused("Choose the other person.", form, "b");
  if (keep === "") return refused("Choose which name is kept, or that they are two.", form, "keep");
  const [partyId, intoId] = keep === "b" ? [a, b] : [b, a];
  const reason = textOf(form, "reason");
  const judged = judgeParties(act, { lineId, partyId, intoId, same: keep !== "two", reason });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words = keep === "two" ? "Kept as two people." : "Merged. You can undo it below.";
  return stateOf(judged, { words, form });
}

/** Takes back what was said of two people. */
export async function undoSamePartyAction(
  lineId: string,
  wordId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const undone = undoSameParty(act, { lineId, wordId });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(undone, { words: "Undone.", form });
}
