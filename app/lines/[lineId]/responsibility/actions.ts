"use server";

import { revalidatePath } from "next/cache";
import { type FormState, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";

/** Sets which rule of which authority the office applies on this line; empty undoes the choice. */
export async function chooseRuleAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const [authorityId = "", ruleId = ""] = textOf(form, "rule").split(" ");
  const chosen = chooseRule(act, {
    lineId,
    authorityId: authorityId === "" ? null : authorityId,
    ruleId: ruleId === "" ? null : ruleId,
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(chosen, {
    words: "The rule is set; everything that depends on it is updated.",
    form,
  });
}
