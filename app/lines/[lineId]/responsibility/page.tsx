import type { Metadata } from "next";
import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { QuestionHead } from "../question-head.tsx";
import { AgreementGrid } from "./agreement-grid.tsx";
import { AgreementWays } from "./agreement-steps.tsx";
import { CrossedLots } from "./crossed-lots.tsx";
import { ItemsTable } from "./items-table.tsx";
import { ReachTable } from "./reach-table.tsx";
import { RuleForm, RuleText } from "./rule.tsx";
import { Unclear } from "./unclear.tsx";

export const metadata: Metadata = { title: "Who is responsible for what?" };

export default async function AnswersPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  return (
    <>
      <QuestionHead lineId={lineId} question="responsibility" />
      <Unclear file={file} report={report} />
      <HoldBoxes
        lineId={lineId}
        holds={report.holds.filter((hold) => hold.cause === "easement-missing")}
        stops={["digging", "submission"]}
      />
      <Section
        title="The rule"
        note="What the authority’s code says about who holds and who mends which part. The office chooses which rule applies here, and answers for the choice."
      >
        <RuleText file={file} today={report.today} />
        {may("work-the-file") ? (
          <RuleForm
            lineId={lineId}
            authorities={listAuthorities(db())}
            authorityId={file.line.authorityId}
            ruleId={file.line.ruleId}
          />
        ) : null}
      </Section>
      <Section
        title="Recorded agreements"
        note="A recorded agreement on the shared pipe outranks every default rule on the stretch that it covers. Shares are parts: 1, 1 and 2 is the same as 25, 25 and 50."
      >
        <AgreementGrid lineId={lineId} file={file} />
        <AgreementWays
          lineId={lineId}
          file={file}
          today={report.today}
          work={may("work-the-file")}
        />
      </Section>
      <Section
        title="Reach by reach"
        note="From the main upstream. A reach ends where something changes: a tie-in, a boundary, the material."
        id="reaches"
        actions={<Link href={`/lines/${lineId}/camera/capacity`}>Slope and load</Link>}
      >
        <ReachTable file={file} report={report} />
      </Section>
      {scopeInForce(file).length === 0 ? null : (
        <Section
          title="The planned work"
          note="Whose each piece is to do, by its kind and by where it lies. What falls to the authority is still shared in the split until the authority takes it on."
          id="work"
        >
          <ItemsTable file={file} report={report} />
        </Section>
      )}
      {file.crossings.length === 0 ? null : (
        <Section
          title="Lots that the pipe crosses"
          note="An owner who is only crossed has no share in the amounts here, but is told and asked before the work, and the pipe needs a right to lie there."
          id="crossed"
        >
          <CrossedLots file={file} report={report} />
        </Section>
      )}
      <NoticeBox kind="caution" title="This is not legal advice">
        <p>
          It shows what the rule chosen here says about the facts entered here. Local code and
          counsel decide. Check the citation on the day that you rely on it.
        </p>
      </NoticeBox>
    </>
  );
}
