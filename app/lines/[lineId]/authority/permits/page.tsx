import type { Metadata } from "next";
import { Section } from "#app/_components/section.tsx";
import { unbuiltWork } from "#lib/domain/closing/as-built.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { QuestionHead } from "../../question-head.tsx";
import { Built } from "../built.tsx";
import { InspectionGrid, LocateGrid, UtilityGrid } from "../grids.tsx";
import { Permits } from "../permits.tsx";

export const metadata: Metadata = { title: "Permits and inspections" };

/** From the application to the final: permits step by step, locate tickets, inspections, what was built. */
export default async function PermitsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const unbuilt = unbuiltWork(file).length;
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <Section
        title="Permits"
        id="permits"
        note="With each permit’s history. A printed expiration date overrides the calculated one."
      >
        <Permits lineId={lineId} file={file} today={report.today} work={may("work-the-file")} />
      </Section>
      <Section
        title="Locate tickets"
        id="locates"
        note="From the one-call center, one ticket per contractor. Utilities usually do not mark private sewers; locate those yourself."
      >
        <LocateGrid lineId={lineId} file={file} />
        <UtilityGrid lineId={lineId} file={file} />
      </Section>
      <Section
        title="Inspections"
        id="inspections"
        note="No backfill before the inspector has passed it."
      >
        <InspectionGrid lineId={lineId} file={file} />
      </Section>
      <Section
        title="What was built"
        id="built"
        folded={
          unbuilt === 0 ? "everything recorded" : `${counted(unbuilt, "item")} not recorded yet`
        }
        note="On a named person’s word, or from an as-built. The final, the closeout letter and closing the file ask for it."
      >
        <Built
          lineId={lineId}
          file={file}
          today={report.today}
          may={may("record-the-field") && file.line.closedOn === null}
        />
      </Section>
    </>
  );
}
