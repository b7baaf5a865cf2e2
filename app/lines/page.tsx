import type { Metadata } from "next";
import Link from "next/link";
import { Old } from "#app/_components/being-renewed.tsx";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Pages, pageFrom } from "#app/_components/pages.tsx";
import { Section } from "#app/_components/section.tsx";
import { linesNow } from "#app/desk.ts";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import type { SummedLine } from "#db/queries/summary.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";

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
          <Empty title="No open lines." example="Cinder Alley behind Fennel Row, Quillhaven" />
        ) : (
          <LineTable lines={open.rows} day={day} />
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
          <LineTable lines={closed.rows} day={day} />
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
  const number = (count: number) => count.toLocaleString("en-US");
  return closed === 0 ? `${number(open)} open` : `${number(open)} open, ${number(closed)} closed`;
}

function LineTable({
  lines,
  day,
}: {
  readonly lines: readonly SummedLine[];
  readonly day: string;
}) {
  return (
    <div className="scroll">
      <table className="plain">
        <Heads of={["Line", "Town", "Most urgent"]} />
        <tbody>
          {lines.map((line) => (
            <tr key={line.lineId}>
              <th scope="row">
                <Link href={`/lines/${line.lineId}`}>{line.name}</Link>
              </th>
              <td>{line.town === "" ? "unknown" : line.town}</td>
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
