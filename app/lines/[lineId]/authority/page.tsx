import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { lineFileOf } from "../file.ts";
import { HoldBoxes } from "../holds.tsx";
import { QuestionHead } from "../question-head.tsx";
import { Checklist } from "./checklist.tsx";
import { packetOf } from "./packet-of.ts";
import { PacketSection } from "./packet-section.tsx";

export const metadata: Metadata = { title: "What does the authority need?" };

/** What the application takes: the checklist, and the packet that meets it. */
export default async function PacketPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office, may } = await lineFileOf(lineId);
  const work = may("work-the-file");
  const packet = office === null ? null : packetOf({ file, report, office });
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" toldBelow="reconcile#holds" />
      <HoldBoxes lineId={lineId} holds={report.holds} stops={["submission"]} />
      {packet === null ? null : (
        <PacketSection lineId={lineId} packet={packet} today={report.today} work={work} />
      )}
      {file.authority === null || packet === null ? (
        <Section title="Requirements">
          <Empty title="No authority is selected for this line.">
            <p>
              Select it with its rule under{" "}
              <Link href={`/lines/${lineId}/responsibility`}>Who is responsible for what?</Link>{" "}
              Requirements come from the authority.
            </p>
          </Empty>
        </Section>
      ) : (
        <Checklist lineId={lineId} file={file} checks={packet.checks} work={work} />
      )}
    </>
  );
}
