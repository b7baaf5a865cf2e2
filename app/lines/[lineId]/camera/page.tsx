import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { LineGrid } from "../line-grid.tsx";
import { linePartOf } from "../line-part.ts";
import type { LinePart } from "../part.ts";
import { QuestionHead } from "../question-head.tsx";
import { RUN_BLANK, RUN_COLUMNS } from "./columns.ts";
import { Meetings } from "./meetings.tsx";
import { RunChooser } from "./run-chooser.tsx";
import { runNamed } from "./run-named.ts";
import { RunPart } from "./run-part.tsx";
import { NewRun } from "./run-way.tsx";

export const metadata = { title: "What did the camera see?" };

export default async function CameraPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ run?: string | string[] }>;
}) {
  const { lineId } = await params;
  const part = await linePartOf(lineId);
  const { runs } = part.file;
  const run = runNamed(runs, (await searchParams).run);
  return (
    <>
      <QuestionHead lineId={lineId} question="camera" />
      {run === undefined ? <FirstRun /> : null}
      <Runs {...part} />
      {run === undefined ? null : (
        <>
          <RunChooser at={`/lines/${lineId}/camera`} runs={runs} chosen={run} />
          <RunPart run={run} {...part} />
        </>
      )}
      <Meetings {...part} />
    </>
  );
}

function FirstRun() {
  return (
    <Empty
      title="Start with one pass of the camera."
      example="Run 1, Tuesday: in at the bakery cleanout, looking downstream, zeroed at the cleanout. Counter 98.6 is the main (station 0.0). At 24.1, 9 o’clock: tie-in, 4 in clay, hammer tap."
    >
      <p>
        Then enter the counter reading at a known point, such as the main or a cleanout, to convert
        every reading to feet from the main. Without one, positions have no station.
      </p>
    </Empty>
  );
}

function Runs({ lineId, file, report, mayRecord }: LinePart) {
  const isFirst = file.runs.length === 0;
  const asked = mayRecord ? (
    <NewRun
      key={file.runs.length}
      lineId={lineId}
      today={report.today}
      isFirst={isFirst}
      name={`Run ${file.runs.length + 1}`}
    />
  ) : null;
  return (
    <Section
      title="Runs"
      note="One row for each pass of the camera."
      actions={
        mayRecord ? (
          <Link href={`/lines/${lineId}/bring-in?table=runs`}>Import runs from a file</Link>
        ) : null
      }
    >
      {isFirst ? asked : null}
      <LineGrid
        lineId={lineId}
        table="runs"
        columns={RUN_COLUMNS}
        blank={{ ...RUN_BLANK, ranOn: report.today }}
        addWord="run"
        emptyWords="No runs yet. Or enter them here as rows; what a run saw goes under Log."
      />
      {isFirst ? null : asked}
    </Section>
  );
}
