"use server";

import { revalidatePath } from "next/cache";
import { type FormState, oneOf, refused, textOf } from "#app/form.ts";
import { stateOf } from "#app/messages.ts";
import { requireAct } from "#app/session.ts";
import { ROLL_CALL_ANSWERS, type RollCallMatter } from "#lib/domain/facts/roll-call.ts";
import { recordRollCall } from "#lib/operations/record-roll-call.ts";

interface DoorPlace {
  readonly lineId: string;
  readonly matter: RollCallMatter;
  readonly pauseId: string;
  readonly propertyId: string;
  readonly unitId: string | null;
  /** The day and hours of the pause as the page showed them. */
  readonly about: string;
  /** The door's latest word as the page showed it. */
  readonly seen: string;
}

/** Records what came of one door: the button that was pressed is the answer. */
export async function recordDoorAction(
  place: DoorPlace,
  _state: FormState,
  form: FormData,
): Promise<FormState> {
  const act = await requireAct("record-the-field");
  const answer = oneOf(ROLL_CALL_ANSWERS, textOf(form, "answer"));
  if (answer === null) return refused("Choose what they said.", form, "answer");
  const recorded = recordRollCall(act, {
    ...place,
    answer,
    spokeWith: textOf(form, "spokeWith"),
    words: textOf(form, "words"),
    by: textOf(form, "by"),
  });
  revalidatePath(`/lines/${place.lineId}`, "layout");
  return stateOf(recorded, { words: "Recorded.", form });
}
