import type { Metadata } from "next";
import Link from "next/link";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listAuthorities } from "#db/queries/authority.ts";
import { sectionsOf } from "#lib/domain/responsibility/sections.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { AgreementGrid } from "./agreement-grid.tsx";
import { AgreementWays } from "./agreement-steps.tsx";
import { CrossedLots } from "./crossed-lots.tsx";
import { ItemsTable } from "./items-table.tsx";
import { RuleForm, RuleText } from "./rule.tsx";
import { SectionTable } from "./section-table.tsx";
import { Unclear } from "./unclear.tsx";

export const metadata: Metadata = { title: "Who is responsible for what?" };

export default async function ResponsibilityPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ page?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const { sections, common, citation } = sectionsOf(report.reaches);
  // Where all of it is unclear, the box at the head says why.
  const said = report.reaches.every(({ holder }) => holder === "unclear") ? "" : common;
  const work = scopeInForce(file);
  return (
    <>
      <QuestionHead lineId={lineId} question="responsibility" />
      <Unclear file={file} report={report} />
      <HoldBoxes
        lineId={lineId}
        holds={report.holds.filter((hold) => hold.cause === "easement-missing")}
        stops={["digging", "submission"]}
      />
      <Section title="The rule" id="rule">
        <div className="pair">
          <RuleText file={file} today={report.today} />
          {may("work-the-file") ? (
            <RuleForm
              lineId={lineId}
              authorities={listAuthorities(db())}
              authorityId={file.line.authorityId}
              ruleId={file.line.ruleId}
              admin={may("run-the-office")}
            />
          ) : null}
        </div>
      </Section>
      <Section
        title="By section"
        note={["From the main upstream.", said, citation === "" ? "" : `(${citation})`]
          .filter((part) => part !== "")
          .join(" ")}
        id="reaches"
        foldedOnPhone={counted(sections.length, "section")}
        actions={<Link href={`/lines/${lineId}/camera/capacity`}>Slope and load</Link>}
      >
        <SectionTable file={file} sections={sections} oneSource={citation !== ""} />
      </Section>
      {file.crossings.length === 0 ? null : (
        <Section
          title="Lots the pipe crosses"
          note="An owner whose lot is only crossed pays no share, but is notified and asked before work, and the pipe needs an easement to be there."
          id="crossed"
        >
          <CrossedLots file={file} report={report} />
        </Section>
      )}
      {work.length === 0 ? null : (
        <Section
          title="Planned work"
          note="Who does each work item, by type and location. Items that are the authority’s are still shared in the split until the authority accepts them."
          id="work"
          folded={counted(work.length, "item")}
        >
          <ItemsTable file={file} report={report} asked={(await searchParams).page} />
        </Section>
      )}
      <Section
        title="Recorded agreements"
        id="agreements"
        note="A recorded agreement on the shared pipe outranks every default rule on the section it covers. Shares are parts: 1, 1 and 2 means the same as 25, 25 and 50."
        {...(file.agreements.length === 0 ? { folded: "none on file" } : {})}
      >
        <AgreementGrid lineId={lineId} file={file} />
        <AgreementWays
          lineId={lineId}
          file={file}
          today={report.today}
          work={may("work-the-file")}
        />
      </Section>
      <NoticeBox kind="caution" title="This is not legal advice">
        <p>
          It shows what the selected rule says about the facts entered here. Local code and your
          attorney decide. Check the citation before relying on it.
        </p>
      </NoticeBox>
    </>
  );
}
