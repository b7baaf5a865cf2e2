import { Heads } from "#app/_components/heads.tsx";
import { newestTicket } from "#lib/domain/calendar/happenings.ts";
import { type PlannedStep, planStart } from "#lib/domain/clocks/start-plan.ts";
import { whiteLined } from "#lib/domain/clocks/white-line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { capital } from "#lib/domain/say/capital.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { CLOCK_EVENT_WORDS } from "../terms.ts";

/** For a target start: by when each thing must be done. */
export function StartPlan({
  lineId,
  file,
  today,
  wished,
  typed,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: Day;
  readonly wished: Day | null;
  /** The day comes from the person, not from the earliest start. */
  readonly typed: boolean;
}) {
  const steps = wished === null ? [] : planStart(file, wished, today);
  return (
    <div className="stack">
      <form className="cluster cluster-end screen-only" action={`/lines/${lineId}/schedule#start`}>
        <div className="field">
          <label htmlFor="next-start">Target start</label>
          <input
            id="next-start"
            className="input"
            type="date"
            name="start"
            min={today}
            defaultValue={wished ?? ""}
          />
        </div>
        <button type="submit" className="button">
          Work back from it
        </button>
      </form>
      {wished === null || (steps.length === 0 && !typed) ? null : (
        <table className="plain">
          <caption>To start {formatDay(wished, today)}</caption>
          <Heads of={["By", "Must be done", "How counted"]} />
          <tbody>
            {steps.length === 0 ? (
              <tr>
                <td colSpan={3}>No rule entered for the authority requires anything first.</td>
              </tr>
            ) : null}
            {steps.map((step) => (
              <PlanRow key={step.title} step={step} file={file} today={today} />
            ))}
          </tbody>
        </table>
      )}
    </div>
  );
}

function PlanRow({
  step,
  file,
  today,
}: {
  readonly step: PlannedStep;
  readonly file: LineFile;
  readonly today: Day;
}) {
  const { event, title } = step;
  return (
    <tr>
      <th scope="row" className="nowrap">
        {step.by === null ? "no date" : formatDay(step.by, today)}
        {step.late ? (
          <>
            {" "}
            <span className="tag">too late</span>
          </>
        ) : null}
      </th>
      <td>
        {capital(event === null || event === "work-begins" ? title : CLOCK_EVENT_WORDS[event])}
      </td>
      <td>
        {step.sentence}
        {event === null ? onFile(file, today) : ""}
        {step.citation === "" ? null : <span className="muted"> ({step.citation})</span>}
      </td>
    </tr>
  );
}

/** What is known of the white-lining for the ticket in force; nothing before a ticket is called in. */
function onFile(file: LineFile, today: Day): string {
  const ticket = newestTicket(file);
  return ticket === null ? "" : ` ${whiteLined(ticket, today) ?? "Not on file"}.`;
}
