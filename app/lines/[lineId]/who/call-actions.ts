"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { CALL_OUTCOMES, CALL_PURPOSES } from "#lib/domain/facts/household-call.ts";
import { recordHouseholdCall } from "#lib/operations/record-household-call.ts";

interface CallPlace {
  readonly lineId: string;
  readonly partyId: string;
  readonly propertyId: string;
}

/** Records a call to a household with a need: about what, for which day, and how it ended. */
export async function recordCallAction(
  place: CallPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const purpose = oneOf(CALL_PURPOSES, textOf(form, "purpose"));
  if (purpose === null) return refused("Say what the call was about.", form, "purpose");
  const outcome = oneOf(CALL_OUTCOMES, textOf(form, "outcome"));
  if (outcome === null) return refused("Say how the call ended.", form, "outcome");
  const recorded = recordHouseholdCall(act, {
    ...place,
    purpose,
    outcome,
    forDay: textOf(form, "forDay"),
    words: textOf(form, "words"),
    calledBy: textOf(form, "calledBy"),
    calledOn: textOf(form, "calledOn"),
  });
  revalidatePath(`/lines/${place.lineId}`, "layout");
  return stateOf(recorded, { words: "The call is recorded.", form });
}
