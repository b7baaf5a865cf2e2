"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { numberOrNull, text } from "#app/fields.ts";
import { saveLine } from "#lib/operations/save-line.ts";

/** Saves for how long and for what the office stands behind the work. */
export const saveWarrantyAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ warrantyMonths: numberOrNull, warrantyCovers: text, seen: text }),
  does: (act, { lineId, seen, ...facts }) => saveLine(act, { lineId, facts, seen }),
  says: "Saved.",
  theirs: "under “What happened?”",
});
