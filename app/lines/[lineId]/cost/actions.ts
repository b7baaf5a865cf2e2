"use server";

import { z } from "zod";
import { formAction, onLine, onLineAt } from "#app/action.ts";
import { id, needed, oneIn, oneInOr, text, textOrNull } from "#app/fields.ts";
import { SPLIT_RULES, UNKNOWN_SHARES, USUAL_UNKNOWN_SHARES } from "#lib/domain/facts/split.ts";
import { parseFeet } from "#lib/domain/length/station.ts";
import { chooseOption } from "#lib/operations/choose-option.ts";
import { chooseSplit } from "#lib/operations/choose-split.ts";
import { cutToTieIn } from "#lib/operations/cut-to-tie-in.ts";
import { decideChangeOrder } from "#lib/operations/decide-change-order.ts";
import { proposeChangeOrder } from "#lib/operations/propose-change-order.ts";
import { takeFixtureWeights } from "#lib/operations/take-fixture-weights.ts";

/** Chooses a rule with its particulars and a reason: a new version with its amounts frozen. */
export const chooseSplitAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    rule: oneIn(SPLIT_RULES, "Select a rule."),
    reason: needed("Say why this rule, in words every neighbor may read."),
    fault: text,
    payer: textOrNull,
    unknownShares: oneInOr(UNKNOWN_SHARES, USUAL_UNKNOWN_SHARES),
    seen: text,
  }),
  does: (act, { lineId, rule, reason, fault, payer, unknownShares, seen }) =>
    chooseSplit(act, {
      lineId,
      choice: {
        rule,
        faultStation: rule === "upstream-of-fault" ? parseFeet(fault) : null,
        payerId: rule === "single-payer" ? payer : null,
        unknownShares,
      },
      reason,
      seen,
    }),
  says: "New version saved; its amounts are below.",
  theirs: "the newest version, below",
});

/** Selects one of the priced repair options, with a reason. */
export const chooseOptionAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ optionId: textOrNull, reason: text, seen: text }),
  does: chooseOption,
  theirs: "above the form",
  says: (_value, { optionId }) =>
    optionId === null
      ? "No option selected; all are shown side by side."
      : "Selected. All pages and letters now use this option.",
});

/** Ends work that reaches a little past the last tie-in at that tie-in. */
export const cutToTieInAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ itemId: text }),
  does: cutToTieIn,
  says: "It now ends at the last tie-in.",
});

/** Opens the next change order. */
export const proposeChangeOrderAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ title: text, reason: text, orderedBy: text }),
  does: proposeChangeOrder,
  says: "Saved. Now link the items it changes in the scope of work, under “Added by” and “Dropped by”.",
});

/** A named person approves a change order or rejects it. */
export const decideChangeOrderAction = formAction(onLineAt({ changeOrderId: id }), {
  may: "work-the-file",
  typed: z.object({
    state: oneIn(["agreed", "refused"], "Select approved or rejected."),
    by: text,
    reason: text,
  }),
  does: decideChangeOrder,
  says: (_value, { state }) =>
    state === "agreed"
      ? "Approved. It counts from now on; update the split."
      : "Rejected. It changes nothing.",
});

/** Takes every property's weight from its plumbing fixtures. */
export const takeFixtureWeightsAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({}),
  does: takeFixtureWeights,
  says: "Weights updated; the rule by weights uses them.",
});
