"use server";

import { z } from "zod";
import { formAction, onLineAt } from "#app/action.ts";
import { id, oneIn, text } from "#app/fields.ts";
import { ROLL_CALL_ANSWERS, ROLL_CALL_MATTERS } from "#lib/domain/facts/roll-call.ts";
import { recordRollCall } from "#lib/operations/record-roll-call.ts";

const door = onLineAt({
  matter: z.enum(ROLL_CALL_MATTERS),
  pauseId: id,
  propertyId: id,
  unitId: id.nullable(),
  /** The day and hours of the pause as the page showed them. */
  about: z.string(),
  /** The door's latest word as the page showed it. */
  seen: z.string(),
});

/** Records what came of one door: the button that was pressed is the answer. */
export const recordDoorAction = formAction(door, {
  may: "record-the-field",
  typed: z.object({
    answer: oneIn(ROLL_CALL_ANSWERS, "Choose what they said."),
    spokeWith: text,
    words: text,
    by: text,
  }),
  does: recordRollCall,
  says: "Recorded.",
});
