import type { Metadata } from "next";
import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { QuestionHead } from "../question-head.tsx";
import { Cautions } from "./cautions.tsx";
import { OvershootBoxes } from "./overshoot-boxes.tsx";
import { ScopeGrid } from "./scope-grid.tsx";
import { ScopeSums } from "./scope-sums.tsx";

/** Of a longer scope the table itself is printed: its sums would double the page. */
const SUMS_FOR_PRINT = 60;

export const metadata: Metadata = { title: "What does it cost, and who pays?" };

/** The scope of work, priced: everything else under the question rests on it. */
export default async function WorkPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const isPriced = file.scope.length > 0;
  const isOptional = file.options.length === 0 && file.changeOrders.length === 0;
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      <HoldBoxes
        lineId={lineId}
        holds={report.holds}
        stops={["final-split", "demand", "clearing", "jetting", "capping", "lining", "bursting"]}
      />
      <OvershootBoxes lineId={lineId} file={file} report={report} work={may("work-the-file")} />
      <Section
        title="Scope of work"
        id="work"
        note="Give every item a location: a section, a point or one branch. Whole-job items, such as the permit, are general and are spread over the rest."
        actions={
          isPriced ? (
            <ButtonLink href={`/lines/${lineId}/cost/compare`}>Compare the rules</ButtonLink>
          ) : undefined
        }
      >
        {file.scope.length > SUMS_FOR_PRINT ? (
          <ScopeGrid lineId={lineId} file={file} report={report} />
        ) : (
          <>
            <div className="screen-only">
              <ScopeGrid lineId={lineId} file={file} report={report} />
            </div>
            <div className="print-only">
              <ScopeSums file={file} />
            </div>
          </>
        )}
        {isPriced && isOptional ? (
          <p className="muted screen-only">
            More than one way to repair it, or a change after pricing?{" "}
            <Link href={`/lines/${lineId}/cost/options`}>Add repair options or a change order</Link>
          </p>
        ) : null}
      </Section>
      <Cautions file={file} report={report} />
    </>
  );
}
