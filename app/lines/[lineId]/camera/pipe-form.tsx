import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { MATERIAL_WORDS } from "#lib/domain/facts/line-words.ts";
import { formatFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatBearing } from "#lib/domain/plan/compass.ts";
import { materialChoices } from "../field-terms.ts";
import type { LinePart } from "../part.ts";
import { savePipeAction } from "./actions.ts";

/** The shared pipe itself: how far it goes, and what it is made of at the main. */
export function PipeForm({ lineId, file, mayFile }: LinePart) {
  const { line } = file;
  return (
    <Section
      title="The shared pipe"
      note="The pipe at the main. Where the camera noted another material further up, that holds from there."
      actions={
        <>
          <Link href={`/lines/${lineId}/camera/plan`}>Plan view</Link>
          <Link href={`/lines/${lineId}/camera/capacity`}>Slope and load</Link>
        </>
      }
    >
      {mayFile ? (
        <ActionForm action={savePipeAction.bind(null, lineId)} label="The shared pipe">
          <div className="form-grid">
            <Field
              label="Upper end of the trunk"
              name="upperEnd"
              defaultValue={line.upperEnd === null ? "" : plainFeet(line.upperEnd)}
              unit="ft from the main"
              inputMode="decimal"
              width={11}
              example="96.0"
              hint="Empty while nobody knows"
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
              hint="Another axis: from the main’s downstream manhole to this connection"
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
              hint="Looking upstream: degrees from north, N 35 E, or NE. With it every side reads “north side” too"
            />
            <Field
              label="Bearing shown by"
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
          <dt>Upper end of the trunk</dt>
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
