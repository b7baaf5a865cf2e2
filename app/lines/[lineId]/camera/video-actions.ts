"use server";

import { revalidatePath } from "next/cache";
import { done, type FormState } from "#app/form.ts";
import { sentenceOf, stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { removeVideo } from "#lib/operations/remove-video.ts";
import { setPicture } from "#lib/operations/set-picture.ts";

/** Takes the recording of a run out of the file. */
export async function removeVideoAction(
  lineId: string,
  runId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const removed = removeVideo(act, { lineId, runId });
  if (!removed.ok) return stateOf(removed, { words: "", form });
  revalidatePath(`/lines/${lineId}`, "layout");
  return done("The video was removed from the file.");
}

/** Gives an observation its picture; an empty answer where that was done, else what is wrong. */
export async function setPictureAction(
  lineId: string,
  observationId: string,
  uploadId: string | null,
): Promise<string> {
  const act = await requireAct("record-the-field");
  const set = setPicture(act, { lineId, observationId, uploadId });
  if (!set.ok) return sentenceOf(set.error);
  revalidatePath(`/lines/${lineId}`, "layout");
  return "";
}
