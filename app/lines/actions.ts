"use server";

import { redirect } from "next/navigation";
import { type FormState, refused, textOf, textOrNull } from "#app/form.ts";
import { sentenceOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { openLine } from "#lib/operations/open-line.ts";

export async function openLineAction(_state: FormState, form: FormData): Promise<FormState> {
  const act = await requireAct();
  const opened = openLine(act, {
    name: textOf(form, "name"),
    town: textOf(form, "town"),
    authorityId: textOrNull(form, "authorityId"),
  });
  if (!opened.ok) return refused(sentenceOf(opened.error), form, opened.error.path);
  return redirect(`/lines/${opened.value.lineId}/who`);
}
