import type { Metadata } from "next";
import Link from "next/link";
import { Section } from "#app/_components/section.tsx";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { isStale } from "#lib/domain/split/stale.ts";
import { nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { QuestionHead } from "../../question-head.tsx";
import { costAddress } from "../address.ts";
import { ChooseForm } from "../choose-form.tsx";
import { NotReady, whyNotReady } from "../not-ready.tsx";
import { type CostQuery, particularsOf, ruleOf, rulesUnder } from "../particulars.ts";
import { EarlierVersions, Version } from "../versions.tsx";

export const metadata: Metadata = { title: "Choose a rule" };

/** The rule that is chosen: the press first while one is wanted, else its amounts. */
export default async function ChoosePage({
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
  const missing = whyNotReady(file);
  const version = latestSplit(file);
  const isSettled = version !== null && !isStale(report, version);
  const choose =
    missing === null && may("work-the-file") ? (
      <Section
        title={version === null ? "Choose a rule" : "Change the rule"}
        id="choose"
        note={
          <>
            This saves a new version with fixed amounts; earlier versions are kept.{" "}
            <Link href={costAddress(lineId, "compare", particulars)}>
              Compare what each rule asks of whom
            </Link>
          </>
        }
        {...(isSettled ? { folded: "saves a new version" } : {})}
      >
        <ChooseForm
          lineId={lineId}
          file={file}
          outcomes={rulesUnder(file, report, particulars).outcomes}
          particulars={particulars}
          asked={ruleOf(query)}
          hasUnknown={nobodysTieIns(report.tieIns).length > 0}
        />
      </Section>
    ) : null;
  return (
    <>
      <QuestionHead lineId={lineId} question="cost" />
      <HoldBoxes lineId={lineId} holds={report.holds} stops={["final-split", "demand"]} />
      {missing === null ? null : <NotReady lineId={lineId} file={file} missing={missing} />}
      {isSettled ? null : choose}
      {version === null ? null : (
        <Section title="Chosen rule" id="choice">
          <Version lineId={lineId} file={file} report={report} version={version} />
        </Section>
      )}
      {isSettled ? choose : null}
      <EarlierVersions lineId={lineId} file={file} />
      <p className="muted small">
        A proposal, not a decision. These amounts are a proposed allocation, not a legal
        determination; anyone may get their own advice. Claims about what caused a defect are noted
        on the item and do not change any amount.
      </p>
    </>
  );
}
