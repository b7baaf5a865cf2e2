import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Run } from "#lib/domain/facts/run.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { readEnv } from "#lib/env.ts";
import { isStored } from "#lib/storage/store.ts";
import type { LinePart } from "../part.ts";
import { QuickRow } from "../quick-row.tsx";
import { addObservationAction } from "./actions.ts";
import styles from "./camera.module.css";
import {
  ANCHOR_BLANK,
  ANCHOR_COLUMNS,
  GAP_BLANK,
  GAP_COLUMNS,
  OBSERVATION_BLANK,
  OBSERVATION_COLUMNS,
} from "./columns.ts";
import { RunLog } from "./run-log.client.tsx";
import { RunSources } from "./run-sources.tsx";
import { RunWay } from "./run-way.tsx";
import {
  coverageWords,
  isAgainstItself,
  isTied,
  problemsOfRun,
  residualsOf,
  sawWords,
  tiedWords,
} from "./run-words.ts";

/** Which run is worked on; there is one at a time, so that a phone can hold it. */
export function RunChooser({
  lineId,
  runs,
  chosen,
}: {
  readonly lineId: string;
  readonly runs: readonly Run[];
  readonly chosen: Run;
}) {
  if (runs.length < 2) return null;
  return (
    <nav aria-label="Runs" className={`${styles["chooser"]} screen-only`}>
      {runs.map((run) => (
        <Link
          key={run.id}
          href={`/lines/${lineId}/camera?run=${encodeURIComponent(run.id)}`}
          scroll={false}
          aria-current={run.id === chosen.id ? "page" : undefined}
        >
          {run.name}
        </Link>
      ))}
    </nav>
  );
}

/** One run: what ties it to the line, where it could not see, and what it saw. */
export function RunPart({ run, ...part }: LinePart & { readonly run: Run }) {
  const { file, report } = part;
  const problems = problemsOfRun(run, file, report);
  const tied = isTied(run, file);
  return (
    <Section
      title={`${run.name}, ${formatDay(run.ranOn, report.today)}`}
      note={`${coverageWords(run, report)} ${sawWords(run, file)}`}
      actions={part.mayRecord ? <RunSources lineId={part.lineId} run={run} file={file} /> : null}
    >
      {tied ? null : <NoticeBox kind="caution" title={tiedWords(run, file)} />}
      {problems.length === 0 ? null : <Problems sentences={problems} />}
      <RunWay run={run} isAgainst={isAgainstItself(run, file)} {...part} />
      <div className={styles["beside"]}>
        <Anchors run={run} {...part} />
        <Gaps run={run} {...part} />
      </div>
      <Observations run={run} {...part} />
    </Section>
  );
}

function Problems({ sentences }: { readonly sentences: readonly string[] }) {
  return (
    <NoticeBox kind="mend" title="This run contradicts itself">
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </NoticeBox>
  );
}

type RunProps = LinePart & { readonly run: Run };

function Observations({ run, lineId, file, revisions, mayRecord }: RunProps) {
  const video = file.videos.find((each) => each.runId === run.id) ?? null;
  return (
    <div className="stack-tight">
      {mayRecord ? (
        <QuickRow
          key={`add ${run.id}`}
          title={`Add what ${run.name} sees`}
          action={addObservationAction.bind(null, lineId, run.id)}
          columns={OBSERVATION_COLUMNS}
          first={["counter", "kind", "clock", "fault", "diameter", "material"]}
          blank={OBSERVATION_BLANK}
        />
      ) : null}
      <h3>What {run.name} saw</h3>
      <RunLog
        key={run.id}
        lineId={lineId}
        run={run}
        anchors={file.anchors.filter((anchor) => anchor.runId === run.id)}
        base={revisions.observations}
        rows={file.observations}
        readOnly={!mayRecord}
        video={video}
        present={video !== null && isStored(readEnv().dataFolder, video.sha256)}
      />
    </div>
  );
}

function Anchors({ run, lineId, file, report, revisions, mayRecord }: RunProps) {
  const tied = isTied(run, file);
  return (
    <div className="stack-tight">
      <h3>Tied to the line at</h3>
      {tied ? <p className="muted">{tiedWords(run, file)}</p> : null}
      <RowsGrid
        key={run.id}
        lineId={lineId}
        table="anchors"
        where={{ runId: run.id }}
        base={revisions.anchors}
        rows={file.anchors}
        columns={ANCHOR_COLUMNS}
        blank={ANCHOR_BLANK}
        addWord="known point"
        emptyWords="Not tied yet. If the run saw the main: its reading there, and station 0."
        readOnly={!mayRecord}
      />
      <Residuals sentences={residualsOf(run, report)} />
    </div>
  );
}

/** How each known point agrees with the run's others. */
function Residuals({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <>
      <p className="small">Each of them held against the others:</p>
      <ul className={styles["residuals"]}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </>
  );
}

function Gaps({ run, lineId, file, revisions, mayRecord }: RunProps) {
  return (
    <div className="stack-tight">
      <h3>Could not see</h3>
      <p className="muted">Counter readings. What lies here is never called “not seen”.</p>
      <RowsGrid
        key={run.id}
        lineId={lineId}
        table="gaps"
        where={{ runId: run.id }}
        base={revisions.gaps}
        rows={file.gaps}
        columns={GAP_COLUMNS}
        blank={GAP_BLANK}
        addWord="gap"
        emptyWords="No gap: the camera saw the pipe all along."
        readOnly={!mayRecord}
      />
    </div>
  );
}
