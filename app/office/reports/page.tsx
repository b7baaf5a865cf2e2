import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { requireUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { OFFICE_REPORTS, REPORT_KINDS } from "#lib/domain/desk/office-reports.ts";
import { formatFullDay } from "#lib/domain/time/format-day.ts";

export const metadata: Metadata = { title: "Reports" };

/** What the office takes out over all lines, for a spreadsheet. */
export default async function ReportsPage() {
  const user = await requireUser();
  return (
    <div className="sheet">
      <PageHead asked="Reports" answer={`All lines, as of ${formatFullDay(today())}`}>
        <p className="muted">
          Each row ends with the day and your name, {user.name}. Files opened in a spreadsheet show
          names and amounts: keep them as carefully as the office’s own.
        </p>
        <p>
          <Link href="/office">Back to Office</Link>
        </p>
      </PageHead>
      {OFFICE_REPORTS.map((kind) => (
        <Section key={kind} title={REPORT_KINDS[kind].title} note={REPORT_KINDS[kind].note}>
          <p className="cluster">
            <a href={`/office/reports/${kind}?as=xlsx`} download>
              Spreadsheet (XLSX)
            </a>
            <a href={`/office/reports/${kind}`} download>
              CSV
            </a>
          </p>
        </Section>
      ))}
    </div>
  );
}
