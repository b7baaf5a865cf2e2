"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { CLOSING_WORDS } from "#lib/domain/closing/closing.ts";
import { MATERIALS } from "#lib/domain/facts/line.ts";
import { parseFeet } from "#lib/domain/length/station.ts";
import { closeLine, reopenLine } from "#lib/operations/close-line.ts";
import { saveLine } from "#lib/operations/save-line.ts";

export async function saveLineAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const lengths: Record<string, number | null> = {};
  for (const name of ["upperEnd", "mainStation"]) {
    const typed = textOf(form, name);
    const length = typed === "" ? null : parseFeet(typed);
    if (typed !== "" && length === null) {
      return refused(`Not saved: “${typed}” is not a length. Enter feet, e.g. 26.5.`, form, name);
    }
    lengths[name] = length;
  }
  const diameter = textOf(form, "diameter");
  const saved = saveLine(act, {
    lineId,
    facts: {
      name: textOf(form, "name"),
      town: textOf(form, "town"),
      upperEnd: lengths["upperEnd"] ?? null,
      mainStation: lengths["mainStation"] ?? null,
      material: oneOf(MATERIALS, textOf(form, "material")) ?? "unknown",
      diameter: diameter === "" ? null : Number(diameter),
      mainNote: textOf(form, "mainNote"),
      note: textOf(form, "note"),
    },
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(saved, { words: "Saved.", form });
}

export async function closeLineAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const words = Object.fromEntries(CLOSING_WORDS.map((each) => [each, textOf(form, each)]));
  const closed = closeLine(act, { lineId, reason: textOf(form, "reason"), words });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(closed, { words: "The file is closed.", form });
}

export async function reopenLineAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct();
  const opened = reopenLine(act, { lineId, reason: textOf(form, "reason") });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(opened, { words: "The file is open again.", form });
}
