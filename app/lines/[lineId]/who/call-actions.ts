"use server";

import { z } from "zod";
import { formAction, onLineAt } from "#app/action.ts";
import { id, oneIn, text } from "#app/fields.ts";
import { CALL_OUTCOMES, CALL_PURPOSES } from "#lib/domain/facts/household-call.ts";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";

/** Records a call to a household with a need: about what, for which day, and how it ended. */
export const recordCallAction = formAction(onLineAt({ partyId: id, propertyId: id }), {
  may: "record-the-field",
  typed: z.object({
    purpose: oneIn(CALL_PURPOSES, "Say what the call was about."),
    outcome: oneIn(CALL_OUTCOMES, "Say how the call ended."),
    forDay: text,
    words: text,
    calledBy: text,
    calledOn: text,
  }),
  does: recordHouseholdCall,
  says: "The call is recorded.",
});
