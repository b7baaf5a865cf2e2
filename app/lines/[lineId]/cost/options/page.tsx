import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { mustChooseOption } from "#lib/domain/sharing/scope-in-force.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { QuestionHead } from "../../question-head.tsx";
import { Changes } from "../changes.tsx";
import { Options } from "../options.tsx";
import { type CostQuery, optionChoice, particularsOf } from "../particulars.ts";

export const metadata: Metadata = { title: "Options and changes" };

/** Repair options that are compared, and changes after the work was priced. */
export default async function OptionsPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<CostQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const query = await searchParams;
  const choice = optionChoice(file, particularsOf(file, report, query), query);
  const part = { lineId, file, report, choice, work: may("work-the-file") } as const;
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      <HoldBoxes
        lineId={lineId}
        holds={report.holds}
        stops={["clearing", "jetting", "capping", "lining", "bursting"]}
      />
      {file.scope.length === 0 ? (
        <Empty title="No work items yet.">
          <p>
            <Link href={`/lines/${lineId}/cost`}>Price the work</Link> first; then compare ways to
            repair it here.
          </p>
        </Empty>
      ) : (
        <>
          <Section
            title="Repair options"
            id="options"
            note="Such as spot repair, lining, or separate lines: what each costs and who pays. Select one and say why."
          >
            <Options {...part} />
          </Section>
          {mustChooseOption(file) ? null : (
            <Section
              title="Change orders"
              id="changes"
              note="Changes after pricing, each as a numbered change order. Only approved ones count."
            >
              <Changes {...part} />
            </Section>
          )}
        </>
      )}
    </>
  );
}
