import type { Metadata } from "next";
import Link from "next/link";
import { BeingRenewed, Old } from "#app/_components/being-renewed.tsx";
import { ButtonLink } from "#app/_components/button.tsx";
import { CompanyPapers } from "#app/_components/company-papers.tsx";
import { DUE_TITLES, DueList } from "#app/_components/due-list.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { type AskedWords, Narrow, oneOfEach } from "#app/_components/narrow.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Pages, pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import { type Desk, deskNow } from "#app/desk.ts";
import { Closes } from "#app/lines/[lineId]/closes.tsx";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import type { SummedLine } from "#db/queries/summary.ts";
import { deskSentence } from "#lib/domain/desk/desk-sentence.ts";
import {
  type AskedNarrowing,
  isNarrowed,
  narrowedAddress,
  narrowingOf,
} from "#lib/domain/desk/narrowing.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { formatFullDay } from "#lib/domain/time/format-day.ts";
import styles from "./desk.module.css";

export const metadata: Metadata = { title: "Desk" };

/** So many things of each kind show on the desk; the rest is a press away. */
const THINGS = { late: 8, due: 8, blocked: 2, waiting: 2 } as const;
const LINES = 20;

export default async function DeskPage({
  searchParams,
}: {
  readonly searchParams: Promise<Asked>;
}) {
  const user = await requireUser();
  const day = today();
  const { page, ...rest } = await searchParams;
  const asked = oneOfEach(rest);
  const narrowing = narrowingOf(asked, { userId: user.id, today: day });
  const from = pageFrom(page, LINES);
  const narrowed = isNarrowed(narrowing);
  const { tallies, due, papers, lines, counts, old } = deskNow({
    things: THINGS,
    lines: { from, most: LINES },
    narrowing,
  });
  return (
    <div className="sheet">
      <PageHead asked={formatFullDay(day)} answer={deskSentence(tallies)}>
        <BeingRenewed old={old} />
      </PageHead>
      {due.length === 0 && papers.length === 0 && !narrowed ? null : (
        <Section
          title="What is due"
          actions={<Narrow asked={asked} narrowing={narrowing} counts={counts} user={user} />}
        >
          {due.length === 0 && papers.length === 0 ? (
            <p>Nothing due here.</p>
          ) : (
            <Due due={due} papers={papers} day={day} asked={asked} />
          )}
        </Section>
      )}
      {narrowing.waitsOn !== null || narrowing.until !== null ? null : (
        <Lines
          lines={lines}
          from={from}
          asked={asked}
          whose={narrowing.keeper}
          may={mayDo(user.role, "work-the-file")}
        />
      )}
    </div>
  );
}

function Lines({
  lines,
  from,
  asked,
  whose,
  may,
}: {
  readonly lines: Desk["lines"];
  readonly from: number;
  readonly asked: AskedNarrowing;
  readonly whose: string | null;
  readonly may: boolean;
}) {
  const none = whose === null ? <NoLines may={may} /> : <p>No lines here.</p>;
  return (
    <Section
      title="Lines"
      actions={
        may && lines.of > 0 ? <ButtonLink href="/lines/new">Open a line</ButtonLink> : undefined
      }
    >
      {lines.of === 0 ? (
        none
      ) : (
        <ol className={styles["lines"]}>
          {lines.rows.map((line) => (
            <LineEntry key={line.lineId} line={line} />
          ))}
        </ol>
      )}
      <Pages
        from={from}
        most={LINES}
        of={lines.of}
        what="lines"
        href={(number) => narrowedAddress("/", asked, { page: String(number) })}
      />
    </Section>
  );
}

interface Asked extends AskedWords {
  readonly page?: string | string[];
}

function Due({
  due,
  papers,
  day,
  asked,
}: {
  readonly due: Desk["due"];
  /** License, bond and insurance that run out. */
  readonly papers: readonly Clock[];
  readonly day: string;
  readonly asked: AskedNarrowing;
}) {
  return (
    <div className="stack">
      <CompanyPapers papers={papers.filter(({ on }) => on < day)} day={day} />
      {due.map(({ kind, rows, of }) => (
        <div key={kind} className={styles["kind"]}>
          <div>
            <h3>{DUE_TITLES[kind]}</h3>
            {of > rows.length ? (
              <Link href={narrowedAddress(`/due/${kind}`, asked)} className="small">
                All {of.toLocaleString("en-US")}
              </Link>
            ) : null}
          </div>
          <DueList things={rows} day={day} />
        </div>
      ))}
      <CompanyPapers papers={papers.filter(({ on }) => on >= day)} day={day} />
    </div>
  );
}

function LineEntry({ line }: { readonly line: SummedLine }) {
  const more = line.openCount - line.open.length;
  return (
    <li className={styles["line"]}>
      <h3>
        <Link href={`/lines/${line.lineId}`}>{line.name}</Link>
        {line.town === "" ? null : <span className={styles["town"]}>{line.town}</span>}
      </h3>
      <Old line={line} />
      {line.open.length === 0 && line.sentence !== "" ? <p>{line.sentence}.</p> : null}
      <dl className={styles["answers"]}>
        {line.open.map((answer) => (
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
            {more === 1 ? "1 more open question" : `${more} more open questions`}
          </Link>
        </p>
      ) : null}
    </li>
  );
}

function NoLines({ may }: { readonly may: boolean }) {
  return (
    <Empty
      title="Open a line when a technician comes back with video of a shared pipe."
      example="Cinder Alley behind Fennel Row, Quillhaven"
    >
      {may ? (
        <p className="cluster">
          <ButtonLink href="/lines/new" main>
            Open a line
          </ButtonLink>
          <Link href="/lines/import">Import a line file</Link>
        </p>
      ) : (
        <p>No one has opened one yet.</p>
      )}
    </Empty>
  );
}
