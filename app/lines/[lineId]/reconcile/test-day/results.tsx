import { Tick } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { Section } from "#app/_components/section.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { TieInTest } from "#lib/domain/facts/test.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import {
  resultOf,
  stopKey,
  stopsInForce,
  testsOfDay,
} from "#lib/domain/testing/test-day-results.ts";
import { dosedWords } from "#lib/domain/tiein/stop-words.ts";
import { TEST_RESULT_WORDS } from "#lib/domain/tiein/test-words.ts";
import { formatTime, minutesOf } from "#lib/domain/time/time-of-day.ts";
import { resultSeen } from "#lib/operations/record-test-result.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { tieInName } from "../../names.ts";
import { recordResultAction } from "./actions.ts";
import { ResultForm } from "./result-form.client.tsx";
import { isControl, stopPlace } from "./stop-names.ts";
import styles from "./test-day.module.css";

interface ResultsProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly day: TestDay;
}

/** One form for each stop and watched tie-in: three big buttons, made for a thumb. */
export function Results({ lineId, file, day }: ResultsProps) {
  const stops = stopsInForce(file, day);
  const named = stops.find(({ propertyId }) => propertyId !== null);
  return (
    <div className="screen-only">
      <Section
        title="What was seen"
        id="results"
        note="Tap when dye appears, or when the wait is over. “Not seen” is weak evidence: slow pipes, traps and blockages can hide dye."
      >
        <div className="stack-wide">
          {stops.flatMap((stop) =>
            askedAt(stop).map((tieInId, at) => (
              <StopResult
                key={`${stopKey(stop)} ${tieInId}`}
                lineId={lineId}
                file={file}
                day={day}
                stop={stop}
                tieInId={tieInId}
                asksNames={stop === named && at === 0}
              />
            )),
          )}
        </div>
      </Section>
    </div>
  );
}

/** One answer for each watched tie-in; a dosing of the pipe itself has one for the place. */
function askedAt({ propertyId, tieInIds }: TestStop): readonly string[] {
  return propertyId === null ? tieInIds.slice(0, 1) : tieInIds;
}

function StopResult({
  lineId,
  file,
  day,
  stop,
  tieInId,
  asksNames,
}: ResultsProps & {
  readonly stop: TestStop;
  readonly tieInId: string;
  /** The first of the day: who doses and who watches is asked there, and carried over. */
  readonly asksNames: boolean;
}) {
  const test = resultOf(file, day, { stop, tieInId });
  const result = stop.passed ?? test?.result ?? null;
  const title = titleOf(file, { day, stop, tieInId });
  return (
    <ResultForm action={recordResultAction.bind(null, lineId)} label={title}>
      <input type="hidden" name="dayId" value={day.id} />
      <input type="hidden" name="stop" value={stopKey(stop)} />
      <input type="hidden" name="tieInId" value={tieInId} />
      <SeenField value={seenOf(resultSeen(test, stop))} />
      <h3 className={styles["when"]}>{title}</h3>
      {result === null ? (
        <p className="small muted">{askWords(file, { day, stop, tieInId })}</p>
      ) : (
        <p>
          <span className="tag tag-done">{TEST_RESULT_WORDS[result]}</span> Tap again to correct.
        </p>
      )}
      {stop.propertyId === null ? null : (
        <ResultFields
          test={test}
          stop={stop}
          before={testsOfDay(file, day).at(-1) ?? null}
          asksNames={asksNames}
        />
      )}
    </ResultForm>
  );
}

interface Asked {
  readonly day: TestDay;
  readonly stop: TestStop;
  readonly tieInId: string;
}

function titleOf(file: LineFile, { day, stop, tieInId }: Asked): string {
  const control = isControl(day, stop) ? " (control)" : "";
  return `${formatTime(stop.startsAt)} ${stopPlace(file, stop)}${control}, ${stop.colour} dye, watched at ${tieInName(file, tieInId)}`;
}

/** What the watcher has to say yes or no to: the same three presses ask different things. */
function askWords(file: LineFile, { day, stop, tieInId }: Asked): string {
  const label = tieInName(file, tieInId);
  const wait = `Watch for ${stop.waitMinutes} minutes.`;
  if (stop.propertyId === null) return `${wait} Is the dye seen to pass the camera?`;
  const out = `${wait} Is the dye seen to come out of ${label}?`;
  return isControl(day, stop) ? `${out} It must not.` : out;
}

/** Names and the film carry over from the result before: the crew is the same. */
function ResultFields({
  test,
  stop,
  before,
  asksNames,
}: {
  readonly test: TieInTest | null;
  readonly stop: TestStop;
  readonly before: TieInTest | null;
  readonly asksNames: boolean;
}) {
  const like = test ?? before;
  return (
    <>
      <div className={styles["two"]}>
        <Field
          label="Dye added at"
          name="startedAt"
          defaultValue={formatTime(test?.startedAt ?? stop.startsAt)}
          width={7}
        />
        <Field
          label="Minutes watched"
          name="minutes"
          inputMode="numeric"
          unit="min"
          width={4}
          defaultValue={test === null ? undefined : minutesFor(test)}
        />
      </div>
      <Tick
        label="All other water was off"
        name="otherWaterBarred"
        defaultChecked={like?.otherWaterBarred ?? false}
      />
      <details open={like === null && asksNames}>
        <summary>Names, video and note{namesOf(like)}</summary>
        <div className={styles["fields"]}>
          <Field label="Dye added by" name="dosedBy" defaultValue={like?.dosedBy} />
          <Field label="Watched by" name="watchedBy" defaultValue={like?.watchedBy} />
          <Field label="Video" name="filmed" example="Run 3, 2:10" defaultValue={test?.filmed} />
          <Field
            label="Amount of dye"
            name="quantity"
            defaultValue={test?.quantity ?? dosedWords(stop)}
          />
          <Field label="Note" name="note" defaultValue={test?.note} />
        </div>
      </details>
    </>
  );
}

/** `: Marek Sandoval, Ruth Lindqvist`, so that a closed part shows whose names it keeps. */
function namesOf(test: TieInTest | null): string {
  const names = [test?.dosedBy ?? "", test?.watchedBy ?? ""].filter((name) => name !== "");
  return names.length === 0 ? "" : `: ${names.join(", ")}`;
}

function minutesFor(test: TieInTest): number | undefined {
  if (test.result !== "positive") return test.waitMinutes ?? undefined;
  const from = minutesOf(test.startedAt);
  const to = minutesOf(test.firstSeenAt);
  return from === null || to === null ? undefined : (to - from + 1_440) % 1_440;
}
