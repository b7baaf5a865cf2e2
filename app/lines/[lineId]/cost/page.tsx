import type { Metadata } from "next";
import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { mustChooseOption } from "#lib/domain/sharing/scope-in-force.ts";
import { nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { QuestionHead } from "../question-head.tsx";
import { Cautions } from "./cautions.tsx";
import { Changes } from "./changes.tsx";
import { ChooseForm } from "./choose-form.tsx";
import { WeightsFromFixtures } from "./fixture-weights.tsx";
import { Options } from "./options.tsx";
import { OvershootBoxes } from "./overshoot-boxes.tsx";
import { type CostQuery, optionChoice, outcomesFor, particularsOf } from "./particulars.ts";
import { ParticularsForm } from "./particulars-form.tsx";
import { RulesInWords } from "./rules-in-words.tsx";
import { ScopeGrid } from "./scope-grid.tsx";
import { ScopeSums } from "./scope-sums.tsx";
import { SideBySide } from "./side-by-side.tsx";
import { Statements } from "./statements.tsx";
import { Versions } from "./versions.tsx";

export const metadata: Metadata = { title: "What does it cost, and who pays?" };

export default async function CostPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<CostQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const query = await searchParams;
  const particulars = particularsOf(file, report, query);
  const choice = optionChoice(file, particulars, query);
  const undecided = mustChooseOption(file);
  const outcomes = outcomesFor(file, report, particulars);
  const work = may("work-the-file");
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      <HoldBoxes
        lineId={lineId}
        holds={report.holds}
        stops={["final-split", "demand", "clearing", "jetting", "capping", "lining", "bursting"]}
      />
      <Section
        title="The work, priced"
        note="Place every item where it is done: on a stretch, at a point, on one branch. What belongs to the whole job, such as the permit, is general and is spread over the rest."
      >
        <div className="screen-only">
          <ScopeGrid lineId={lineId} file={file} report={report} />
        </div>
        <div className="print-only">
          <ScopeSums file={file} />
        </div>
        <Cautions file={file} report={report} />
      </Section>
      {file.scope.length === 0 ? null : (
        <>
          <div className={file.options.length < 2 ? "screen-only" : undefined}>
            <Section
              title="Options"
              id="options"
              note="Several ways of doing the same work, such as a spot repair, lining, or a line of their own for those who leave: what each costs, and whom. One is chosen, with the reason."
            >
              <Options lineId={lineId} file={file} report={report} choice={choice} work={work} />
            </Section>
          </div>
          {undecided ? null : (
            <div className={file.changeOrders.length === 0 ? "screen-only" : undefined}>
              <Section
                title="Changes"
                id="changes"
                note="What changes after the work was priced, each as a numbered change order. Only agreed ones count."
              >
                <Changes lineId={lineId} file={file} report={report} choice={choice} work={work} />
              </Section>
            </div>
          )}
        </>
      )}
      {file.scope.length === 0 || undecided ? null : (
        <>
          <Section
            title="The rules side by side"
            id="rules"
            note="The same pipe and the same prices under every rule. Open an amount to see the sum that made it. No rule is right by itself: the recorded agreement, the code, or the neighbours’ own word decides."
          >
            <ParticularsForm
              lineId={lineId}
              file={file}
              report={report}
              particulars={particulars}
            />
            <OvershootBoxes lineId={lineId} file={file} report={report} work={work} />
            <SideBySide file={file} report={report} outcomes={outcomes} />
            <WeightsFromFixtures lineId={lineId} file={file} report={report} work={work} />
          </Section>
          <Section
            title="What each rule does"
            note="And the stand-alone test: whether any group of neighbours would pay more than mending only the pipe that they use would cost."
          >
            <RulesInWords file={file} outcomes={outcomes.carried} />
          </Section>
        </>
      )}
      <Section
        title="The choice"
        id="choice"
        note="Choosing makes a new version with its amounts frozen. Earlier versions stay as they were."
        actions={<Link href={`/lines/${lineId}/cost/money`}>The money: invoices and payments</Link>}
      >
        <Versions file={file} report={report} />
        {undecided ? (
          <p>
            {file.options.length} ways of doing the work are priced and none is chosen. Choose one
            under <a href="#options">Options</a>; the rules are then set side by side for it.
          </p>
        ) : null}
        {work && file.scope.length > 0 && !undecided ? (
          <ChooseForm
            lineId={lineId}
            outcomes={outcomes.carried}
            particulars={particulars}
            file={file}
            hasUnknown={nobodysTieIns(report.tieIns).length > 0}
          />
        ) : null}
      </Section>
      <Statements lineId={lineId} file={file} work={work} />
      <NoticeBox kind="caution" title="A proposal, not a judgment">
        <p>
          These amounts are a proposed allocation. They are not a legal determination, and everybody
          may get advice of their own. What somebody says caused a fault is kept with the item and
          changes no amount.
        </p>
      </NoticeBox>
    </>
  );
}
