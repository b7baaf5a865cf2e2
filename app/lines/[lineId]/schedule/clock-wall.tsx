import { Empty } from "#app/_components/empty.tsx";
import { tellingWords } from "#lib/domain/clocks/telling.ts";
import { clockRows } from "#lib/domain/desk/clock-rows.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { daysBetween } from "#lib/domain/time/days.ts";
import { formatDate, formatDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { counted } from "../names.ts";
import { MEANING_WORDS } from "../terms.ts";
import { groupClocks } from "./clock-groups.ts";
import styles from "./schedule.module.css";

/** Every deadline in order of time: what has passed, the next week, later; settled ones folded. */
export function ClockWall({ file, report }: { readonly file: LineFile; readonly report: Report }) {
  const groups = groupClocks(clockRows(file, report.clocks), report.today);
  if (report.clocks.length === 0) {
    return (
      <Empty
        title="No deadlines running."
        example="Reply from an owner, due by December 1; locate window opens November 30"
      >
        <p>
          Deadlines start by themselves: from letters with a reply date, locate tickets, permits,
          and the events you enter below.
          {file.authority === null
            ? " The authority’s rules are missing here; select the authority first."
            : ""}
        </p>
      </Empty>
    );
  }
  return (
    <div className="stack">
      <Group title="Overdue" clocks={groups.passed} file={file} today={report.today} />
      <Group title="Next 7 days" clocks={groups.week} file={file} today={report.today} />
      <Group title="Later" clocks={groups.later} file={file} today={report.today} />
      {groups.settled.length === 0 ? null : (
        <details>
          <summary>{groups.settled.length} completed</summary>
          <Group title="Completed" clocks={groups.settled} file={file} today={report.today} />
        </details>
      )}
    </div>
  );
}

function Group({
  title,
  clocks,
  file,
  today,
}: {
  readonly title: string;
  readonly file: LineFile;
  readonly clocks: readonly Clock[];
  readonly today: string;
}) {
  if (clocks.length === 0) return null;
  return (
    <section aria-label={title} className="stack-tight">
      <h3>{title}</h3>
      <ol className={styles["clocks"]}>
        {clocks.map((clock) => (
          <li key={clock.key} data-settled={clock.settled}>
            <p className={styles["when"]}>
              <time dateTime={clock.on} className="strong">
                {formatDay(clock.on, today)}
                {clock.at === "" ? null : `, ${formatTime(clock.at)}`}
              </time>
              <span className="muted small">
                {MEANING_WORDS[clock.meaning]}
                {clock.settled ? "" : `, ${awayWords(clock.on, today)}`}
              </span>
            </p>
            <div>
              <p className="strong">{clock.title}</p>
              {clock.telling === null ? null : <p>{capital(tellingWords(file, clock.telling))}.</p>}
              <details className={styles["counted"]}>
                <summary className="small">How it was counted</summary>
                <p>
                  {clock.sentence}
                  {clock.citation === "" ? null : (
                    <span className="muted">
                      {" "}
                      ({clock.citation}
                      {clock.asOf === null ? "" : `, as of ${formatDate(clock.asOf)}`})
                    </span>
                  )}
                </p>
              </details>
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}

function awayWords(on: string, today: string): string {
  const days = daysBetween(today, on);
  if (days === 0) return "today";
  return days > 0 ? `in ${counted(days, "day")}` : `${counted(-days, "day")} ago`;
}
