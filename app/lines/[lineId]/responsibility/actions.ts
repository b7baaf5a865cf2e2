"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { text } from "#app/fields.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";

/** Sets which rule of which authority the office applies on this line; empty undoes the choice. */
export const chooseRuleAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ rule: text, seen: text }),
  does: (act, { lineId, rule, seen }) => {
    const [authorityId = "", ruleId = ""] = rule.split(" ");
    const chosen = { authorityId: authorityId || null, ruleId: ruleId || null };
    return chooseRule(act, { lineId, ...chosen, seen });
  },
  says: "The rule is set; everything that depends on it is updated.",
  theirs: "on this page",
});
