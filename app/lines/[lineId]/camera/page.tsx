import { Empty } from "#app/_components/empty.tsx";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { lineFileOf } from "../file.ts";
import type { LinePart } from "../part.ts";
import { QuestionHead } from "../question-head.tsx";
import { POINT_BLANK, POINT_COLUMNS, RUN_BLANK, RUN_COLUMNS } from "./columns.ts";
import { Meetings } from "./meetings.tsx";
import { PipeForm } from "./pipe-form.tsx";
import { RunChooser, RunPart } from "./run-part.tsx";
import { NewRun } from "./run-way.tsx";
import { Sightings } from "./sightings.tsx";

export const metadata = { title: "What did the camera see?" };

export default async function CameraPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ run?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { run: wanted } = await searchParams;
  const { file, report, may } = await lineFileOf(lineId);
  const run = file.runs.find((each) => each.id === wanted) ?? file.runs[0];
  const part: LinePart = {
    lineId,
    file,
    report,
    revisions: getRevisions(db(), lineId),
    mayRecord: may("record-the-field"),
    mayFile: may("work-the-file"),
  };
  return (
    <>
      <QuestionHead lineId={lineId} question="camera" />
      {file.runs.length === 0 ? <FirstRun /> : null}
      <Runs {...part} />
      {run === undefined ? null : (
        <>
          <RunChooser lineId={lineId} runs={file.runs} chosen={run} />
          <RunPart run={run} {...part} />
        </>
      )}
      <Meetings {...part} />
      <Sightings {...part} />
      <Points {...part} />
      <PipeForm {...part} />
    </>
  );
}

function FirstRun() {
  return (
    <Empty
      title="Start with one pass of the camera."
      example="Run 1, Tuesday, went in at the bakery’s cleanout, looks downstream, toward the main; the counter was zeroed at the cleanout. Counter 98.6 is the main (station 0.0). At 24.1, 9 o’clock: tie-in, 4 in clay, broken in."
    >
      <p>
        Then say at which counter reading it passed a point that you know, such as the main or a
        cleanout: with that, every reading becomes feet from the main. Without it, what it saw stays
        relative.
      </p>
    </Empty>
  );
}

function Runs({ lineId, file, report, revisions, mayRecord }: LinePart) {
  return (
    <Section title="Runs" note="One row for each pass of the camera.">
      <RowsGrid
        lineId={lineId}
        table="runs"
        base={revisions.runs}
        rows={file.runs}
        columns={RUN_COLUMNS}
        blank={{ ...RUN_BLANK, ranOn: report.today }}
        addWord="run"
        emptyWords="No run yet. Type the first one here; what it saw goes below it."
        readOnly={!mayRecord}
      />
      {mayRecord ? (
        <NewRun
          key={file.runs.length}
          lineId={lineId}
          today={report.today}
          isFirst={file.runs.length === 0}
          name={`Run ${file.runs.length + 1}`}
        />
      ) : null}
    </Section>
  );
}

function Points({ lineId, file, revisions, mayFile }: LinePart) {
  return (
    <Section
      title="Points on the line"
      note="Where the right-of-way ends, where the cleanouts are: who answers for what, and what a run can be tied to, hang on these."
    >
      <RowsGrid
        lineId={lineId}
        table="points"
        base={revisions.points}
        rows={file.points}
        columns={POINT_COLUMNS}
        blank={POINT_BLANK}
        addWord="point"
        emptyWords="No point yet. The right-of-way line is the one that most rules ask for."
        readOnly={!mayFile}
      />
    </Section>
  );
}
