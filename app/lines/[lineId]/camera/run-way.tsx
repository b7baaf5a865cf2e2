import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Run } from "#lib/domain/facts/run.ts";
import { madeWords } from "#lib/domain/run/way-words.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { RUN_END_WORDS } from "../field-terms.ts";
import type { LinePart } from "../part.ts";
import { optionsOf } from "../terms.ts";
import { addRunAction, saveRunWayAction } from "./actions.ts";
import { RUN_BLANK } from "./columns.ts";
import { RunWayFields } from "./run-way.client.tsx";
import { runWaySeen } from "./run-way-seen.ts";

/** How one run was made; open where its known points contradict it. */
export function RunWay({
  run,
  lineId,
  file,
  mayRecord,
  isAgainst,
}: LinePart & { readonly run: Run; readonly isAgainst: boolean }) {
  if (!mayRecord) return <p>{madeWords(run)}</p>;
  const anchors = file.anchors.filter((anchor) => anchor.runId === run.id);
  return (
    <details open={isAgainst}>
      <summary>
        {madeWords(run)}
        <span className="hidden"> Change how {run.name} was made</span>
      </summary>
      <ActionForm
        key={`${run.id} ${run.looks} ${run.measuredFrom} ${run.selfLeveling}`}
        action={saveRunWayAction.bind(null, { lineId, runId: run.id })}
        className="stack"
        label={`How ${run.name} was made`}
      >
        <SeenField value={seenOf(runWaySeen(run))} />
        <RunWayFields run={run} anchors={anchors} />
        <div>
          <SubmitButton pendingWord="Saving …">Save how it was made</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

/** A new run, asked for as a technician would tell it. */
export function NewRun({
  lineId,
  today,
  isFirst,
  name,
}: {
  readonly lineId: string;
  readonly today: Day;
  readonly isFirst: boolean;
  readonly name: string;
}) {
  return (
    <details open={isFirst} className="screen-only">
      <summary>Add a run step by step</summary>
      <ActionForm
        action={addRunAction.bind(null, lineId)}
        className="stack"
        label="Add a run"
        reset
      >
        <div className="form-grid">
          <Field label="Run" name="name" defaultValue={name} required width={12} />
          <Field label="Day" name="ranOn" type="date" defaultValue={today} required width={12} />
          <Field label="Operator" name="operator" width={14} />
          <Field
            label="Access point"
            name="accessPoint"
            example="House cleanout at 16, by the porch"
          />
          <Field
            label="End footage"
            name="toCounter"
            unit="ft"
            inputMode="decimal"
            width={9}
            hint="Counter reading where the run ended"
          />
          <Choice
            label="Reason ended"
            name="ended"
            defaultValue="unknown"
            options={optionsOf(RUN_END_WORDS)}
            hint="At the main, its last reading ties the run to station 0"
          />
        </div>
        <RunWayFields run={{ ...BLANK, name, ranOn: today }} anchors={[]} />
        <div>
          <SubmitButton pendingWord="Adding …">Add the run</SubmitButton>
        </div>
      </ActionForm>
    </details>
  );
}

const BLANK: Run = {
  ...RUN_BLANK,
  id: "new",
  ranOn: "",
};
