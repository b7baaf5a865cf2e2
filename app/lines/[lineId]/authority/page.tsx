import type { Metadata } from "next";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { QuestionHead } from "../question-head.tsx";
import { Built } from "./built.tsx";
import { Checklist } from "./checklist.tsx";
import { Fees } from "./fees.tsx";
import { InspectionGrid, LocateGrid } from "./grids.tsx";
import { PacketSection } from "./packet-section.tsx";
import { Permits } from "./permits.tsx";

export const metadata: Metadata = { title: "What does the authority need?" };

export default async function AuthorityPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  const work = may("work-the-file");
  const packet = office === null ? null : composePacket({ file, report, office });
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <HoldBoxes lineId={lineId} holds={report.holds} stops={["submission"]} />
      <Section
        title="What it asks for"
        note={
          file.authority === null
            ? undefined
            : `${file.authority.name}, ${file.authority.office}. What is missing comes first.`
        }
      >
        {file.authority === null || packet === null ? (
          <Empty title="No authority is chosen for this line.">
            <p>
              Choose it with its rule under{" "}
              <a href={`/lines/${lineId}/responsibility`}>Who is responsible for what?</a> Its
              requirements come from there.
            </p>
          </Empty>
        ) : (
          <Checklist lineId={lineId} file={file} checks={packet.checks} work={work} />
        )}
      </Section>
      {packet === null ? null : (
        <PacketSection lineId={lineId} packet={packet} today={report.today} work={work} />
      )}
      <Section
        title="Permits"
        note="Each with the steps it has taken. An expiry printed on the permit outranks the day that is computed."
      >
        <Permits lineId={lineId} file={file} today={report.today} work={work} />
      </Section>
      <Section
        title="Locate tickets"
        note="From the one-call center, one ticket for each contractor. Private side sewers are usually not marked: locate them yourselves."
      >
        <LocateGrid lineId={lineId} file={file} />
      </Section>
      <Section title="Inspections" note="No backfill before the inspector has passed it.">
        <InspectionGrid lineId={lineId} file={file} />
      </Section>
      <Section
        title="What was built"
        id="built"
        note="On a named person’s word, or by an as-built. The final, the close-out letter and closing the file ask for it."
      >
        <Built
          lineId={lineId}
          file={file}
          today={report.today}
          may={may("record-the-field") && file.line.closedOn === null}
        />
      </Section>
      {file.authority === null ? null : (
        <Section title="Fees" note="As the authority publishes them. Check before you pay.">
          <Fees file={file} report={report} authority={file.authority} />
        </Section>
      )}
    </>
  );
}
