"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf, textOrNull } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { SPLIT_RULES, UNKNOWN_SHARES, USUAL_UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import { parseFeet } from "#lib/domain/length/station.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { cutToTieIn } from "#lib/operations/cut-to-tie-in.ts";
import { decideChangeOrder } from "#lib/operations/decide-change-order.ts";
import { proposeChangeOrder } from "#lib/operations/propose-change-order.ts";
import { takeFixtureWeights } from "#lib/operations/take-fixture-weights.ts";

/** Chooses a rule with its particulars and a reason: a new version with its amounts frozen. */
export async function chooseSplitAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const rule = oneOf(SPLIT_RULES, textOf(form, "rule"));
  if (rule === null) return refused("Select a rule.", form, "rule");
  const reason = textOf(form, "reason");
  if (reason === "") {
    return refused("Say why this rule, in words every neighbor may read.", form, "reason");
  }
  const chosen = chooseSplit(act, {
    lineId,
    choice: {
      rule,
      faultStation: rule === "upstream-of-fault" ? parseFeet(textOf(form, "fault")) : null,
      payerId: rule === "single-payer" ? textOrNull(form, "payer") : null,
      unknownShares: oneOf(UNKNOWN_SHARES, textOf(form, "unknownShares")) ?? USUAL_UNKNOWN_SHARES,
    },
    reason,
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(chosen, { words: "New version saved; its amounts are below.", form });
}

/** Selects one of the priced repair options, with a reason. */
export async function chooseOptionAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const optionId = textOrNull(form, "optionId");
  const chosen = chooseOption(act, { lineId, optionId, reason: textOf(form, "reason") });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words =
    optionId === null
      ? "No option selected; all are shown side by side."
      : "Selected. All pages and letters now use this option.";
  return stateOf(chosen, { words, form });
}

/** Ends work that reaches a little past the last tie-in at that tie-in. */
export async function cutToTieInAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const cut = cutToTieIn(act, { lineId, itemId: textOf(form, "itemId") });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(cut, { words: "It now ends at the last tie-in.", form });
}

/** Opens the next change order. */
export async function proposeChangeOrderAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const proposed = proposeChangeOrder(act, {
    lineId,
    title: textOf(form, "title"),
    reason: textOf(form, "reason"),
    orderedBy: textOf(form, "orderedBy"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words =
    "Saved. Now link the items it changes in the scope of work, under “Added by” and “Dropped by”.";
  return stateOf(proposed, { words, form });
}

/** A named person approves a change order or rejects it. */
export async function decideChangeOrderAction(
  lineId: string,
  changeOrderId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const state = oneOf(["agreed", "refused"] as const, textOf(form, "state"));
  if (state === null) return refused("Select approved or rejected.", form, "state");
  const decided = decideChangeOrder(act, {
    lineId,
    changeOrderId,
    state,
    by: textOf(form, "by"),
    reason: textOf(form, "reason"),
  });
  revalidatePath(`/lines/${lineId}`, "layout");
  const words =
    state === "agreed"
      ? "Approved. It counts from now on; update the split."
      : "Rejected. It changes nothing.";
  return stateOf(decided, { words, form });
}

/** Takes every property's weight from its plumbing fixtures. */
export async function takeFixtureWeightsAction(
  lineId: string,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("work-the-file");
  const taken = takeFixtureWeights(act, { lineId });
  revalidatePath(`/lines/${lineId}`, "layout");
  return stateOf(taken, { words: "Weights updated; the rule by weights uses them.", form });
}
