"use server";

import { z } from "zod";
import { formAction, jobAction, onLine } from "#app/action.ts";
import { checked, text } from "#app/fields.ts";
import { saveLine } from "#lib/operations/save-line.ts";

/** Has the statements of these properties made as one PDF. */
export const printStatementsAction = jobAction("statements", null);

/** Decides what every statement of the line shows beside its reader’s own amount. */
export const decideStatementsAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ others: checked, rules: checked, seen: text }),
  does: (act, { lineId, others, rules, seen }) =>
    saveLine(act, { lineId, facts: { statementOthers: others, statementRules: rules }, seen }),
  says: "Saved; the statements use it from now on.",
  theirs: "under “What happened?”",
});
