import type { Metadata } from "next";
import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { type DeskEntry, deskEntries, lineCounts } from "#app/_desk.ts";
import { requireUser } from "#app/_session.ts";
import { today } from "#app/_today.ts";
import { Closes } from "#app/lines/[lineId]/_closes.tsx";
import { formatFullDay, formatNearDay } from "#lib/domain/calendar/format-day.ts";
import type { DueThing } from "#lib/domain/desk/answer.ts";
import { deskSentence } from "#lib/domain/desk/desk-sentence.ts";
import { inOrder } from "#lib/domain/desk/due.ts";
import { mayDo } from "#lib/domain/user/user.ts";
import styles from "./desk.module.css";

export const metadata: Metadata = { title: "Desk" };

export default async function DeskPage() {
  const user = await requireUser();
  const day = today();
  const lines = deskEntries("waiting");
  const things = inOrder(lines.flatMap((line) => line.things));
  return (
    <div className="sheet">
      <PageHead asked={formatFullDay(day)} answer={deskSentence(things, lineCounts())} />
      {things.length === 0 ? null : <Due things={things} lines={lines} day={day} />}
      <Section
        title="Lines"
        note="The most pressing first. Each says what is open and what would close it."
        actions={
          mayDo(user.role, "work-the-file") ? (
            <ButtonLink href="/lines/new">Open a line</ButtonLink>
          ) : null
        }
      >
        {lines.length === 0 ? (
          <NoLines may={mayDo(user.role, "work-the-file")} />
        ) : (
          <ol className={styles["lines"]}>
            {lines.map((line) => (
              <LineEntry key={line.lineId} line={line} />
            ))}
          </ol>
        )}
      </Section>
    </div>
  );
}

const KINDS: readonly { readonly kind: DueThing["kind"]; readonly title: string }[] = [
  { kind: "late", title: "Late" },
  { kind: "due", title: "Due" },
  { kind: "blocked", title: "Blocked" },
  { kind: "waiting", title: "Waiting on others" },
];

function Due({
  things,
  lines,
  day,
}: {
  readonly things: readonly DueThing[];
  readonly lines: readonly DeskEntry[];
  readonly day: string;
}) {
  const names = new Map(lines.map((line) => [line.lineId, line.name]));
  const kinds = KINDS.filter(({ kind }) => things.some((thing) => thing.kind === kind));
  return (
    <Section title="What is due">
      <div className="stack">
        {kinds.map(({ kind, title }) => (
          <div key={kind} className={styles["kind"]}>
            <h3>{title}</h3>
            <ul className={styles["things"]}>
              {things
                .filter((thing) => thing.kind === kind)
                .map((thing) => (
                  <li key={`${thing.lineId} ${thing.question} ${thing.sentence}`}>
                    <span className={styles["when"]}>
                      {thing.on === null ? "" : formatNearDay(thing.on, day)}
                    </span>
                    <span>
                      <Link href={`/lines/${thing.lineId}/${thing.question}`}>
                        {thing.sentence}
                      </Link>
                      <span className="muted"> {names.get(thing.lineId)}</span>
                    </span>
                  </li>
                ))}
            </ul>
          </div>
        ))}
      </div>
    </Section>
  );
}

const SHOWN = 3;

function LineEntry({ line }: { readonly line: DeskEntry }) {
  const shown = line.open.slice(0, SHOWN);
  const more = line.open.length - shown.length;
  return (
    <li className={styles["line"]}>
      <h3>
        <Link href={`/lines/${line.lineId}`}>{line.name}</Link>
        {line.town === "" ? null : <span className={styles["town"]}>{line.town}</span>}
      </h3>
      {shown.length === 0 ? <p>{line.sentence}.</p> : null}
      <dl className={styles["answers"]}>
        {shown.map((answer) => (
          <div key={answer.question}>
            <dt>
              <Link href={`/lines/${line.lineId}/${answer.question}`}>{answer.asked}</Link>
            </dt>
            <dd>
              {answer.sentence}
              {answer.closes === null ? null : (
                <span className={styles["closes"]}>
                  <Closes lineId={line.lineId} answer={answer} />
                </span>
              )}
            </dd>
          </div>
        ))}
      </dl>
      {more > 0 ? (
        <p className="small">
          <Link href={`/lines/${line.lineId}`}>
            {more === 1 ? "One more question is open" : `${more} more questions are open`}
          </Link>
        </p>
      ) : null}
    </li>
  );
}

function NoLines({ may }: { readonly may: boolean }) {
  return (
    <Empty
      title="Open a line when a technician comes back with a recording of a shared pipe."
      example="Cinder Alley behind Fennel Row, Quillhaven"
    >
      {may ? (
        <p className="cluster">
          <ButtonLink href="/lines/new" main>
            Open a line
          </ButtonLink>
          <Link href="/lines/import">Bring one in from a line file</Link>
        </p>
      ) : (
        <p>Nobody has opened one yet.</p>
      )}
    </Empty>
  );
}
