import type { Metadata } from "next";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { accountsIn } from "#lib/domain/ledger/accounts.ts";
import { overdueAccounts, receivedWords } from "#lib/domain/ledger/sentence.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { counted } from "../../names.ts";
import { AccountsTable } from "./accounts-table.tsx";
import { printAccountsAction } from "./actions.ts";
import { AgingTable } from "./aging-table.tsx";
import { EntriesTable } from "./entries-table.tsx";
import { InvoicePart, type MoneyQuery } from "./invoice-part.tsx";
import { InvoiceReplies } from "./invoice-replies.tsx";
import { LatestInvoices } from "./latest-invoices.tsx";
import { MailPart } from "./mail-part.tsx";
import { MoneyForm } from "./money-form.tsx";
import { moneyRows } from "./rows.ts";
import { UnknownPart } from "./unknown-part.tsx";

export const metadata: Metadata = { title: "Billing and payments" };

export default async function LedgerPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<MoneyQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may, user } = await lineFileOf(lineId);
  const query = await searchParams;
  const work = may("work-the-file");
  const rows = moneyRows(file, report.today);
  const part = { lineId, file, report, work } as const;
  return (
    <>
      <PageHead asked="Billing and payments" answer={answerWords(file, report.today)} />
      <HoldBoxes lineId={lineId} holds={report.holds} stops={["final-split", "demand"]} />
      <Section
        title="Accounts"
        note="One account per party and property. Open it for a statement."
        actions={
          work && file.ledger.length > 0 ? (
            <JobButton
              start={printAccountsAction.bind(null, lineId, accountPlaces(file))}
              working="Creating the statements"
              paper={`/lines/${lineId}/notices/paper`}
            >
              All statements as PDF
            </JobButton>
          ) : undefined
        }
      >
        <AccountsTable lineId={lineId} file={file} rows={rows} today={report.today} work={work} />
      </Section>
      <InvoicePart {...part} query={query} />
      <LatestInvoices lineId={lineId} file={file} work={work} />
      <MailPart lineId={lineId} file={file} today={report.today} work={work} />
      <InvoiceReplies
        lineId={lineId}
        file={file}
        today={report.today}
        work={work}
        deal={mayDo(user.role, "work-the-file")}
      />
      {work ? (
        <div className="screen-only">
          <Section
            title="Record a payment, deposit, credit or refund"
            id="enter"
            folded="any amount, with a note or a scan"
            note="Entries can’t be edited: reverse a mistake in the ledger below and enter it again."
          >
            <MoneyForm lineId={lineId} file={file} today={report.today} query={query} />
          </Section>
        </div>
      ) : null}
      <AgingTable lineId={lineId} file={file} rows={rows} />
      <UnknownPart {...part} />
      <Section
        title="Ledger"
        id="book"
        foldedOnPhone={counted(file.ledger.length, "entry", "entries")}
        note="All entries, newest first. Entries are never changed or deleted; a mistake is reversed by a new entry."
        actions={
          file.ledger.length === 0 ? undefined : (
            <a href={`/lines/${lineId}/cost/money/csv`}>Export ledger (CSV)</a>
          )
        }
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
  if (file.ledger.length === 0) return "Nothing invoiced and no payments yet.";
  const late = overdueAccounts(file, today).reduce((sum, { overdue }) => sum + overdue, 0);
  const received = receivedWords(file) || "no payments yet";
  const words = late === 0 ? "nothing past due" : `${formatCents(late)} past due`;
  return `${received.charAt(0).toUpperCase()}${received.slice(1)}; ${words}.`;
}
