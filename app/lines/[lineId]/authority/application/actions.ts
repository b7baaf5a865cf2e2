"use server";

import { z } from "zod";
import { parseTypedDay } from "#app/_components/grid/day-text.ts";
import { formAction, onLineAt } from "#app/action.ts";
import { id, oneIn, orNull, text, textOrNull } from "#app/fields.ts";
import { APPLICANTS, DRAWING_STATES, WORK_TYPES } from "#lib/domain/facts/application.ts";
import { PERMIT_KINDS } from "#lib/domain/facts/permit.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";
import { markDrawing } from "#lib/operations/mark-drawing.ts";
import { saveApplication } from "#lib/operations/save-application.ts";

/** Saves what the application for one kind of permit says beside the facts of the line. */
export const saveApplicationAction = formAction(onLineAt({ permitKind: z.enum(PERMIT_KINDS) }), {
  may: "work-the-file",
  typed: z.object({
    applicant: text,
    applicantIs: oneIn(APPLICANTS, "Select as whom the applicant signs."),
    attestedOn: orNull(
      parseTypedDay,
      (typed) => `Not saved: “${typed}” is not a date. Enter it as 11/20/2026.`,
    ),
    attestationId: textOrNull,
    workType: oneIn(WORK_TYPES, "Select the work type."),
    valuation: orNull(
      parseCents,
      (typed) => `Not saved: “${typed}” is not an amount. Enter it as 12,500.00.`,
    ),
    traffic: text,
    pedestrians: text,
    insuredAs: text,
    certificateId: textOrNull,
    note: text,
    seen: text,
  }),
  does: (act, { lineId, permitKind, seen, ...rest }) =>
    saveApplication(act, { lineId, facts: { permitKind, ...rest }, seen }),
  says: "Saved.",
  theirs: "under “What happened?”",
});

/** A person's word on one item of the drawing checklist. */
export const markDrawingAction = formAction(onLineAt({ itemId: id }), {
  may: "work-the-file",
  typed: z.object({
    state: oneIn(DRAWING_STATES, "Select whether it is shown."),
    note: text,
    seen: text,
  }),
  does: markDrawing,
  says: "Saved.",
  theirs: "above the form",
});
