"use server";

import { z } from "zod";
import { formAction, onLine } from "#app/action.ts";
import { oneIn, text, textOrNull } from "#app/fields.ts";
import { RULING_KINDS } from "#lib/domain/facts/ruling.ts";
import { recordRuling, withdrawRuling } from "#lib/operations/record-ruling.ts";

/** Records what the authority ruled on a tie-in. */
export const recordRulingAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({
    tieInId: text,
    kind: oneIn(RULING_KINDS, "Select the ruling."),
    decidedBy: text,
    decidedOn: text,
    dueOn: textOrNull,
    reference: text,
    uploadId: textOrNull,
    note: text,
    seen: text,
  }),
  does: recordRuling,
  says: "Ruling saved; its effects are calculated.",
  theirs: "with the tie-in, above this form",
});

/** Deletes a ruling that was entered in error; the one before it is in force again. */
export const withdrawRulingAction = formAction(onLine, {
  may: "work-the-file",
  typed: z.object({ rulingId: text, reason: text }),
  does: withdrawRuling,
  says: "Ruling deleted.",
});
