import type { Metadata } from "next";
import { ButtonLink } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { isDay } from "#lib/domain/time/days.ts";
import { lineFileOf } from "../file.ts";
import { QuestionHead } from "../question-head.tsx";
import { ClockWall } from "./clock-wall.tsx";
import { CloseOut } from "./close-out.tsx";
import { CrewSafety } from "./crew-safety.tsx";
import { DueList } from "./due-list.tsx";
import { EventGrid } from "./event-grid.tsx";
import { Reconnections } from "./reconnections-part.tsx";
import { StartBars } from "./start-bars.tsx";
import { StartPlan } from "./start-plan.tsx";

export const metadata: Metadata = { title: "What happens next?" };

export default async function NextPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ start?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, may } = await lineFileOf(lineId);
  const asked = (await searchParams).start;
  const wished = typeof asked === "string" && isDay(asked) ? asked : null;
  const start = earliestStart(file, report.today, report);
  return (
    <>
      <QuestionHead lineId={lineId} question="schedule" />
      <Section title="Due and blocked" note="Everything that waits for somebody, and for whom.">
        <DueList file={file} report={report} />
      </Section>
      <CloseOut file={file} today={report.today} may={may("work-the-file")} />
      <Section
        title="When can the work start?"
        id="start"
        note="Worked backwards from what must come first: the locate window, notices, the permit, consents, holds."
      >
        <StartBars start={start} today={report.today} />
        <StartPlan
          lineId={lineId}
          file={file}
          today={report.today}
          wished={wished ?? start.day}
          typed={wished !== null}
        />
      </Section>
      <Reconnections lineId={lineId} file={file} report={report} />
      <CrewSafety file={file} report={report} />
      <Section
        title="Clocks"
        id="clocks"
        note="In order of time. Each says how it was counted and where the rule is written; the authority’s own word outranks it."
        actions={
          <ButtonLink href={`/lines/${lineId}/calendar.ics`}>Take them into a calendar</ButtonLink>
        }
      >
        <ClockWall file={file} report={report} />
      </Section>
      <Section
        title="What happened that starts clocks"
        id="events"
        note="Only what no other page records: an order of the authority, a pause of drains, an entry into a dwelling, the day that work begins."
      >
        <EventGrid lineId={lineId} file={file} />
      </Section>
    </>
  );
}
