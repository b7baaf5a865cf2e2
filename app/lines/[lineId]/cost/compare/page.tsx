import type { Metadata } from "next";
import { ButtonLink } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import { lineFileOf } from "../../file.ts";
import { QuestionHead } from "../../question-head.tsx";
import { costAddress } from "../address.ts";
import { WeightsFromFixtures } from "../fixture-weights.tsx";
import { NotReady, whyNotReady } from "../not-ready.tsx";
import { OvershootBoxes } from "../overshoot-boxes.tsx";
import { type CostQuery, outcomesFor, particularsOf } from "../particulars.ts";
import { ParticularsForm } from "../particulars-form.tsx";
import { RulesInWords } from "../rules-in-words.tsx";
import { SideBySide } from "../side-by-side.tsx";

export const metadata: Metadata = { title: "Compare the rules" };

/** Every rule side by side on the same pipe and prices; how an amount is calculated is fetched when opened. */
export default async function ComparePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<CostQuery>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const missing = whyNotReady(file);
  if (missing !== null)
    return (
      <>
        <QuestionHead lineId={lineId} question="cost" />
        <NotReady lineId={lineId} file={file} missing={missing} />
      </>
    );
  const particulars = particularsOf(file, report, await searchParams);
  const outcomes = outcomesFor(file, report, particulars);
  const work = may("work-the-file");
  const part = { lineId, file, report, particulars, outcomes } as const;
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      <OvershootBoxes lineId={lineId} file={file} report={report} work={work} />
      <Section
        title="Rules side by side"
        id="rules"
        note="Same pipe, same prices, every rule. Click an amount to see how it is calculated. No rule is automatically right: the recorded agreement, the code, or the neighbors’ agreement decides."
        actions={
          work ? (
            <ButtonLink href={costAddress(lineId, "choose", particulars)} main>
              Choose a rule
            </ButtonLink>
          ) : undefined
        }
      >
        <ParticularsForm {...part} />
        <SideBySide {...part} />
      </Section>
      <Section
        title="How each rule works"
        folded="and the stand-alone test: would any group of neighbors pay more than repairing only the pipe they use?"
      >
        <RulesInWords {...part} />
      </Section>
      <WeightsFromFixtures lineId={lineId} file={file} report={report} work={work} />
    </>
  );
}
