import type { Metadata } from "next";
import Link from "next/link";
import { Fold } from "#app/_components/fold.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { PrintButton } from "#app/_components/print-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Meeting } from "#lib/domain/facts/meeting.ts";
import { nextMeeting } from "#lib/domain/paper/next-meeting.ts";
import type { Language } from "#lib/domain/say/language.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDay, formatFullDay } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { counted } from "../../names.ts";
import { MEETING_COLUMNS } from "./columns.ts";
import styles from "./meeting.module.css";
import { MeetingSheet } from "./sheet.tsx";
import { MeetingTakeover } from "./takeover.tsx";

export const metadata: Metadata = { title: "Meetings" };

/** Meetings of the neighbors, and the sheet that lies on the table. */
export default async function MeetingPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ meeting?: string | string[]; in?: string | string[] }>;
}) {
  const { lineId } = await params;
  const asked = await searchParams;
  const { file, report, office, may } = await lineFileOf(lineId);
  const { today } = report;
  const meeting =
    file.meetings.find(({ id }) => id === asked.meeting) ?? nextMeeting(file.meetings, today);
  const language = asked.in === "es" ? "es" : "en";
  const part = { lineId, file, report };
  return (
    <div className={`one-page ${styles["page"]}`}>
      <div className="screen-only">
        <PageHead
          asked="What will neighbors ask at the table?"
          answer={
            meeting === null
              ? "No meeting is planned"
              : `${meeting.on < today ? "Met" : "Meeting"} ${formatDay(meeting.on, today)}${meeting.at === "" ? "" : `, ${formatTime(meeting.at)}`}`
          }
        />
        <Section
          title="Meetings"
          id="meetings"
          folded={counted(file.meetings.length, "meeting")}
          opened={file.meetings.length === 0}
          note="Day, hours and place; then print the sheet for the table."
        >
          <LineGrid
            lineId={lineId}
            table="meetings"
            columns={MEETING_COLUMNS}
            blank={{ on: null, at: "", until: "", place: "", note: "" }}
            addWord="meeting"
            label="Meetings"
            emptyWords="No meeting yet."
          />
        </Section>
        {file.meetings.length < 2 ? null : (
          <ul className="cluster">
            {file.meetings.map(({ id, on }) => (
              <li key={id}>
                <Link href={`/lines/${lineId}/notices/meeting?meeting=${encodeURIComponent(id)}`}>
                  {formatFullDay(on)}
                </Link>
              </li>
            ))}
          </ul>
        )}
      </div>
      {meeting === null ? (
        <p className="print-only">No meeting is planned.</p>
      ) : (
        <>
          <SheetLinks {...{ lineId, meeting, language, today }} />
          {meeting.on > today ? null : (
            <MeetingTakeover {...part} meeting={meeting} work={may("work-the-file")} />
          )}
          <Fold onPhone bare opened={meeting.on >= today} summary="The sheet for the table">
            <MeetingSheet {...part} meeting={meeting} office={office} language={language} />
          </Fold>
        </>
      )}
    </div>
  );
}

interface LinksProps {
  readonly lineId: string;
  readonly meeting: Meeting;
  readonly language: Language;
  readonly today: Day;
}

/** What is done about a meeting: print its sheet, invite to it, and each household's own figure. */
function SheetLinks({ lineId, meeting, language, today }: LinksProps) {
  const notices = `/lines/${lineId}/notices`;
  const other = language === "en" ? "es" : "en";
  return (
    <div className="cluster screen-only">
      <PrintButton />
      {meeting.on < today ? null : (
        <Link href={`${notices}/write?kind=meeting`}>Letters that invite</Link>
      )}
      <Link href={`${notices}/meeting?meeting=${encodeURIComponent(meeting.id)}&in=${other}`}>
        {language === "en" ? "Sheet in Spanish" : "Sheet in English"}
      </Link>
      <Link href={`/lines/${lineId}/cost/statements`}>
        Each household’s own figure, for its own envelope
      </Link>
    </div>
  );
}
