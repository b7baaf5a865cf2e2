import { type Happening, happeningsOf, sentDayOf } from "../calendar/happenings.ts";
import { holidayCaution } from "../calendar/holiday-caution.ts";
import { dayOfRule } from "../calendar/rule-day.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Inspection } from "../facts/permit.ts";
import type { Clock } from "../findings/clock.ts";
import { answerOf } from "../notices/answered.ts";
import { arrivalOf, cameBack } from "../notices/arrival.ts";
import { isReplaced } from "../notices/told.ts";
import { permitName } from "../permit/say.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";
import { formatFullDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { bookingClocks } from "./booking.ts";
import { printedExpiry, withPrintedDay } from "./permit-expiry.ts";
import { isSettled } from "./settled.ts";
import { statutoryClocks } from "./statutory-clocks.ts";
import { tellingBefore } from "./telling.ts";

/**
 * Every clock on the line, the earliest first, settled ones too: the reply-by days of letters, the
 * authority's rules on what happened (locate calls, permits, corrections, orders …), the printed
 * expiry of permits, extensions to ask for, inspections to book, booked inspections and the papers that
 * a state asks for. The contractor's own standing is the office's and not
 * here.
 */
export function clocksOf(file: LineFile, today: Day): Clock[] {
  const ends = [...ruleClocks(file, today), ...printedClocks(file)];
  return [
    ...replyClocks(file),
    ...ends,
    ...extensionClocks(file, ends, today),
    ...inspectionClocks(file),
    ...bookingClocks(file, today),
    ...statutoryClocks(file),
  ].toSorted((one, other) => one.on.localeCompare(other.on) || one.key.localeCompare(other.key));
}

function replyClocks(file: LineFile): Clock[] {
  return file.notices.flatMap((notice) => {
    const sent = sentDayOf(file, notice);
    if (sent === null || notice.replyBy === null) return [];
    const party = file.parties.find((each) => each.id === notice.partyId);
    const back = cameBack(arrivalOf(file, notice).state);
    const { state: answer } = answerOf(file, notice);
    const asks = `The letter of ${formatFullDay(sent)} asks for a reply by ${formatFullDay(notice.replyBy)}`;
    const clock: Clock = {
      key: `reply:${notice.id}`,
      title: `Reply from ${party?.name ?? "a party no longer on the line"}`,
      meaning: "due-by",
      startedOn: sent,
      on: notice.replyBy,
      at: "",
      sentence: back ? `${asks}; it came back, so it has to be sent again.` : `${asks}.`,
      citation: "",
      asOf: null,
      subjectId: notice.id,
      settled:
        answer === "waits" ||
        answer === "in" ||
        back ||
        isReplaced(file, notice) ||
        file.line.closedOn !== null,
      telling: null,
    };
    return [clock];
  });
}

function ruleClocks(file: LineFile, today: Day): Clock[] {
  const happenings = happeningsOf(file);
  return (file.authority?.clockRules ?? []).flatMap((rule) =>
    happenings
      .filter((happening) => happening.event === rule.event)
      .map((happening) => ruleClock(file, rule, { happening, today })),
  );
}

/** Rules on asking for an extension: counted back from the day on which the permit expires. */
function extensionClocks(file: LineFile, ends: readonly Clock[], today: Day): Clock[] {
  const rules = (file.authority?.clockRules ?? []).filter(
    ({ event }) => event === "permit-expires",
  );
  return file.permits.flatMap((permit) => {
    const end = ends.findLast(
      ({ subjectId, meaning }) => subjectId === permit.id && meaning === "expires",
    );
    if (end === undefined) return [];
    const happening: Happening = {
      event: "permit-expires",
      on: end.on,
      at: end.at,
      subjectId: permit.id,
      about: permitName(permit),
      mailed: false,
      noticeIds: [],
    };
    return rules.map((rule) => ruleClock(file, rule, { happening, today }));
  });
}

function ruleClock(
  file: LineFile,
  rule: ClockRule,
  { happening, today }: { happening: Happening; today: Day },
): Clock {
  const counted = dayOfRule(rule, happening.on, file.authority?.holidays ?? [], happening);
  const telling = tellingBefore(file, rule, happening);
  const { on, at, sentence } = withPrintedDay(file, rule, { happening, counted });
  return {
    key: `${rule.id}:${happening.subjectId}:${happening.on}`,
    title: happening.about === "" ? rule.title : `${rule.title} (${happening.about})`,
    meaning: rule.meaning,
    startedOn: happening.on,
    on,
    at,
    sentence: [sentence, holidayCaution(rule, file.authority?.holidays ?? [])]
      .filter((part) => part !== "")
      .join(" "),
    citation: rule.citation,
    asOf: rule.asOf,
    subjectId: happening.subjectId,
    settled: isSettled(file, { rule, happening, on: spentOn(rule, { on, at }), today, telling }),
    telling,
  };
}

/** The day with which a clock has had its say: a window that opens in the day is not open on all of it. */
function spentOn({ meaning }: ClockRule, { on, at }: Pick<Clock, "on" | "at">): Day {
  return meaning === "not-before" && at !== "" ? addDays(on, 1) : on;
}

/** Permits whose printed day no rule of the authority has spoken of already. */
function printedClocks(file: LineFile): Clock[] {
  const ruled = (file.authority?.clockRules ?? []).some(
    (rule) => rule.event === "permit-issued" && rule.meaning === "expires",
  );
  return file.permits.flatMap((permit) => printedExpiry(file, permit, { ruled }) ?? []);
}

function inspectionClocks(file: LineFile): Clock[] {
  return file.inspections
    .filter((inspection) => inspection.result !== "cancelled")
    .map((inspection) => inspectionClock(inspection, file.line.closedOn !== null));
}

function inspectionClock(inspection: Inspection, closed: boolean): Clock {
  const { id, title, bookedFor, bookedAt, inspector, result } = inspection;
  const by = inspector === "" ? "" : ` with ${inspector}`;
  return {
    key: `inspection:${id}`,
    title: title === "" ? "Inspection" : `Inspection: ${title}`,
    meaning: "due-by",
    startedOn: bookedFor,
    on: bookedFor,
    at: bookedAt,
    sentence: `Scheduled${by} for ${bookedAt === "" ? "" : `${formatTime(bookedAt)} on `}${formatFullDay(bookedFor)}.`,
    citation: "",
    asOf: null,
    subjectId: id,
    settled: result !== "booked" || closed,
    telling: null,
  };
}
