import type { LineFile } from "../../facts/line-file.ts";
import { LOT_ROLES } from "../../facts/party.ts";
import type { Report } from "../../findings/report.ts";
import { formatDay } from "../../time/format-day.ts";
import { aboutProperty, atEvery } from "../addressed.ts";
import { heading, lead, list, paragraph, table } from "../common.ts";
import { type LetterFacts, pipeOf } from "../facts.ts";
import { hoursWords, phoneRows } from "../hours.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { nextMeeting } from "../next-meeting.ts";

/** Owners are invited to a meeting: day, hours, place, and nobody’s amount. */
export const MEETING: LetterPlan = {
  title: {
    en: "Meeting about the shared sewer",
    es: "Reunión sobre el desagüe compartido",
  },
  recipients: (file) => atEvery(file, file.properties.map(aboutProperty), LOT_ROLES),
  ownProse: true,
  ahead: ({ file, report }) => {
    const next = nextMeeting(file.meetings, report.today);
    return next === null ? null : { what: "the meeting is", on: next.on };
  },
  body: meetingBody,
  choices: ({ words }) => words.meeting.choices,
  cautions: ["official"],
  gaps: [hasMeeting],
  due: meetingAhead,
};

function hasMeeting(facts: LetterFacts): string | null {
  const set = nextMeeting(facts.file.meetings, facts.report.today);
  if (set === null) return "No meeting is planned: enter its day under Meetings.";
  const lacks = [
    ...(hoursWords(set, facts.words) === "" ? ["its hours"] : []),
    ...(set.place === "" ? ["its place"] : []),
  ];
  if (lacks.length > 0)
    return `The meeting lacks ${lacks.join(" and ")}: enter that under Meetings.`;
  return set.on < facts.report.today ? "The meeting is past: enter the new day." : null;
}

function meetingAhead({ meetings }: LineFile, { today }: Report) {
  const next = nextMeeting(meetings, today);
  if (next === null || next.on < today) return null;
  const before = meetings.map(({ on }) => on).filter((on) => on < today);
  return {
    because: `A meeting is set for ${formatDay(next.on, today)}`,
    since: before.toSorted().at(-1) ?? "",
  };
}

/** Day, hours and place of a meeting, and what it is about; nobody's amount. */
function meetingBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  const { meeting } = words;
  const set = nextMeeting(facts.file.meetings, facts.report.today);
  const day = set === null ? words.notSet : words.weekday(set.on);
  const hours = hoursWords(set, words);
  const where = set?.place ?? "";
  return [
    ...lead(set === null ? null : meeting.lead(day, hours, where)),
    paragraph(meeting.opening(pipeOf(facts))),
    ...table(words.visit.head, [
      ...(set === null ? [[meeting.day, day]] : []),
      ...(hours === "" ? [[meeting.hours, words.notSet]] : []),
      ...(where === "" ? [[meeting.where, words.notSet]] : []),
      ...phoneRows(facts),
    ]),
    heading(meeting.about),
    ...list(meeting.aboutLines),
    paragraph(meeting.bring),
    paragraph(meeting.private),
  ];
}
