import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";
import { isOwnerOpen } from "#lib/domain/tiein/open-question.ts";
import { peopleRevision } from "#lib/operations/save-people.ts";
import { lineFileOf } from "../file.ts";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { addUnitsAction } from "./actions.ts";
import { CallFirst } from "./calls-part.tsx";
import {
  crossingColumns,
  landColumns,
  PROPERTY_BLANK,
  PROPERTY_COLUMNS,
  peopleColumns,
  personBlank,
  propertyChoices,
  unitColumns,
} from "./columns.ts";
import { PeopleGrid } from "./people-grid.client.tsx";
import { PropertyList } from "./property-list.tsx";
import styles from "./who.module.css";

export const metadata = { title: "Who is on it?" };

export default async function WhoPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may, user } = await lineFileOf(lineId);
  const revisions = getRevisions(db(), lineId);
  const readOnly = !may("work-the-file");
  return (
    <>
      <QuestionHead lineId={lineId} question="who" />
      <NobodysTieIns lineId={lineId} report={report} />
      <WhoIsWhere file={file} report={report} />
      <CallFirst
        lineId={lineId}
        file={file}
        today={report.today}
        caller={may("record-the-field") ? user.name : null}
      />
      <Properties {...{ lineId, file, revisions, readOnly }} />
      <PeopleList {...{ lineId, file, revisions, readOnly }} />
      <Units {...{ lineId, file, revisions, readOnly }} />
      <Crossings {...{ lineId, file, revisions, readOnly }} />
      <Land {...{ lineId, file, revisions, readOnly }} />
    </>
  );
}

interface GridProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly revisions: Record<RowTable, number>;
  readonly readOnly: boolean;
}

function NobodysTieIns({ lineId, report }: { readonly lineId: string; readonly report: Report }) {
  const nobodys = report.tieIns.filter((each) => isOwnerOpen(each) && each.propertyId === null);
  if (nobodys.length === 0) return null;
  const places = nobodys.map(({ tieIn, station }) =>
    station === null ? tieIn.label : `${tieIn.label} at ${formatFeet(station)}`,
  );
  const title = `${counted(nobodys.length, "tie-in")} ${nobodys.length === 1 ? "belongs" : "belong"} to nobody yet: ${places.join(", ")}`;
  return (
    <div className={styles["notice"]}>
      <NoticeBox kind="hold" title={title}>
        <p>
          Enter the properties that it may be as “perhaps connected”, then{" "}
          <Link href={`/lines/${lineId}/reconcile/undocumented`}>find out whose it is</Link>.
        </p>
      </NoticeBox>
    </div>
  );
}

function WhoIsWhere({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const properties = stakeholdersOf(file);
  const lacking = properties.filter((each) => each.missing.length > 0).length;
  const note =
    lacking === 0
      ? "Nothing is missing."
      : `Something is missing on ${lacking} of ${counted(properties.length, "property", "properties")}.`;
  if (properties.length === 0) {
    return (
      <Empty
        title="Start with the addresses."
        example="12 Fennel Row, Quillhaven, WA 98000, connected. Then, under people: Ottilie Brandvold, owner of 12 Fennel Row."
      >
        <p>
          Every address that may drain into the line, and every lot that it only crosses. Rows can
          be pasted from a spreadsheet.
        </p>
      </Empty>
    );
  }
  return (
    <Section title="Who is where" note={note}>
      <PropertyList properties={properties} report={report} />
    </Section>
  );
}

function Properties({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="Properties"
      note="The address where the property is. Where its owner’s mail goes is entered with the people."
    >
      <RowsGrid
        lineId={lineId}
        table="properties"
        base={revisions.properties}
        rows={file.properties}
        columns={PROPERTY_COLUMNS}
        blank={PROPERTY_BLANK}
        addWord="property"
        emptyWords="No property yet. Type the first address here."
        readOnly={readOnly}
      />
    </Section>
  );
}

function PeopleList({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="Owners, occupants, managers"
      note="One row for each thing that somebody is. The same name is the same person: an owner who lives there has two rows, and the mailing address needs typing once."
    >
      <PeopleGrid
        lineId={lineId}
        base={peopleRevision(revisions)}
        rows={personRows(file)}
        columns={peopleColumns(file)}
        blank={personBlank(file)}
        addWord="person"
        emptyWords={
          file.properties.length === 0
            ? "Enter and save a property first; then say here who is on it."
            : "Nobody yet. Type a name, what they are, and of which property."
        }
        readOnly={readOnly}
      />
    </Section>
  );
}

function Units({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="Units"
      note="Dwellings and businesses in each property, for splits per unit and for letters to every occupant. A house with one household needs one row and no name."
    >
      <RowsGrid
        lineId={lineId}
        table="units"
        base={revisions.units}
        rows={file.units}
        columns={unitColumns(file)}
        blank={{ use: "dwelling" }}
        addWord="unit"
        emptyWords="No unit yet: each connected property counts as one."
        readOnly={readOnly}
      />
      {readOnly || file.properties.length === 0 ? null : (
        <details className="screen-only">
          <summary>Add several units at once</summary>
          <ActionForm
            action={addUnitsAction.bind(null, lineId)}
            className="cluster cluster-end"
            label="Several units at once"
            reset
          >
            <Choice
              label="Property"
              name="propertyId"
              options={[{ value: "", label: "choose" }, ...propertyChoices(file)]}
            />
            <Field label="Units in all" name="count" inputMode="numeric" width={4} required />
            <Choice
              label="Called"
              name="style"
              options={[
                { value: "numbers", label: "Unit 1, Unit 2 …" },
                { value: "letters", label: "Unit A, Unit B …" },
              ]}
              defaultValue="numbers"
            />
            <SubmitButton quiet pendingWord="Adding …">
              Add units
            </SubmitButton>
          </ActionForm>
        </details>
      )}
    </Section>
  );
}

function Crossings({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="Lots crossed"
      note="A lot that the line runs through has a stake even where it is not connected. Stations are feet from the main connection."
    >
      <RowsGrid
        lineId={lineId}
        table="crossings"
        base={revisions.crossings}
        rows={file.crossings}
        columns={crossingColumns(file)}
        blank={{ easement: "unknown" }}
        addWord="crossed lot"
        emptyWords="No lot is entered as crossed. If the line stays under the street and its own lots, leave this empty."
        readOnly={readOnly}
      />
    </Section>
  );
}

function Land({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="Whose land"
      id="land"
      note="Whose land lies over the pipe, stretch by stretch, and what shows it. Where it is dug, that decides whose consent and which permit it takes; while it is not entered, nothing is submitted or dug there."
    >
      <RowsGrid
        lineId={lineId}
        table="land"
        base={revisions.land}
        rows={file.land}
        columns={landColumns(file)}
        blank={{ kind: "unknown" }}
        addWord="stretch"
        emptyWords="Not entered yet. Type the first stretch from the main, for example 0 to 12 ft, street."
        readOnly={readOnly}
      />
    </Section>
  );
}
