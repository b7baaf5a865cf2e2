import type { Metadata } from "next";
import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { type DeskEntry, deskEntries } from "#app/_desk.ts";
import { requireUser } from "#app/_session.ts";
import { today } from "#app/_today.ts";
import { formatDay } from "#lib/domain/calendar/format-day.ts";
import { mayDo } from "#lib/domain/user/user.ts";

export const metadata: Metadata = { title: "Lines" };

export default async function LinesPage() {
  const user = await requireUser();
  const may = mayDo(user.role, "work-the-file");
  const day = today();
  const lines = deskEntries("all");
  const open = lines.filter((line) => line.closedOn === null);
  const closed = lines.filter((line) => line.closedOn !== null);
  return (
    <div className="sheet">
      <PageHead asked="Lines" answer={sentence(open.length, closed.length)}>
        {may ? (
          <p className="cluster screen-only">
            <ButtonLink href="/lines/new">Open a line</ButtonLink>
            <Link href="/lines/import">Bring one in from a line file</Link>
          </p>
        ) : null}
      </PageHead>
      <Section title="Open">
        {open.length === 0 ? (
          <Empty title="No line is open." example="Cinder Alley behind Fennel Row, Quillhaven" />
        ) : (
          <LineTable lines={open} day={day} />
        )}
      </Section>
      {closed.length === 0 ? null : (
        <Section title="Closed" note="Kept for the next argument, and for the next mending.">
          <LineTable lines={closed} day={day} />
        </Section>
      )}
    </div>
  );
}

function sentence(open: number, closed: number): string {
  const first = open === 1 ? "1 open" : `${open} open`;
  return closed === 0 ? first : `${first}, ${closed} closed`;
}

function LineTable({ lines, day }: { readonly lines: readonly DeskEntry[]; readonly day: string }) {
  return (
    <div className="scroll">
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">Line</th>
            <th scope="col">Town</th>
            <th scope="col">What presses</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={line.lineId}>
              <th scope="row">
                <Link href={`/lines/${line.lineId}`}>{line.name}</Link>
              </th>
              <td>{line.town === "" ? "unknown" : line.town}</td>
              <td>
                {line.closedOn === null ? line.sentence : `Closed ${formatDay(line.closedOn, day)}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
