import type { Metadata } from "next";
import Link from "next/link";
import { Old } from "#app/_components/being-renewed.tsx";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Pages, pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import { linesNow } from "#app/desk.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import type { SummedLine } from "#db/queries/summary.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import styles from "./lines.module.css";

export const metadata: Metadata = { title: "Lines" };

const MOST = 50;

interface Asked {
  readonly open?: string | string[];
  readonly closed?: string | string[];
}

export default async function LinesPage({
  searchParams,
}: {
  readonly searchParams: Promise<Asked>;
}) {
  const user = await requireUser();
  const may = mayDo(user.role, "work-the-file");
  const day = today();
  const asked = await searchParams;
  const [openFrom, closedFrom] = [pageFrom(asked.open, MOST), pageFrom(asked.closed, MOST)];
  const open = linesNow("open", { from: openFrom, most: MOST });
  const closed = linesNow("closed", { from: closedFrom, most: MOST });
  return (
    <div className="sheet">
      <PageHead asked="Lines" answer={sentence(open.of, closed.of)}>
        {may ? (
          <p className="cluster screen-only">
            <ButtonLink href="/lines/new">Open a line</ButtonLink>
            <Link href="/lines/import">Import a line file</Link>
          </p>
        ) : null}
      </PageHead>
      <Section title="Open">
        {open.of === 0 ? (
          <Empty title={closed.of === 0 ? "No lines yet." : "No open lines."}>
            {may ? <p>Open one when a technician comes back with video of a shared pipe.</p> : null}
          </Empty>
        ) : (
          <LineTable lines={open.rows} day={day} last="Most urgent" />
        )}
        <Pages
          from={openFrom}
          most={MOST}
          of={open.of}
          what="open lines"
          href={(page) => `/lines?open=${page}`}
        />
      </Section>
      {closed.of === 0 ? null : (
        <Section title="Closed" note="Kept in case questions or repairs come up again.">
          <LineTable lines={closed.rows} day={day} last="Status" />
          <Pages
            from={closedFrom}
            most={MOST}
            of={closed.of}
            what="closed lines"
            href={(page) => `/lines?closed=${page}`}
          />
        </Section>
      )}
    </div>
  );
}

function sentence(open: number, closed: number): string {
  const number = (count: number) => (count === 0 ? "none" : count.toLocaleString("en-US"));
  if (open + closed === 0) return "No lines yet";
  return capital(
    closed === 0 ? `${number(open)} open` : `${number(open)} open, ${number(closed)} closed`,
  );
}

function LineTable({
  lines,
  day,
  last,
}: {
  readonly lines: readonly SummedLine[];
  readonly day: string;
  /** What the last column tells. */
  readonly last: string;
}) {
  return (
    <div className="scroll">
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Line", "Town", last]} />
        <tbody>
          {lines.map((line) => (
            <tr key={line.lineId}>
              <th scope="row">
                <Link href={`/lines/${line.lineId}`}>{line.name}</Link>
              </th>
              <td data-label="Town" className={styles["town"]}>
                {line.town === "" ? "unknown" : line.town}
              </td>
              <td>
                {line.closedOn === null ? line.sentence : `Closed ${formatDay(line.closedOn, day)}`}
                <Old line={line} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
