import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatBearing } from "#lib/domain/plan/compass.ts";
import { lineSeen } from "#lib/operations/save-line.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { materialChoices } from "../field-terms.ts";
import type { LinePart } from "../part.ts";
import { savePipeAction } from "./actions.ts";

const PIPE = [
  ...(["upperEnd", "material", "diameter", "mainStation"] as const),
  ...(["mainNote", "bearing", "bearingFrom"] as const),
];

/** The shared pipe itself: how far it goes, and what it is made of at the main. */
export function PipeForm({ lineId, file, mayFile }: LinePart) {
  const { line } = file;
  return (
    <Section
      title="The shared pipe"
      note="Pipe at the main. If the camera noted a different material farther up, that applies from there on."
    >
      {mayFile ? (
        <ActionForm action={savePipeAction.bind(null, lineId)} label="The shared pipe">
          <SeenField value={seenOf(lineSeen(line, PIPE))} />
          <div className="form-grid">
            <Field
              label="Upper end of the shared line"
              name="upperEnd"
              defaultValue={line.upperEnd === null ? "" : plainFeet(line.upperEnd)}
              unit="ft from the main"
              inputMode="decimal"
              width={11}
              example="96.0"
              hint="Blank while unknown"
            />
            <Choice
              label="Material at the main"
              name="material"
              options={materialChoices()}
              defaultValue={line.material}
            />
            <Field
              label="Inside diameter"
              name="diameter"
              defaultValue={line.diameter ?? ""}
              unit="in"
              inputMode="decimal"
              width={9}
              example="6"
            />
            <Field
              label="Station along the public main"
              name="mainStation"
              defaultValue={line.mainStation === null ? "" : plainFeet(line.mainStation)}
              unit="ft"
              inputMode="decimal"
              width={8}
              hint="Along the public main: from its downstream manhole to this connection"
            />
            <Field
              label="Measured from"
              name="mainNote"
              defaultValue={line.mainNote}
              example="manhole QH-114"
            />
            <Field
              label="Bearing at the main"
              name="bearing"
              defaultValue={line.bearing === null ? "" : formatBearing(line.bearing)}
              width={12}
              example="N 35 E"
              hint="Looking upstream: degrees from north, N 35 E, or NE. Sides then also read “north side”"
            />
            <Field
              label="Source of the bearing"
              name="bearingFrom"
              defaultValue={line.bearingFrom}
              example="plat"
            />
          </div>
          <div>
            <SubmitButton pendingWord="Saving …">Save the pipe</SubmitButton>
          </div>
        </ActionForm>
      ) : (
        <dl className="facts">
          <dt>Upper end of the shared line</dt>
          <dd>{line.upperEnd === null ? "unknown" : formatFeet(line.upperEnd)}</dd>
          <dt>Material at the main</dt>
          <dd>{MATERIAL_WORDS[line.material]}</dd>
          <dt>Bearing at the main</dt>
          <dd>{line.bearing === null ? "unknown" : formatBearing(line.bearing)}</dd>
          <dt>Inside diameter</dt>
          <dd>{line.diameter === null ? "unknown" : `${line.diameter} in`}</dd>
        </dl>
      )}
    </Section>
  );
}
