import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountsIn } from "#lib/domain/ledger/accounts.ts";
import { openAt } from "#lib/domain/ledger/owed.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { statementPaper } from "#lib/domain/paper/statement-paper.ts";
import { lineFileOf } from "../../../file.ts";
import { propertyName } from "../../../names.ts";
import { AccountSheet } from "../account-sheet.tsx";
import { printAccountsAction } from "../actions.ts";

export const metadata: Metadata = { title: "Statement of account" };

export default async function StatementPage({
  params,
}: {
  readonly params: Promise<{ lineId: string; propertyId: string }>;
}) {
  const { lineId, propertyId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  if (!file.properties.some(({ id }) => id === propertyId)) notFound();
  const accounts = accountsIn(file).filter((each) => each.propertyId === propertyId);
  const [first] = accounts;
  const work = may("work-the-file");
  return (
    <>
      <div className="screen-only">
        <PageHead asked={propertyName(file, propertyId)} answer={answerWords(file, propertyId)}>
          <p className="cluster">
            <Link href={`/lines/${lineId}/cost/money`}>Billing and payments</Link>
            {work && first !== undefined ? (
              <>
                <Link
                  href={`/lines/${lineId}/cost/money?account=${encodeURIComponent(`${first.partyId} ${propertyId}`)}#enter`}
                >
                  Record a payment
                </Link>
                {(openAt(file, propertyId) ?? 0) > 0 ? (
                  <Link href={`/lines/${lineId}/notices/write?kind=share-demand`}>
                    Write a payment demand
                  </Link>
                ) : null}
                <JobButton
                  start={printAccountsAction.bind(null, lineId, [propertyId])}
                  working="Creating the statement"
                  paper={`/lines/${lineId}/notices/paper`}
                >
                  Statement as PDF
                </JobButton>
              </>
            ) : null}
          </p>
        </PageHead>
      </div>
      {accounts.length === 0 ? (
        <Empty title="No entries for this property yet.">
          <p>
            <Link href={`/lines/${lineId}/cost/money#invoice`}>Invoice its share</Link> or record a
            deposit.
          </p>
        </Empty>
      ) : null}
      {office === null ? (
        <NoticeBox title="The office is not set up">
          <p>Enter its name and address under Office; they print on the statement.</p>
        </NoticeBox>
      ) : (
        <div className="stack-wide">
          {accounts.map((account) => (
            <AccountSheet
              key={account.partyId}
              paper={statementPaper({ file, office, today: report.today }, account)}
            />
          ))}
        </div>
      )}
    </>
  );
}

function answerWords(file: LineFile, propertyId: string): string {
  const open = openAt(file, propertyId);
  if (open === null) return "Not invoiced yet.";
  if (open === 0) return "Balance: $0.00.";
  return open > 0 ? `Balance due: ${formatCents(open)}.` : `Credit balance: ${formatCents(-open)}.`;
}
