import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { sentRows } from "#app/_components/sent-rows.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { readEnv } from "#lib/env.ts";
import { isStored } from "#lib/storage/store.ts";
import { linePartOf } from "../../line-part.ts";
import type { LinePart } from "../../part.ts";
import { QuickRow } from "../../quick-row.tsx";
import { TakeOut } from "../../tables/take-out.tsx";
import { addObservationAction } from "../actions.ts";
import { OBSERVATION_BLANK, OBSERVATION_COLUMNS } from "../observation-columns.ts";
import { RunChooser } from "../run-chooser.tsx";
import { RunLog } from "../run-log.client.tsx";
import { runNamed } from "../run-named.ts";
import { RunSources } from "../run-sources.tsx";
import { isTied, sawWords } from "../run-words.ts";

export const metadata: Metadata = { title: "Log" };

/** What one run saw, row by row, beside its video where it has one. */
export default async function LogPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ run?: string | string[] }>;
}) {
  const { lineId } = await params;
  const part = await linePartOf(lineId);
  const { file, report, mayRecord } = part;
  const run = runNamed(file.runs, (await searchParams).run);
  if (run === undefined) return <NoRun lineId={lineId} />;
  return (
    <>
      <PageHead
        asked={`Log of ${run.name}, ${formatDay(run.ranOn, report.today)}`}
        answer={sawWords(run, file).replace(/\.$/, "")}
        closes={isTied(run, file) ? null : <Tie lineId={lineId} run={run} />}
      >
        <p className="cluster screen-only">
          {mayRecord ? <RunSources lineId={lineId} run={run} file={file} /> : null}
          {file.observations.length === 0 ? null : (
            <TakeOut lineId={lineId} table="log" what="Log of all runs" />
          )}
        </p>
      </PageHead>
      <RunChooser at={`/lines/${lineId}/camera/log`} runs={file.runs} chosen={run} />
      <Observations run={run} {...part} />
    </>
  );
}

function NoRun({ lineId }: { readonly lineId: string }) {
  return (
    <>
      <PageHead asked="Log" answer="No camera run yet" />
      <Empty title="A log belongs to a run.">
        <p>
          <Link href={`/lines/${lineId}/camera`}>Enter the run first</Link>: where the camera went
          in, and which way it looked.
        </p>
      </Empty>
    </>
  );
}

function Tie({ lineId, run }: { readonly lineId: string; readonly run: Run }) {
  return (
    <Link href={`/lines/${lineId}/camera?run=${encodeURIComponent(run.id)}`}>
      Enter a known point on {run.name}, so that its readings get stations
    </Link>
  );
}

function Observations({
  run,
  lineId,
  file,
  revisions,
  mayRecord,
}: LinePart & { readonly run: Run }) {
  const video = file.videos.find((each) => each.runId === run.id) ?? null;
  return (
    <div className="stack">
      {mayRecord ? (
        <QuickRow
          key={`add ${run.id}`}
          title={`Add what ${run.name} saw`}
          action={addObservationAction.bind(null, { lineId, runId: run.id })}
          columns={OBSERVATION_COLUMNS}
          first={["counter", "kind", "clock", "fault", "diameter", "material"]}
          blank={OBSERVATION_BLANK}
        />
      ) : null}
      <RunLog
        key={run.id}
        lineId={lineId}
        run={run}
        anchors={file.anchors.filter((anchor) => anchor.runId === run.id)}
        base={revisions.observations}
        {...sentRows(file.observations, { runId: run.id })}
        readOnly={!mayRecord}
        video={video}
        present={video !== null && isStored(readEnv().dataFolder, video.sha256)}
      />
    </div>
  );
}
