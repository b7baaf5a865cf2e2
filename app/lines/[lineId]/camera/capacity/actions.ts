"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { oneInOrNull, text } from "#app/fields.ts";
import { PLUMBING_CODES, SLOPE_NAMES } from "#lib/domain/facts/plumbing-code.ts";
import { saveLine } from "#lib/operations/save-line.ts";

/** Chooses the code whose tables are used, and the least slope that is tested. */
export const saveTablesAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    plumbingCode: oneInOrNull(PLUMBING_CODES, "Select a code."),
    leastSlope: oneInOrNull(SLOPE_NAMES, "Select a slope."),
    seen: text,
  }),
  does: (act, { lineId, seen, ...facts }) => saveLine(act, { lineId, facts, seen }),
  says: "Saved. All results use it.",
  theirs: "beside the heading",
});
