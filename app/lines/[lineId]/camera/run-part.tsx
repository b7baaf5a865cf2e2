import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Run } from "#lib/domain/facts/run.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { LineGrid } from "../line-grid.tsx";
import type { LinePart } from "../part.ts";
import styles from "./camera.module.css";
import { ANCHOR_BLANK, ANCHOR_COLUMNS, GAP_BLANK, GAP_COLUMNS } from "./columns.ts";
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

/** One run: how it was made, what ties it to the line, and where it could not see. */
export function RunPart({ run, ...part }: LinePart & { readonly run: Run }) {
  const { lineId, file, report } = part;
  const problems = problemsOfRun(run, file, report);
  const tied = isTied(run, file);
  return (
    <Section
      title={`${run.name}, ${formatDay(run.ranOn, report.today)}`}
      note={`${coverageWords(run, report)} ${sawWords(run, file)}`}
      actions={
        <Link href={`/lines/${lineId}/camera/log?run=${encodeURIComponent(run.id)}`}>
          Log of {run.name}
        </Link>
      }
    >
      {tied ? null : <NoticeBox kind="caution" title={tiedWords(run, file)} />}
      {problems.length === 0 ? null : <Problems sentences={problems} />}
      <RunWay run={run} isAgainst={isAgainstItself(run, file)} {...part} />
      <div className={styles["beside"]}>
        <Anchors run={run} {...part} />
        <Gaps run={run} {...part} />
      </div>
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

function Anchors({ run, lineId, file, report }: RunProps) {
  const tied = isTied(run, file);
  return (
    <div className="stack-tight">
      <h3>Known points on this run</h3>
      {tied ? <p className="muted">{tiedWords(run, file)}</p> : null}
      <LineGrid
        key={run.id}
        lineId={lineId}
        table="anchors"
        where={{ runId: run.id }}
        columns={ANCHOR_COLUMNS}
        blank={ANCHOR_BLANK}
        addWord="known point"
        emptyWords={
          tied
            ? "None besides its zero."
            : "Not tied yet. If the run reached the main, enter the reading there and station 0."
        }
      />
      <Residuals sentences={residualsOf(run, report)} />
    </div>
  );
}

/** How each known point agrees with the run's others. */
function Residuals({ sentences }: { readonly sentences: readonly string[] }) {
  if (sentences.length === 0) return null;
  return (
    <details>
      <summary>Each point checked against the others</summary>
      <ul className={styles["residuals"]}>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </details>
  );
}

function Gaps({ run, lineId }: RunProps) {
  return (
    <div className="stack-tight">
      <h3>Sections not visible</h3>
      <p className="muted">By counter reading. Nothing here is reported as “not seen”.</p>
      <LineGrid
        key={run.id}
        lineId={lineId}
        table="gaps"
        where={{ runId: run.id }}
        columns={GAP_COLUMNS}
        blank={GAP_BLANK}
        addWord="gap"
        emptyWords="None entered: what the run passed counts as seen."
      />
    </div>
  );
}
