"use server";

import { redirect } from "next/navigation";
import { type FormState, refused, textOf } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { importLine } from "#lib/operations/import-line.ts";

/** A line file as pasted, or as chosen from the disk; the pasted one wins. */
export async function importLineAction(_state: FormState, form: FormData): Promise<FormState> {
  const act = await requireAct();
  const pasted = textOf(form, "text");
  const file = form.get("file");
  const text = pasted === "" && file instanceof File ? await file.text() : pasted;
  if (text.trim() === "") {
    return refused("Nothing was imported: choose a line file, or paste one.", form, "file");
  }
  const made = importLine(act, text);
  if (!made.ok) return refused(sentenceOf(made.error), form, "text");
  return redirect(`/lines/${made.value.lineId}`);
}
