import type { Metadata } from "next";
import { ButtonLink } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { isDay } from "#lib/domain/time/days.ts";
import { lineFileOf } from "../file.ts";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { ClockWall } from "./clock-wall.tsx";
import { CloseOut } from "./close-out.tsx";
import { CrewSafety } from "./crew-safety.tsx";
import { DueList } from "./due-list.tsx";
import { EventGrid } from "./event-grid.tsx";
import { Reconnections } from "./reconnections-part.tsx";
import styles from "./schedule.module.css";
import { StartBars } from "./start-bars.tsx";
import { StartPlan } from "./start-plan.tsx";

export const metadata: Metadata = { title: "What happens next?" };

export default async function SchedulePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ start?: string | string[]; safety?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, user } = await lineFileOf(lineId);
  const asked = (await searchParams).start;
  const wished = typeof asked === "string" && isDay(asked) ? asked : null;
  const start = earliestStart(file, report.today, report);
  const plan = (
    <StartPlan
      lineId={lineId}
      file={file}
      today={report.today}
      wished={wished ?? start.day}
      typed={wished !== null}
    />
  );
  return (
    <>
      <QuestionHead lineId={lineId} question="schedule" />
      <CloseOut file={file} today={report.today} may={mayDo(user.role, "work-the-file")} />
      <Section title="Due and blocked" note="Everything waiting on someone, and who.">
        <DueList file={file} report={report} />
      </Section>
      <Section
        title="Deadlines"
        id="clocks"
        note="In date order. Each says how it was counted and where the rule is written; the authority’s word controls."
        actions={
          <ButtonLink href={`/lines/${lineId}/calendar.ics`}>Add to your calendar</ButtonLink>
        }
      >
        <ClockWall file={file} report={report} />
      </Section>
      {file.line.closedOn === null ? (
        <Section
          title="When can the work start?"
          id="start"
          foldedOnPhone="what must come first"
          note="Worked back from what must come first: the locate window, notices, the permit, consents, holds."
        >
          <StartBars start={start} today={report.today} />
          {wished === null ? (
            <details className={styles["plan"]}>
              <summary>Work back from a start date</summary>
              {plan}
            </details>
          ) : (
            plan
          )}
        </Section>
      ) : null}
      <Reconnections lineId={lineId} file={file} report={report} />
      <CrewSafety file={file} report={report} all={(await searchParams).safety === "all"} />
      <Section
        title="Events that start deadlines"
        id="events"
        folded={counted(file.events.length, "event")}
        note="Only events not recorded elsewhere: an order from the authority, a drain shutdown, entry into a home, the work start date."
      >
        <EventGrid lineId={lineId} file={file} />
      </Section>
    </>
  );
}
