import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { LetterSheet } from "#app/_components/letter-sheet.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { statementOf } from "#lib/domain/paper/statement.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { splitStanding } from "#lib/domain/split/stale.ts";
import { lineFileOf } from "../../../file.ts";
import { propertyName } from "../../../names.ts";
import { printStatementsAction } from "../../statement-actions.ts";

export const metadata: Metadata = { title: "Share statement" };

export default async function StatementPage({
  params,
}: {
  readonly params: Promise<{ lineId: string; propertyId: string }>;
}) {
  const { lineId, propertyId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  if (!file.properties.some(({ id }) => id === propertyId)) notFound();
  const split = latestSplit(file);
  const standing = split === null ? null : splitStanding(file, report, split);
  const statement = office === null ? null : statementOf({ file, report, office, propertyId });
  return (
    <>
      <div className="screen-only">
        <PageHead asked={propertyName(file, propertyId)} answer={answerWords(file, propertyId)}>
          <p className="cluster">
            <Link href={`/lines/${lineId}/cost/statements`}>All statements</Link>
            {may("work-the-file") && statement !== null ? (
              <JobButton
                start={printStatementsAction.bind(null, lineId, [propertyId])}
                working="Creating the statement"
                paper={`/lines/${lineId}/notices/paper`}
              >
                Statement as PDF
              </JobButton>
            ) : null}
          </p>
        </PageHead>
        {standing?.stale ? (
          <NoticeBox kind="caution" title="These amounts are out of date">
            <p>{standing.sentence}</p>
            <p>
              <Link href={`/lines/${lineId}/cost/choose`}>Update the split</Link> before this
              statement goes out.
            </p>
          </NoticeBox>
        ) : null}
      </div>
      {split === null ? (
        <Empty title="No rule is chosen yet.">
          <p>
            A statement needs the amounts.{" "}
            <Link href={`/lines/${lineId}/cost/choose`}>Choose a rule</Link> first.
          </p>
        </Empty>
      ) : null}
      {office === null ? (
        <NoticeBox title="The office is not set up">
          <p>Enter its name and address under Office; they print on the statement.</p>
        </NoticeBox>
      ) : null}
      {statement === null ? null : <LetterSheet letter={statement} />}
    </>
  );
}

function answerWords(file: LineFile, propertyId: string): string {
  const split = latestSplit(file);
  if (split === null) return "No share yet.";
  const share = split.shares.find((each) => each.propertyId === propertyId);
  if (share === undefined) return `No share under version ${split.number} of the split.`;
  return `${formatCents(share.amount)} under version ${split.number} of the split.`;
}
