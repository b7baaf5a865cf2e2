import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Fold } from "#app/_components/fold.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { FLOORS, type TestDay, type TestStop } from "#lib/domain/facts/test-day.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { DYE_COLORS, tieInsToTest, USUAL_DOSING } from "#lib/domain/testing/plan-test-day.ts";
import { DRAIN_WORDS, dosedWords, drainWords, FLOOR_WORDS } from "#lib/domain/tiein/stop-words.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { tieInName } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";
import { dropDayAction, planDayAction } from "./actions.ts";
import { placeOptions, placeValue, stopPlace } from "./stop-names.ts";
import styles from "./test-day.module.css";

type Plan = Pick<
  TestDay,
  "on" | "controlPropertyId" | "stops" | "plantToldOn" | "plantTold" | "note"
>;

interface PlanFormProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly plan: Plan;
  /** The day that is changed; null for a new one. */
  readonly day: TestDay | null;
}

/** The plan as a form: each stop with its place, what is watched, color, times, drains and dose. */
export function PlanForm({ lineId, file, report, plan, day }: PlanFormProps) {
  const places = placeOptions(file);
  const watched = [
    ...new Set([
      ...plan.stops.flatMap(({ tieInIds }) => tieInIds),
      ...tieInsToTest(report).map(({ tieIn }) => tieIn.id),
    ]),
  ];
  const stops: readonly (TestStop | null)[] = [...plan.stops, null];
  return (
    <ActionForm
      action={planDayAction.bind(null, lineId)}
      label="Plan of the test day"
      className="stack screen-only"
    >
      <input type="hidden" name="dayId" value={day?.id ?? ""} />
      <input type="hidden" name="seen" value={day === null ? "" : JSON.stringify(day)} />
      <input type="hidden" name="count" value={stops.length} />
      <div className={styles["fields"]}>
        <Field label="Day" name="on" type="date" required defaultValue={plan.on} />
        <Choice
          label="Control address"
          name="controlPropertyId"
          options={[{ value: "", label: "none" }, ...propertyChoices(file)]}
          defaultValue={plan.controlPropertyId ?? ""}
          hint="Its tie-in is known and joins below; its dye should not show at the ones being watched."
        />
      </div>
      {stops.map((stop, at) => (
        <StopPart
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the form is what names it
          key={at}
          at={at}
          stop={stop}
          file={file}
          places={places}
          watched={watched}
        />
      ))}
      <div className={styles["fields"]}>
        <Field
          label="Sewer and plant told on"
          name="plantToldOn"
          type="date"
          defaultValue={plan.plantToldOn ?? ""}
          hint="Dye shows at the treatment plant."
        />
        <Field
          label="Who was told, by whom"
          name="plantTold"
          defaultValue={plan.plantTold}
          example="plant operator, by Ruth"
        />
      </div>
      <Field label="Note" name="note" rows={2} defaultValue={plan.note} />
      <div>
        <SubmitButton pendingWord="Saving …">
          {day === null ? "Plan this day" : "Save the plan"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

interface StopFieldsProps {
  readonly at: number;
  readonly stop: TestStop | null;
  readonly file: LineFile;
  readonly places: readonly { readonly value: string; readonly label: string }[];
  readonly watched: readonly string[];
}

/** A stop of the plan; the empty one after them is closed until one more is wanted. */
function StopPart(props: StopFieldsProps) {
  const { stop, at, file } = props;
  if (stop !== null)
    return (
      <Fold
        onPhone
        bare
        summary={`Stop ${at + 1}: ${stopPlace(file, stop)}, ${formatTime(stop.startsAt)}`}
      >
        <StopFields {...props} />
      </Fold>
    );
  if (at === 0) return <StopFields {...props} />;
  return (
    <details>
      <summary>Add a stop</summary>
      <StopFields {...props} />
    </details>
  );
}

function StopFields({ at, stop, file, places, watched }: StopFieldsProps) {
  const name = (field: string) => `stops.${at}.${field}`;
  const dye = stop?.colour ?? DYE_COLORS[at % DYE_COLORS.length];
  return (
    <fieldset className={styles["stop"]}>
      <legend>{stop === null ? "Add a stop" : `Stop ${at + 1}`}</legend>
      <input type="hidden" name={name("passed")} value={stop?.passed ?? ""} />
      <div className={styles["stop-fields"]}>
        <Choice
          label="At"
          name={name("place")}
          options={[{ value: "", label: "no stop" }, ...places]}
          defaultValue={stop === null ? "" : placeValue(stop)}
        />
        <Field label="Color" name={name("colour")} defaultValue={dye} width={8} />
        <Field
          label="Dye added at"
          name={name("startsAt")}
          defaultValue={stop === null ? "" : formatTime(stop.startsAt)}
          example="9:30 am"
          width={7}
        />
        <Field
          label="Watch for"
          name={name("waitMinutes")}
          defaultValue={stop?.waitMinutes ?? 15}
          inputMode="numeric"
          unit="min"
          width={4}
        />
        <Field
          label="Rinse for"
          name={name("rinseMinutes")}
          defaultValue={stop?.rinseMinutes ?? USUAL_DOSING.rinseMinutes}
          inputMode="numeric"
          unit="min"
          width={4}
        />
      </div>
      <div className="cluster">
        <span className="muted">Watched, all from one place:</span>
        {watched.map((tieInId) => (
          <Tick
            key={tieInId}
            label={tieInName(file, tieInId)}
            name={name("tieInIds")}
            value={tieInId}
            defaultChecked={stop === null ? watched.length === 1 : stop.tieInIds.includes(tieInId)}
          />
        ))}
      </div>
      <DosingFields name={name} stop={stop} />
    </fieldset>
  );
}

const NO_DRAIN = { value: "", label: "none" };

/** Which drains, how much dye and water: folded, since it is mostly alike. */
function DosingFields({
  name,
  stop,
}: {
  readonly name: (field: string) => string;
  readonly stop: TestStop | null;
}) {
  const like = stop ?? { ...USUAL_DOSING, fixture: "" };
  const words = [drainWords(like), dosedWords(like)].filter((part) => part !== "").join("; ");
  return (
    <details>
      <summary className="small">Drains, dye and water: {words || "not specified"}</summary>
      <div className={styles["fields"]}>
        {FLOORS.map((floor) => (
          <Choice
            key={floor}
            label={`Drain, ${FLOOR_WORDS[floor]}`}
            name={name(`drain.${floor}`)}
            options={[NO_DRAIN, ...optionsOf(DRAIN_WORDS)]}
            defaultValue={like.drains.find((each) => each.floor === floor)?.drain ?? ""}
          />
        ))}
        <Field label="Another drain" name={name("fixture")} defaultValue={like.fixture} />
        <Field
          label="Dye at each drain"
          name={name("dose")}
          defaultValue={like.dose}
          example="2 tablets"
        />
        <Field
          label="Then water"
          name={name("flushGallons")}
          defaultValue={like.flushGallons ?? ""}
          inputMode="numeric"
          unit="gal"
          width={4}
        />
      </div>
    </details>
  );
}

export function DropDay({ lineId, day }: { readonly lineId: string; readonly day: TestDay }) {
  return (
    <ActionForm
      action={dropDayAction.bind(null, lineId)}
      className="cluster"
      label="Delete this day"
      confirm="Delete the plan for this day?"
    >
      <input type="hidden" name="dayId" value={day.id} />
      <SubmitButton quiet pendingWord="Deleting …">
        Delete this day
      </SubmitButton>
    </ActionForm>
  );
}
