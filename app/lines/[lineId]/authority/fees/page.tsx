import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import { feeSentences, feesOf } from "#lib/domain/application/fees.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { PERMIT, type Permit } from "#lib/domain/facts/permit.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import { isNeverIssued, permitStateOf } from "#lib/domain/permit/steps.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { QuestionHead } from "../../question-head.tsx";
import { printFeesAction } from "../actions.ts";
import { feeColumns } from "./columns.ts";
import { FeeTable } from "./fee-table.tsx";

export const metadata: Metadata = { title: "Fees" };

/** Before a permit is on file, what the line’s own would cost. */
const EXPECTED: Permit = { ...usualRow(PERMIT), id: "" };

/** What each permit costs by the authority’s schedule, what was billed, paid and returned. */
export default async function FeesPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const connections = report.tieIns.filter(({ live }) => live).length;
  const running = file.permits.filter((permit) => !isNeverIssued(permitStateOf(file, permit)));
  const permits = running.length === 0 ? [EXPECTED] : running;
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      {file.authority === null ? (
        <Section title="Fees">
          <Empty title="No authority is selected for this line.">
            <p>
              Select it with its rule under{" "}
              <Link href={`/lines/${lineId}/responsibility`}>Who is responsible for what?</Link>
            </p>
          </Empty>
        </Section>
      ) : (
        permits.map((permit, at) => (
          <Section
            key={permit.id}
            title={permit.id === "" ? "Estimate for the side sewer permit" : permitName(permit)}
            {...(at === 0
              ? {
                  note: "From the authority’s fee schedule, counted from this file. Verify before paying.",
                }
              : {})}
          >
            <PermitPart file={file} permit={permit} connections={connections} />
            {may("work-the-file") && file.permitFees.some((fee) => fee.permitId === permit.id) ? (
              <div className="screen-only">
                <JobButton
                  start={printFeesAction.bind(null, lineId, [permit.id])}
                  working="Making the fee sheet"
                  paper={`/lines/${lineId}/notices/paper`}
                >
                  Fees paid as PDF
                </JobButton>
              </div>
            ) : null}
          </Section>
        ))
      )}
      {file.permits.length === 0 ? null : (
        <div className={file.permitFees.length === 0 ? "screen-only" : undefined}>
          <Section
            title="Bills, payments and refunds"
            id="payments"
            note="With the authority alone; what neighbors pay is in the ledger."
          >
            <LineGrid
              lineId={lineId}
              table="permitFees"
              columns={feeColumns(file)}
              blank={{ permitId: file.permits[0]?.id ?? "", kind: "paid", feeId: null, on: null }}
              addWord="amount"
              label="Bills, payments and refunds"
              emptyWords="Nothing billed or paid yet."
            />
          </Section>
        </div>
      )}
    </>
  );
}

function PermitPart({
  file,
  permit,
  connections,
}: {
  readonly file: LineFile;
  readonly permit: Permit;
  readonly connections: number;
}) {
  if (file.authority === null) return null;
  const fees = feesOf(file, permit, connections);
  return (
    <div className="stack">
      {feeSentences(fees, permitStateOf(file, permit) === "final").map((words) => (
        <p key={words}>{words}</p>
      ))}
      <FeeTable fees={fees} authority={file.authority} />
    </div>
  );
}
