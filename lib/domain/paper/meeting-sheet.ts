import type { LineFile } from "../facts/line-file.ts";
import type { Party } from "../facts/party.ts";
import type { Report } from "../findings/report.ts";
import { plainFeet } from "../length/station.ts";
import { joinedStretches } from "../length/stretch.ts";
import { formatCents } from "../money/format-cents.ts";
import { startAudience } from "../notices/audience.ts";
import type { Language } from "../say/language.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";
import { LETTER_WORDS } from "./facts.ts";
import { MEETING_WORDS } from "./meeting-words.ts";

/** Somebody to be expected at a meeting. */
export interface MeetingGuest {
  readonly party: Party;
  readonly propertyId: string;
}

/** Everybody on every property, in the file's order: one line of the sign-in each. */
export function meetingGuests(file: LineFile): MeetingGuest[] {
  return startAudience(file).flatMap(({ partyId, propertyId }) => {
    const party = file.parties.find(({ id }) => id === partyId);
    return party === undefined ? [] : [{ party, propertyId }];
  });
}

export interface MeetingQuestion {
  readonly asked: string;
  readonly answer: string;
}

/**
 * What neighbors usually ask, answered from the file: what was seen, why they are asked, what it
 * costs, whether it is the authority's, what if somebody says no, when it is done. Everybody reads
 * this sheet, so it has no household's amount, answer or need in it.
 */
export function meetingQuestions(
  file: LineFile,
  report: Report,
  language: Language,
): MeetingQuestion[] {
  const words = MEETING_WORDS[language];
  return [
    { asked: words.seen.asked, answer: seenAnswer(file, report, language) },
    { asked: words.why.asked, answer: words.why.answer },
    { asked: words.cost.asked, answer: costAnswer(file, language) },
    { asked: words.authority.asked, answer: authorityAnswer(file, report, language) },
    { asked: words.no.asked, answer: noAnswer(file, language) },
    { asked: words.when.asked, answer: whenAnswer(file, report, language) },
  ];
}

function seenAnswer(
  { runs, observations }: LineFile,
  { tieIns }: Report,
  language: Language,
): string {
  const { seen } = MEETING_WORDS[language];
  if (runs.length === 0) return seen.none;
  const live = tieIns.filter((each) => each.live).length;
  const open = tieIns.filter(isOwnerOpen).length;
  const faults = observations.filter(({ kind }) => kind === "fault" || kind === "blockage").length;
  return [seen.live(live), ...(open === 0 ? [] : [seen.open(open)]), seen.faults(faults)].join(" ");
}

function costAnswer(file: LineFile, language: Language): string {
  const { cost } = MEETING_WORDS[language];
  const split = latestSplit(file);
  if (split === null) return cost.none;
  const rule = LETTER_WORDS[language].rule[split.rule].title;
  return cost.total(formatCents(split.total), rule);
}

function authorityAnswer({ authority }: LineFile, { reaches }: Report, language: Language): string {
  const words = MEETING_WORDS[language].authority;
  if (authority === null || reaches.length === 0) return words.unknown;
  const placesOf = (holder: string) =>
    joinedStretches(reaches.filter((reach) => reach.holder === holder)).map(
      ({ from, to }) => `${plainFeet(from)}–${plainFeet(to)}`,
    );
  const theirs = placesOf("authority");
  const unclear = placesOf("unclear");
  return [
    theirs.length === 0
      ? words.none(authority.name)
      : words.some(authority.name, theirs.join(", ")),
    ...(unclear.length === 0 ? [] : [words.unclear(unclear.join(", "))]),
  ].join(" ");
}

function noAnswer({ authority }: LineFile, language: Language): string {
  const { no } = MEETING_WORDS[language];
  const steps = authority?.refusalSteps ?? [];
  return steps.length === 0 ? no.notSaid : no.said;
}

function whenAnswer({ events }: LineFile, { today }: Report, language: Language): string {
  const { when } = MEETING_WORDS[language];
  const { weekday } = LETTER_WORDS[language];
  const next = (wanted: string) =>
    events
      .filter(({ event, on }) => event === wanted && on >= today)
      .map(({ on }) => on)
      .toSorted()[0];
  const begins = next("work-begins");
  const paused = next("drains-paused");
  return [
    begins === undefined ? when.none : when.begins(weekday(begins)),
    paused === undefined ? when.noPause : when.pause(weekday(paused)),
  ].join(" ");
}
