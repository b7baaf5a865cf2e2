import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import type { RollCallAnswer } from "#lib/domain/facts/roll-call.ts";
import type { Door, RollCall } from "#lib/domain/rollcall/roll-call.ts";
import { pauseKey } from "#lib/operations/record-roll-call.ts";
import { recordDoorAction } from "./actions.ts";
import styles from "./roll-call.module.css";

interface DoorFormProps {
  readonly lineId: string;
  readonly call: RollCall;
  readonly door: Door;
  /** What the door is called. */
  readonly name: string;
  readonly caller: string | null;
}

const BUTTONS: readonly (readonly [RollCallAnswer, string])[] = [
  ["aware", "Aware"],
  ["agreed", "Agreed"],
  ["needs-help", "Needs help"],
  ["not-reached", "Not reached"],
];

/** One press records the door; a name and what was said can stand beside it. */
export function DoorForm({ call, name, caller, ...place }: DoorFormProps) {
  const buttons = BUTTONS.filter(([answer]) => call.matter === "drains-off" || answer !== "agreed");
  return (
    <ActionForm
      action={actionFor({ call, ...place })}
      label={`${name}: what they said`}
      className={`screen-only ${styles["form"]}`}
    >
      <div className={styles["fields"]}>
        <Field label="Spoke with" name="spokeWith" />
        <Field label="What was said" name="words" />
      </div>
      <div className={styles["presses"]}>
        {buttons.map(([answer, words]) => (
          <SubmitButton key={answer} name="answer" value={answer} pendingWord="…" quiet>
            {words}
          </SubmitButton>
        ))}
      </div>
      <details>
        <summary>Called by {caller}</summary>
        <Field label="Who called or knocked" name="by" required defaultValue={caller ?? ""} />
      </details>
    </ActionForm>
  );
}

/** The office lets the day go ahead without reaching a door, in the name of who is signed in. */
export function WaiveForm({ call, name, caller, ...place }: DoorFormProps) {
  return (
    <details className="screen-only">
      <summary>
        Go ahead without reaching them<span className="hidden">: {name}</span>
      </summary>
      <ActionForm action={actionFor({ call, ...place })} label={`Waive ${name}`}>
        <Field
          label={`Why, in the name of ${caller}`}
          name="words"
          required
          example="House is empty; water is shut off at the meter"
        />
        <div>
          <SubmitButton name="answer" value="waived" pendingWord="Recording …" quiet>
            Waive this door
          </SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

function actionFor({ lineId, call, door }: Pick<DoorFormProps, "lineId" | "call" | "door">) {
  const { propertyId, unitId, word } = door;
  return recordDoorAction.bind(null, {
    lineId,
    matter: call.matter,
    pauseId: call.pause.id,
    propertyId,
    unitId,
    about: pauseKey(call.pause),
    seen: word?.id ?? "",
  });
}
