import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { ButtonLink, SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { sentRows } from "#app/_components/sent-rows.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { namelessPlaces } from "#lib/domain/party/residents.ts";
import { isOwnerOpen } from "#lib/domain/tiein/open-question.ts";
import { peopleRevision } from "#lib/operations/save-people.ts";
import { lineFileOf } from "../file.ts";
import { LineGrid } from "../line-grid.tsx";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { addResidentsAction, addUnitsAction } from "./actions.ts";
import {
  PROPERTY_COLUMNS,
  peopleColumns,
  personBlank,
  propertyBlank,
  propertyChoices,
  unitColumns,
} from "./columns.ts";
import { PeopleGrid } from "./people-grid.client.tsx";
import styles from "./who.module.css";

export const metadata = { title: "Who is on it?" };

export default async function WhoPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, revisions, may } = await lineFileOf(lineId);
  const readOnly = !may("work-the-file");
  return (
    <>
      <QuestionHead lineId={lineId} question="who" />
      <NobodysTieIns lineId={lineId} report={report} />
      {file.properties.length === 0 ? <Start /> : null}
      <Properties {...{ lineId, file, revisions, readOnly }} />
      <PeopleList {...{ lineId, file, revisions, readOnly }} />
      <Residents {...{ lineId, file, revisions, readOnly }} />
      <Units {...{ lineId, file, revisions, readOnly }} />
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
  const title = `${counted(nobodys.length, "tie-in")} ${nobodys.length === 1 ? "has" : "have"} no known owner yet: ${places.join(", ")}`;
  return (
    <div className={styles["notice"]}>
      <NoticeBox kind="hold" title={title}>
        <p>
          Add the likely properties as “possibly connected”, then{" "}
          <Link href={`/lines/${lineId}/reconcile/undocumented`}>identify the owner</Link>.
        </p>
      </NoticeBox>
    </div>
  );
}

/** What to do first, on a line without properties. */
function Start() {
  return (
    <Empty
      title="Start with the addresses."
      example="12 Fennel Row, Quillhaven, WA 98000, connected. Then, under people: Ottilie Brandvold, owner of 12 Fennel Row."
    >
      <p>
        Every address that may drain to the line and every lot it only crosses. You can paste rows
        from a spreadsheet.
      </p>
    </Empty>
  );
}

function Properties({ lineId, file, readOnly }: GridProps) {
  return (
    <Section
      title="Properties"
      note="Site address. Enter owners’ mailing addresses under People."
      actions={
        readOnly ? undefined : (
          <ButtonLink href={`/lines/${lineId}/bring-in?table=people`}>
            Import a list of owners
          </ButtonLink>
        )
      }
    >
      <LineGrid
        lineId={lineId}
        table="properties"
        columns={PROPERTY_COLUMNS}
        blank={propertyBlank(file)}
        addWord="property"
        emptyWords="No property yet. Enter the first address here."
      />
    </Section>
  );
}

function PeopleList({ lineId, file, revisions, readOnly }: GridProps) {
  return (
    <Section
      title="People"
      foldedOnPhone={counted(file.roles.length, "row")}
      opened={file.roles.length === 0}
      note="One row per role: owner, occupant, manager, lender. The same name means the same person: an owner who lives there has two rows, and the mailing address is entered once."
    >
      <PeopleGrid
        lineId={lineId}
        base={peopleRevision(revisions)}
        {...sentRows(personRows(file))}
        columns={peopleColumns(file)}
        blank={personBlank(file)}
        addWord="person"
        emptyWords={
          file.properties.length === 0
            ? "Add and save a property first, then add people here."
            : "No one yet. Enter a name, role and property."
        }
        readOnly={readOnly}
      />
    </Section>
  );
}

/** Homes in which nobody is known by name: letters can go to whoever lives there. */
function Residents({ lineId, file, readOnly }: GridProps) {
  const { length } = namelessPlaces(file);
  if (readOnly || length === 0) return null;
  return (
    <ActionForm
      action={addResidentsAction.bind(null, lineId)}
      className={`cluster screen-only ${styles["residents"]}`}
      label="Current residents"
    >
      <p className="muted">
        {counted(length, "place")} without an occupant on file: no letter to occupants goes there.
      </p>
      <SubmitButton quiet pendingWord="Adding …">
        Add “Current Resident”
      </SubmitButton>
    </ActionForm>
  );
}

function Units({ lineId, file, readOnly }: GridProps) {
  return (
    <Section
      title="Units"
      id="units"
      folded={counted(file.units.length, "unit")}
      note="Dwellings and businesses in each property, for splits per unit and for letters to every occupant. A single-family house needs one row and no name."
    >
      <LineGrid
        lineId={lineId}
        table="units"
        columns={unitColumns(file)}
        addWord="unit"
        emptyWords="No unit yet: each connected property counts as one."
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
              options={[{ value: "", label: "select" }, ...propertyChoices(file)]}
            />
            <Field label="Number of units" name="count" inputMode="numeric" width={4} required />
            <Choice
              label="Named"
              name="style"
              options={[
                { value: "numbers", label: "Unit 1, Unit 2…" },
                { value: "letters", label: "Unit A, Unit B…" },
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
