import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import { COLOURS, tieInsToTest } from "#lib/domain/tiein/plan-test-day.ts";
import type { TestDay, TestStop } from "#lib/domain/tiein/test-day.ts";
import { tieInName } from "../../_names.ts";
import { propertyChoices } from "../../who/_columns.ts";
import { dropDayAction, planDayAction } from "./actions.ts";
import styles from "./test-day.module.css";

interface PlanFormProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly plan: Pick<TestDay, "on" | "controlPropertyId" | "stops" | "note">;
  /** The day that is changed; null for a new one. */
  readonly day: TestDay | null;
}

/** The plan as a form: each stop with its address, what is watched, colour, time and wait. */
export function PlanForm({ lineId, file, report, plan, day }: PlanFormProps) {
  const addresses = propertyChoices(file);
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
          options={[{ value: "", label: "none" }, ...addresses]}
          defaultValue={plan.controlPropertyId ?? ""}
          hint="Its tie-in is known. Its dye must not come from a watched one."
        />
      </div>
      {stops.map((stop, at) => (
        <StopFields
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the form is what names it
          key={at}
          at={at}
          stop={stop}
          file={file}
          addresses={addresses}
          watched={watched}
        />
      ))}
      <Field label="Note" name="note" rows={2} defaultValue={plan.note} />
      <div>
        <SubmitButton pendingWord="Saving …">
          {day === null ? "Plan this day" : "Save the plan"}
        </SubmitButton>
      </div>
    </ActionForm>
  );
}

function StopFields({
  at,
  stop,
  file,
  addresses,
  watched,
}: {
  readonly at: number;
  readonly stop: TestStop | null;
  readonly file: LineFile;
  readonly addresses: readonly { readonly value: string; readonly label: string }[];
  readonly watched: readonly string[];
}) {
  const name = (field: string) => `stops.${at}.${field}`;
  const colour = stop?.colour ?? COLOURS[at % COLOURS.length];
  return (
    <fieldset className={styles["stop"]}>
      <legend>{stop === null ? "One more stop" : `Stop ${at + 1}`}</legend>
      <input type="hidden" name={name("unitId")} value={stop?.unitId ?? ""} />
      <div className={styles["stop-fields"]}>
        <Choice
          label="At"
          name={name("propertyId")}
          options={[{ value: "", label: "no stop" }, ...addresses]}
          defaultValue={stop?.propertyId ?? ""}
        />
        <Field
          label="Fixture"
          name={name("fixture")}
          defaultValue={stop?.fixture ?? "Kitchen sink"}
        />
        <Field label="Colour" name={name("colour")} defaultValue={colour} width={8} />
        <Field
          label="Dosed at"
          name={name("startsAt")}
          defaultValue={stop?.startsAt ?? ""}
          width={6}
        />
        <Field
          label="Watch for"
          name={name("waitMinutes")}
          defaultValue={stop?.waitMinutes ?? 15}
          inputMode="numeric"
          unit="min"
          width={4}
        />
      </div>
      <div className="cluster">
        <span className="muted">Watched:</span>
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
    </fieldset>
  );
}

export function DropDay({ lineId, day }: { readonly lineId: string; readonly day: TestDay }) {
  return (
    <ActionForm
      action={dropDayAction.bind(null, lineId)}
      className="cluster"
      label="Drop this day"
      confirm="Drop the plan of this day?"
    >
      <input type="hidden" name="dayId" value={day.id} />
      <SubmitButton quiet pendingWord="Dropping …">
        Drop this day
      </SubmitButton>
    </ActionForm>
  );
}
