import type { Metadata } from "next";
import { Empty } from "#app/_components/empty.tsx";
import { Fold } from "#app/_components/fold.client.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { getImport } from "#db/queries/history.ts";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { momentWords } from "#lib/domain/time/moment.ts";
import { officeZone } from "#lib/operations/office-day.ts";
import { lineFileOf } from "../file.ts";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { EntryDetail } from "./entry-detail.tsx";
import { matching, peopleIn } from "./find-entries.ts";
import styles from "./history.module.css";
import { namesIn } from "./names-in.ts";
import type { Names } from "./read-detail.ts";

export const metadata: Metadata = { title: "What happened?" };

/** So many entries are shown at once. */
const AT_ONCE = 20;

interface HappenedQuery {
  readonly for?: string | string[];
  readonly by?: string | string[];
  readonly show?: string | string[];
}

export default async function HappenedPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<HappenedQuery>;
}) {
  const { lineId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const query = await searchParams;
  const words = only(query.for);
  const by = only(query.by);
  const zone = officeZone(db());
  const found = matching(file.history, { words, by });
  const show = Math.max(AT_ONCE, Number(only(query.show)) || 0);
  return (
    <>
      <QuestionHead lineId={lineId} question="history" />
      <Imported lineId={lineId} zone={zone} />
      <Section title="Activity" note="Newest first. Append-only: entries are never changed.">
        <form className="cluster cluster-end screen-only" action={`/lines/${lineId}/history`}>
          <div className="field">
            <label htmlFor="happened-for">Find</label>
            <input
              id="happened-for"
              className="input"
              type="search"
              name="for"
              defaultValue={words}
              placeholder="e.g. match, 14 Fennel, split"
            />
          </div>
          <div className="field">
            <label htmlFor="happened-by">By</label>
            <select id="happened-by" className="input" name="by" defaultValue={by}>
              <option value="">anyone</option>
              {peopleIn(file.history).map((name) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          </div>
          <button type="submit" className="button">
            Find
          </button>
        </form>
        {found.length === 0 ? (
          <Empty title={file.history.length === 0 ? "No activity yet." : "No matches."}>
            {file.history.length === 0 ? null : (
              <p>
                <a href={`/lines/${lineId}/history`}>Show all {file.history.length} entries</a>
              </p>
            )}
          </Empty>
        ) : (
          <Log
            entries={found.slice(0, show)}
            names={namesIn(file)}
            zone={zone}
            today={report.today}
          />
        )}
        {found.length > show ? (
          <p className="screen-only">
            <a
              href={`/lines/${lineId}/history?${new URLSearchParams({ for: words, by, show: String(show + AT_ONCE) })}`}
            >
              Show {Math.min(AT_ONCE, found.length - show)} more of {found.length}
            </a>
          </p>
        ) : null}
      </Section>
    </>
  );
}

function only(value: string | string[] | undefined): string {
  return (Array.isArray(value) ? value[0] : value) ?? "";
}

function Log({
  entries,
  names,
  zone,
  today,
}: {
  readonly entries: readonly HistoryEntry[];
  readonly names: Names;
  readonly zone: string;
  readonly today: string;
}) {
  const days = byDay(entries, zone);
  return (
    <div className="stack">
      {[...days].map(([day, ofDay], at) => (
        <section key={day} className={styles["day"]} aria-label={formatDay(day, today)}>
          <h3>{formatDay(day, today)}</h3>
          <Fold onPhone bare opened={at < 2} summary={counted(ofDay.length, "entry", "entries")}>
            <ol className={styles["entries"]}>
              {ofDay.map((entry) => (
                <li key={entry.id}>
                  <time dateTime={entry.at} className={`muted ${styles["time"]}`}>
                    {timeIn(zone, entry.at)}
                  </time>
                  <div className="stack-tight">
                    <p>
                      {entry.sentence} <span className="muted nowrap">{entry.by}</span>
                    </p>
                    <EntryDetail detail={entry.detail} names={names} />
                  </div>
                </li>
              ))}
            </ol>
          </Fold>
        </section>
      ))}
    </div>
  );
}

function byDay(entries: readonly HistoryEntry[], zone: string): Map<string, HistoryEntry[]> {
  const days = new Map<string, HistoryEntry[]>();
  for (const entry of entries) {
    const day = dayAt(entry.at, zone);
    const ofDay = days.get(day);
    if (ofDay === undefined) days.set(day, [entry]);
    else ofDay.push(entry);
  }
  return days;
}

function timeIn(zone: string, at: string): string {
  return new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    hour: "numeric",
    minute: "2-digit",
  }).format(new Date(at));
}

/** What is told before a file was imported rests on that file, names included. */
function Imported({ lineId, zone }: { readonly lineId: string; readonly zone: string }) {
  const imported = getImport(db(), lineId);
  if (imported === null) return null;
  return (
    <NoticeBox kind="note" title="This line was imported from a line file">
      <p>
        {imported.by} imported it on {momentWords(imported.at, zone, "en")}. Everything before then
        came with the file, names included: this office did not see it happen.
      </p>
    </NoticeBox>
  );
}
