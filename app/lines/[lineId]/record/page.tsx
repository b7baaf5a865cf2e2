import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { PermitRecord } from "#lib/domain/facts/record.ts";
import { MEASURED_WORDS } from "../field-terms.ts";
import { lineFileOf } from "../file.ts";
import { LineGrid } from "../line-grid.tsx";
import { QuestionHead } from "../question-head.tsx";
import { entryColumns, recordColumns } from "./columns.ts";

export const metadata = { title: "What is on record?" };

export default async function RecordPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, may } = await lineFileOf(lineId);
  return (
    <>
      <QuestionHead lineId={lineId} question="record" />
      {file.records.length === 0 ? <FirstRecord /> : null}
      <Records file={file} />
      {file.records.map((record) => (
        <Entries key={record.id} record={record} file={file} mayAdd={may("work-the-file")} />
      ))}
      {file.entries.length === 0 || file.runs.length === 0 ? null : (
        <p>
          <Link href={`/lines/${lineId}/reconcile/match`}>
            Compare the entries with what the camera saw
          </Link>
        </p>
      )}
    </>
  );
}

function FirstRecord() {
  return (
    <Empty
      title="Start with the side sewer card, drawing or permit the authority keeps for this line."
      example="Card 1184 of 1958, measured from the main: House 12 at 18.0 ft left, 4 in concrete, wye; House 14 at 34.0 ft left."
    >
      <p>
        Enter each record once, then every connection that it shows, as it is written there, even if
        you think it is wrong.
      </p>
    </Empty>
  );
}

function Records({ file }: { readonly file: LineFile }) {
  return (
    <Section
      title="Records"
      note="A record is not proof. Many agencies say their cards must be verified in the field."
    >
      <LineGrid
        lineId={file.line.id}
        table="records"
        columns={recordColumns(file)}
        addWord="record"
        emptyWords="No record yet. Enter the first one here; its entries go below."
      />
    </Section>
  );
}

function Entries({
  record,
  file,
  mayAdd,
}: {
  readonly record: PermitRecord;
  readonly file: LineFile;
  readonly mayAdd: boolean;
}) {
  const lineId = file.line.id;
  return (
    <Section
      title={`Entries on ${record.title}`}
      note={measureNote(record)}
      actions={
        mayAdd ? (
          <Link
            href={`/lines/${lineId}/bring-in?table=entries&to=${encodeURIComponent(record.id)}`}
          >
            Import rows from a file
          </Link>
        ) : null
      }
    >
      <LineGrid
        lineId={lineId}
        table="entries"
        where={{ recordId: record.id }}
        columns={entryColumns(file)}
        addWord="entry"
        emptyWords="No entry yet. Enter the connections as the record shows them, or paste them from a spreadsheet."
      />
    </Section>
  );
}

function measureNote({ measuredFrom, length }: PermitRecord): string {
  if (measuredFrom === "unknown")
    return "This record’s starting point is unknown, so its distances aren’t shown on the line. Set “Measured from” first.";
  if (measuredFrom === "upper-end" && length === null)
    return "This record measures from the upper end. Enter its length above, or its distances cannot be put on the line.";
  return `Distances as on the record, in feet from ${MEASURED_WORDS[measuredFrom]}. Left and right are looking upstream.`;
}
