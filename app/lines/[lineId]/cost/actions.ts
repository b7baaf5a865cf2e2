"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/_form.ts";
import { stateOf } from "#app/_messages.ts";
import { requireAct } from "#app/_session.ts";
import { parseFeet } from "#lib/domain/line/station.ts";
import { SPLIT_RULES, UNKNOWN_SHARES } from "#lib/domain/split/split.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";

/** Chooses a rule with its particulars and a reason: a new version with its amounts frozen. */
export async function chooseSplitAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const rule = oneOf(SPLIT_RULES, textOf(form, "rule"));
  if (rule === null) return refused("Choose one of the rules.", form, "rule");
  const reason = textOf(form, "reason");
  if (reason === "") {
    return refused("Say why this rule, in words that every neighbour may read.", form, "reason");
  }
  const chosen = chooseSplit(act, {
    lineId,
    choice: {
      rule,
      faultStation: rule === "upstream-of-fault" ? parseFeet(textOf(form, "fault")) : null,
      payerId: rule === "single-payer" ? textOrNull(form, "payer") : null,
      unknownShares: oneOf(UNKNOWN_SHARES, textOf(form, "unknownShares")) ?? "carried",
    },
    reason,
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(chosen, { words: "A new version is chosen; its amounts stand above.", form });
}
