import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { isOpenPaper, type PaperDue, papersOn } from "#lib/domain/statutory/papers.ts";
import { formatFullDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { counted } from "../../names.ts";
import { draftBatchAction } from "../batch/actions.ts";
import { BLANK_CONTRACT, contractColumns } from "./columns.ts";
import { PaperGroup } from "./paper-group.tsx";

export const metadata: Metadata = { title: "Statutory papers" };

/** What state law asks of the contractor on this line: which papers, to whom, by when, given or not. */
export default async function StatutoryPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const due = papersOn(file);
  const work = may("work-the-file") && file.line.closedOn === null;
  const papers = new Map<string, PaperDue[]>();
  for (const one of due) papers.set(one.paper.id, [...(papers.get(one.paper.id) ?? []), one]);
  const toWrite = due.filter(({ state }) => state === "open").length;
  return (
    <>
      <PageHead asked="Statutory papers" answer={answerOf(due, report.today)}>
        <p className="screen-only">
          <Link href={`/lines/${lineId}/notices`}>Back to the letters</Link>
        </p>
      </PageHead>
      <Section
        title="Who gets what"
        id="papers"
        note="Worked out from the authority’s rows of state law. This is a reminder, not legal advice; a lawyer’s word controls."
      >
        {due.length === 0 ? (
          <NoPapers file={file} />
        ) : (
          <div className="stack">
            {toWrite > 0 && work ? (
              <ActionForm action={draftBatchAction.bind(null, lineId)} label="Draft the papers">
                <input type="hidden" name="kind" value="statutory-notice" />
                <input type="hidden" name="replyBy" value="" />
                <div>
                  <SubmitButton pendingWord="Drafting …">
                    Draft {counted(toWrite, "paper")}
                  </SubmitButton>
                </div>
              </ActionForm>
            ) : null}
            {[...papers.values()].map((group) => (
              <PaperGroup
                key={group[0]?.paper.id}
                lineId={lineId}
                file={file}
                group={group}
                today={report.today}
                may={work}
              />
            ))}
          </div>
        )}
      </Section>
      <Section
        title="Contracts"
        id="contracts"
        note="Who ordered the work and when. Where none is entered, the day of their consent to pay counts; a contract without a day counts as due now."
      >
        <LineGrid
          lineId={lineId}
          table="contracts"
          columns={contractColumns(file)}
          blank={BLANK_CONTRACT}
          addWord="contract"
          emptyWords="No contracts yet. Example: 14 Fennel Row, Ottilie Brandvold, 11/20/2026, away from our office, $4,800.00."
          label="Contracts"
        />
      </Section>
    </>
  );
}

function answerOf(due: readonly PaperDue[], today: string): string {
  const open = due.filter(isOpenPaper);
  if (due.length === 0) return "None is asked for";
  if (open.length === 0) return "All given or decided";
  const late = open.filter(({ by }) => by !== null && by < today).length;
  const [first] = open.flatMap(({ by }) => (by !== null && by >= today ? [by] : [])).toSorted();
  return [
    `${open.length} not given yet`,
    late === 0 ? "" : `${late} overdue`,
    first === undefined ? "" : `next by ${formatFullDay(first)}`,
  ]
    .filter((part) => part !== "")
    .join(", ");
}

function NoPapers({ file }: { readonly file: LineFile }) {
  if (file.authority === null)
    return <Empty title="Select the authority first: its page has the rows of state law." />;
  const { id, statutoryPapers } = file.authority;
  if (statutoryPapers.length === 0)
    return (
      <Empty title="No statutory papers are entered.">
        <p>
          <Link href={`/office/authorities/${id}#papers`}>
            An admin enters what your state asks for
          </Link>
        </p>
      </Empty>
    );
  return (
    <Empty title="No one has ordered work yet. Enter the contracts below, or record consents to pay." />
  );
}
