import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { db } from "#app/db.ts";
import type { Narration } from "#lib/domain/facts/narration.ts";
import type { Anchor, Run } from "#lib/domain/facts/run.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import type { DraftLog, SetAside } from "#lib/domain/narration/log/draft.ts";
import type { TranscriptProblem } from "#lib/domain/narration/transcript/said-line.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { counted } from "../../names.ts";
import { measureFromMainAction, tieAtMainAction } from "./actions.ts";
import styles from "./narration.module.css";

const SHOWN = 5;

/** What could not be read of the transcript, each beside its line. */
export function TranscriptProblems({
  text,
  problems,
}: {
  readonly text: string;
  readonly problems: readonly TranscriptProblem[];
}) {
  if (problems.length === 0) return null;
  const lines = linesOf(text);
  const some = problems.slice(0, SHOWN);
  return (
    <NoticeBox
      kind="caution"
      title={`${counted(problems.length, "line")} of the transcript could not be read as intended`}
    >
      <ul>
        {some.map(({ line, message }) => (
          <li key={`${line} ${message}`}>
            Line {line}, “{(lines[line - 1] ?? "").trim()}”: {message}
          </li>
        ))}
      </ul>
      <p>
        {problems.length > SHOWN ? "The others are marked in the transcript below. " : ""}The rest
        was read. To fix it, add the corrected transcript.
      </p>
    </NoticeBox>
  );
}

/** Where the speaker said that the camera is at the main, and nothing ties the run to it yet. */
export function AtMain({
  lineId,
  run,
  anchors,
  counter,
}: {
  readonly lineId: string;
  readonly run: Run;
  readonly anchors: readonly Anchor[];
  readonly counter: number | null;
}) {
  const tied =
    run.measuredFrom === "main" ||
    anchors.some(({ runId, kind }) => runId === run.id && kind === "main-connection");
  if (counter === null || tied) return null;
  return (
    <NoticeBox title={`The technician said the main is at ${plainFeet(counter)} on the counter.`}>
      <ActionForm action={tieAtMainAction.bind(null, { lineId, runId: run.id, counter })}>
        <p>{run.name} is not tied to the main yet. Tying it gives its readings stations.</p>
        <div>
          <SubmitButton pendingWord="Tying …" quiet>
            Tie {run.name} there: {plainFeet(counter)} is station 0.0
          </SubmitButton>
        </div>
      </ActionForm>
    </NoticeBox>
  );
}

/** The speaker measures from the main, and the run as it was entered does not. */
export function MeasuredFromMain({
  lineId,
  run,
  log,
}: {
  readonly lineId: string;
  readonly run: Run;
  readonly log: DraftLog;
}) {
  if (log.measuredFrom === run.measuredFrom || log.measuredFrom !== "main") return null;
  return (
    <NoticeBox kind="caution" title="The technician gives feet from the main.">
      <ActionForm action={measureFromMainAction.bind(null, { lineId, runId: run.id })}>
        <p>
          {run.name} is entered as measured from the access point. Nothing drafted here can go into
          its log until it is measured from the main too.
        </p>
        <div>
          <SubmitButton pendingWord="Saving …" quiet>
            Measure {run.name} from the main
          </SubmitButton>
        </div>
      </ActionForm>
    </NoticeBox>
  );
}

/** Numbers that were spoken and are no place, each with why. */
export function SetAsideNumbers({ setAside }: { readonly setAside: readonly SetAside[] }) {
  if (setAside.length === 0) return null;
  return (
    <details>
      <summary>{counted(setAside.length, "number")} set aside, none of them a footage</summary>
      <ul className={styles["aside"]}>
        {setAside.map(({ words, why, second }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same words may be said twice
          <li key={at}>
            “{words}”: {why}
            {second === null
              ? ""
              : `, at ${Math.floor(second / 60)}:${String(second % 60).padStart(2, "0")}`}
          </li>
        ))}
      </ul>
    </details>
  );
}

/** A text that says nothing of a log, or no distance. */
export function NothingDrafted({ log }: { readonly log: DraftLog }) {
  const { drafts, gaps, readings } = log;
  if (drafts.length + gaps.length === 0)
    return (
      <NoticeBox kind="caution" title="No observations were found in the text.">
        <p>
          Looked for words like “twenty-four one, a tap at nine o’clock”. The text is kept below. If
          it is the wrong text, add the right one.
        </p>
      </NoticeBox>
    );
  if (readings.length > 0) return null;
  return (
    <NoticeBox kind="caution" title="No footage was spoken.">
      <p>
        The rows below say what was seen, but not where. Enter the footage of each from the video; a
        row without one can’t go into the log.
      </p>
    </NoticeBox>
  );
}

/** The words as they were brought in, line by line. */
export function Transcript({
  narration,
  problems,
}: {
  readonly narration: Narration;
  readonly problems: readonly TranscriptProblem[];
}) {
  const { text, addedBy, addedAt } = narration;
  return (
    <details open={problems.length > SHOWN}>
      <summary>Original transcript, line by line</summary>
      <p className="muted">
        By {addedBy} on {formatDate(dayAt(addedAt, officeZone(db())))}. Kept unchanged.
      </p>
      <ol className={styles["transcript"]}>
        {linesOf(text).map((words, at) => {
          const wrong = problems.filter(({ line }) => line === at + 1);
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a text is its place
            <li key={at}>
              {words === "" ? " " : words}
              {wrong.map(({ message }) => (
                <span key={message} className="mend">
                  {message}
                </span>
              ))}
            </li>
          );
        })}
      </ol>
    </details>
  );
}

function linesOf(text: string): string[] {
  return text.split(/\r\n|\r|\n/);
}
