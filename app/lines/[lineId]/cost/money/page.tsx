import type { Metadata } from "next";
import Link from "next/link";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountsIn } from "#lib/domain/ledger/accounts.ts";
import { overdueAccounts, receivedWords } from "#lib/domain/ledger/sentence.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { AccountsTable } from "./accounts-table.tsx";
import { printAccountsAction } from "./actions.ts";
import { AgeingTable } from "./ageing-table.tsx";
import { EntriesTable } from "./entries-table.tsx";
import { InvoicePart, type MoneyQuery } from "./invoice-part.tsx";
import { MoneyForm } from "./money-form.tsx";
import { moneyRows } from "./rows.ts";
import { UnknownPart } from "./unknown-part.tsx";

export const metadata: Metadata = { title: "The money" };

export default async function MoneyPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<MoneyQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const query = await searchParams;
  const work = may("work-the-file");
  const rows = moneyRows(file, report.today);
  const part = { lineId, file, report, work } as const;
  return (
    <>
      <PageHead asked="Who has paid what?" answer={answerWords(file, report.today)}>
        <p className="cluster">
          <Link href={`/lines/${lineId}/cost`}>Back to what it costs</Link>
          <a href={`/lines/${lineId}/cost/money/csv`} className="screen-only">
            The book as CSV, for the bookkeeper
          </a>
        </p>
      </PageHead>
      <HoldBoxes lineId={lineId} holds={report.holds} stops={["final-split", "demand"]} />
      <Section
        title="The accounts"
        note="One account for each party billed at a property. Open one for its statement."
        actions={
          work && file.ledger.length > 0 ? (
            <JobButton
              start={printAccountsAction.bind(null, lineId, accountPlaces(file))}
              working="Making the statements"
              paper={`/lines/${lineId}/notices/paper`}
            >
              All statements as PDF
            </JobButton>
          ) : undefined
        }
      >
        <AccountsTable lineId={lineId} file={file} rows={rows} today={report.today} />
      </Section>
      <AgeingTable lineId={lineId} file={file} rows={rows} />
      <InvoicePart {...part} query={query} />
      {work ? (
        <div className="screen-only">
          <Section
            title="Take money down"
            id="enter"
            note="What is entered is never edited: a mistake is taken back in the book below, and entered again."
          >
            <MoneyForm lineId={lineId} file={file} today={report.today} query={query} />
          </Section>
        </div>
      ) : null}
      <UnknownPart {...part} />
      <Section
        title="The book"
        id="book"
        note="Every entry in its order, the latest first. Nothing is ever changed or removed; an entry is taken back by another one."
      >
        <EntriesTable {...part} />
      </Section>
    </>
  );
}

function accountPlaces(file: LineFile): string[] {
  return [...new Set(accountsIn(file).map(({ propertyId }) => propertyId))];
}

function answerWords(file: LineFile, today: string): string {
  if (file.ledger.length === 0) return "Nothing is invoiced and nothing has come in yet.";
  const late = overdueAccounts(file, today).reduce((sum, { overdue }) => sum + overdue, 0);
  const received = receivedWords(file) || "nothing has come in yet";
  const words = late === 0 ? "nothing is past its day" : `${formatCents(late)} is past its day`;
  return `${received.charAt(0).toUpperCase()}${received.slice(1)}; ${words}.`;
}
