import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Narration } from "#lib/domain/facts/narration.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import type { DraftLog } from "#lib/domain/narration/log/draft.ts";
import { logOf } from "#lib/domain/narration/log/narration-log.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import type { DraftView } from "./draft-columns.ts";
import { draftViews } from "./draft-views.ts";
import { DraftedLog } from "./drafted-log.client.tsx";
import { NarrationForm } from "./narration-form.tsx";
import { RecordSaid } from "./record-said.tsx";
import { saidParts } from "./said-pieces.ts";
import {
  AtMain,
  MeasuredFromMain,
  NothingDrafted,
  SetAsideNumbers,
  Transcript,
  TranscriptProblems,
} from "./transcript.tsx";

export const metadata: Metadata = { title: "Narration" };

interface NarrationQuery {
  readonly run?: string | string[];
}

export default async function NarrationPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<NarrationQuery>;
}) {
  const { lineId } = await params;
  const { run: wanted } = await searchParams;
  const { file, report, may } = await lineFileOf(lineId);
  const run = file.runs.find(({ id }) => id === (wanted ?? file.runs[0]?.id));
  if (run === undefined) return <NoRun lineId={lineId} file={file} />;
  const narrations = file.narrations.filter((each) => each.runId === run.id);
  const part = {
    lineId,
    file,
    report,
    run,
    mayRecord: may("record-the-field"),
    mayWork: may("work-the-file"),
  };
  return (
    <>
      <PageHead
        asked={`Narration of ${run.name}, ${formatDay(run.ranOn, report.today)}`}
        answer={answerOf(file, narrations)}
      >
        <p>
          <Link href={`/lines/${lineId}/camera/log?run=${encodeURIComponent(run.id)}`}>
            Log of {run.name}
          </Link>
        </p>
      </PageHead>
      {narrations.map((narration) => (
        <OneNarration key={narration.id} {...part} narration={narration} />
      ))}
      {part.mayRecord ? (
        <NarrationForm
          key={narrations.length}
          lineId={lineId}
          run={run}
          first={narrations.length === 0}
        />
      ) : null}
    </>
  );
}

interface NarrationPart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly run: Run;
  readonly mayRecord: boolean;
  readonly mayWork: boolean;
}

function OneNarration({ narration, ...part }: NarrationPart & { readonly narration: Narration }) {
  const { lineId, file, report, run, mayRecord, mayWork } = part;
  const log = logOf(file, narration);
  const { seen, unseen } = draftViews(file, narration, log);
  return (
    <Section title="Draft log" note={draftedWords(log)}>
      <TranscriptProblems text={narration.text} problems={log.problems} />
      {mayRecord ? (
        <>
          <MeasuredFromMain lineId={lineId} run={run} log={log} />
          <AtMain lineId={lineId} run={run} anchors={file.anchors} counter={mainSaid(log)} />
        </>
      ) : null}
      <NothingDrafted log={log} />
      <DraftedLog
        lineId={lineId}
        narrationId={narration.id}
        seen={seen}
        unseen={unseen}
        parts={saidParts(log.said, [...seen, ...unseen])}
        readings={log.readings}
        readOnly={!mayRecord}
      />
      {mayWork ? (
        <RecordSaid
          lineId={lineId}
          narrationId={narration.id}
          file={file}
          report={report}
          log={log}
        />
      ) : null}
      <SetAsideNumbers setAside={log.setAside} />
      <Transcript narration={narration} problems={log.problems} />
    </Section>
  );
}

/** Where the talk measures from the main itself, there is no footage to tie. */
function mainSaid({ measuredFrom, mainCounter }: DraftLog): number | null {
  return measuredFrom === "main" ? null : mainCounter;
}

function NoRun({ lineId, file }: { readonly lineId: string; readonly file: LineFile }) {
  return (
    <>
      <PageHead asked="Narration" />
      <Empty
        title={
          file.runs.length === 0 ? "Enter the run first." : "This run is no longer in the file."
        }
      >
        <p>
          {file.runs.length === 0
            ? "A narration belongs to one pass of the camera: its date, direction and counter zero."
            : "It may have been removed, or the link is old. Select another run."}
        </p>
        <p>
          <Link href={`/lines/${lineId}/camera`}>Go to the runs</Link>
        </p>
      </Empty>
    </>
  );
}

/** How much of it is decided, over all that was said on the run. */
function answerOf(file: LineFile, narrations: readonly Narration[]): string {
  if (narrations.length === 0) return "No transcript yet.";
  const views = narrations.flatMap((narration): DraftView[] => {
    const { seen, unseen } = draftViews(file, narration, logOf(file, narration));
    return [...seen, ...unseen];
  });
  const open = views.filter(({ decided }) => decided === null).length;
  const taken = views.filter(({ decided }) => decided?.state === "accepted").length;
  const dropped = views.length - open - taken;
  const parts = [
    `${taken} accepted`,
    dropped === 0 ? "" : `${dropped} discarded`,
    `${open} to review`,
  ].filter((part) => part !== "");
  return `${counted(views.length, "row")} drafted: ${parts.join(", ")}.`;
}

function draftedWords({ readings, drafts, gaps }: DraftLog): string {
  if (drafts.length + gaps.length === 0) return "Drafted word for word.";
  const distances = counted(readings.length, "distance was", "distances were");
  return `${distances} spoken. Rows between two of them are interpolated by time and say so. Nothing enters the log until you accept it.`;
}
