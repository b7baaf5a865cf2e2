import type { ClockEvent } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, Notice } from "../facts/notice.ts";
import { permitName } from "../permit/say.ts";
import { stepsOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";

/** Something of the file that starts clocks. */
export interface Happening {
  readonly event: ClockEvent;
  readonly on: Day;
  /** The time of day as `16:05`; empty where none is noted. */
  readonly at: string;
  /** The fact behind it; with several letters of one day the first of them. */
  readonly subjectId: string;
  /** What it is about, to complete a title: `ticket 26-555-0171`; empty where the title suffices. */
  readonly about: string;
  /** The notice went by mail, so that a rule's days for mail count. */
  readonly mailed: boolean;
  /** The letters behind it; empty for everything else. */
  readonly noticeIds: readonly string[];
}

/** Everything in the file that starts clocks, each fact once. */
export function happeningsOf(file: LineFile): Happening[] {
  const recorded = [
    ...letters(file),
    ...splits(file),
    ...tickets(file),
    ...permits(file),
    ...inspections(file),
    ...testDays(file),
  ];
  return [...withNotedTimes(file, recorded), ...datedEvents(file, recorded)];
}

/** The day a notice went out: of its first attempt, else of the record of its sending. */
export function sentDayOf(file: Pick<LineFile, "deliveries">, notice: Notice): Day | null {
  if (notice.state !== "sent") return null;
  const days = attemptsOf(file, notice).map((delivery) => delivery.sentOn);
  return days.toSorted()[0] ?? notice.sentAt?.slice(0, 10) ?? notice.createdOn;
}

function attemptsOf(file: Pick<LineFile, "deliveries">, notice: Notice): Delivery[] {
  return file.deliveries.filter((delivery) => delivery.noticeId === notice.id);
}

function letters(file: LineFile): Happening[] {
  const sent = file.notices.flatMap((notice) => {
    const on = sentDayOf(file, notice);
    const methods = attemptsOf(file, notice).map((delivery) => delivery.method);
    const mailed = methods.some((method) => method === "first-class" || method === "certified");
    return on === null ? [] : [{ notice, on, mailed, certified: methods.includes("certified") }];
  });
  const certified = sent.filter((each) => each.certified);
  return [...grouped("letter-sent", sent), ...grouped("certified-letter-mailed", certified)];
}

interface Sent {
  readonly notice: Notice;
  readonly on: Day;
  readonly mailed: boolean;
}

/** Letters of one kind that went the same day in the same way start one clock together. */
function grouped(event: ClockEvent, sent: readonly Sent[]): Happening[] {
  const groups = new Map<string, Sent[]>();
  for (const each of sent) {
    const key = `${each.notice.kind} ${each.on} ${each.mailed}`;
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].flatMap((group) => {
    const [first] = group;
    if (first === undefined) return [];
    const noticeIds = group.map(({ notice }) => notice.id);
    const about = `${group.length === 1 ? "letter" : `${group.length} letters`} of ${formatDate(first.on)}`;
    return [
      {
        event,
        on: first.on,
        at: "",
        subjectId: first.notice.id,
        about,
        mailed: first.mailed,
        noticeIds,
      },
    ];
  });
}

function splits(file: LineFile): Happening[] {
  return file.splits.flatMap((split) => {
    const carriers = file.notices.filter((notice) => notice.splitId === split.id);
    const days = carriers.flatMap((notice) => sentDayOf(file, notice) ?? []).toSorted();
    const on = days[0] ?? split.sentAt?.slice(0, 10);
    if (on === undefined) return [];
    return [plain("split-sent", on, { id: split.id, about: `split ${split.number}` })];
  });
}

function tickets(file: LineFile): Happening[] {
  return file.locateTickets.flatMap((ticket) => {
    const subject = { id: ticket.id, about: ticket.number === "" ? "" : `ticket ${ticket.number}` };
    const called = plain("locate-called", ticket.calledOn, { ...subject, at: ticket.calledAt });
    const isNewest = ticket.id === newestTicket(file)?.id;
    if (ticket.workBeginsOn === null || !isNewest) return [called];
    const begins = { id: ticket.id, about: "", at: ticket.workBeginsAt };
    return [called, plain("work-begins", ticket.workBeginsOn, begins)];
  });
}

/** The ticket called last: it stands for the older ones. */
export function newestTicket(
  file: Pick<LineFile, "locateTickets">,
): LineFile["locateTickets"][number] | null {
  return file.locateTickets.toSorted((a, b) => a.calledOn.localeCompare(b.calledOn)).at(-1) ?? null;
}

const STEP_EVENTS = [
  ["submitted", "permit-submitted"],
  ["issued", "permit-issued"],
  ["corrections", "corrections-asked"],
  ["denied", "permit-denied"],
  ["emergency", "emergency-work"],
] as const;

function permits(file: LineFile): Happening[] {
  return file.permits.flatMap((permit) =>
    STEP_EVENTS.flatMap(([state, event]) => {
      const step = stepsOf(file, permit).findLast((each) => each.state === state);
      if (step === undefined) return [];
      return [plain(event, step.on, { id: permit.id, about: permitName(permit) })];
    }),
  );
}

function inspections(file: LineFile): Happening[] {
  return file.inspections
    .filter((inspection) => inspection.result !== "cancelled")
    .map((inspection) =>
      plain("inspection-booked", inspection.bookedFor, {
        id: inspection.id,
        about: inspection.title,
        at: inspection.bookedAt,
      }),
    );
}

/** A planned test day enters dwellings and sends dye down the sewer. */
function testDays(file: LineFile): Happening[] {
  return file.testDays.flatMap(({ id, on, stops }) => {
    const at = stops[0]?.startsAt ?? "";
    const about = { id, about: "test day", at };
    return [plain("tenant-entry", on, about), plain("dye-test", on, about)];
  });
}

function datedEvents(file: LineFile, recorded: readonly Happening[]): Happening[] {
  const isRecorded = (event: ClockEvent, on: Day) =>
    recorded.some((each) => each.event === event && each.on === on);
  return file.events
    .filter((each) => !isRecorded(each.event, each.on))
    .map((each) => plain(each.event, each.on, { id: each.id, about: each.note, at: each.at }));
}

/** A time that only a dated event of the same kind and day has belongs to what is recorded. */
function withNotedTimes(file: LineFile, recorded: readonly Happening[]): Happening[] {
  return recorded.map((each) => {
    const noted = file.events.find(
      ({ event, on, at }) => event === each.event && on === each.on && at !== "",
    );
    return each.at !== "" || noted === undefined ? each : { ...each, at: noted.at };
  });
}

function plain(
  event: ClockEvent,
  on: Day,
  subject: { readonly id: string; readonly about: string; readonly at?: string },
): Happening {
  return {
    event,
    on,
    at: subject.at ?? "",
    subjectId: subject.id,
    about: subject.about,
    mailed: false,
    noticeIds: [],
  };
}
