import { type Happening, newestTicket, sentDayOf } from "../calendar/happenings.ts";
import type { ClockEvent, ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { PermitState } from "../facts/permit.ts";
import type { Telling } from "../findings/clock.ts";
import { answerOf } from "../notices/answered.ts";
import { isDoneWith, isInForce, permitStateOf, stepsOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { isToldInTime } from "./telling.ts";

interface Running {
  readonly rule: Pick<ClockRule, "way" | "meaning">;
  readonly happening: Happening;
  /** Where the count ends. */
  readonly on: Day;
  readonly today: Day;
  /** Whom it waits for to be told; null where it waits for something else. */
  readonly telling: Telling | null;
}

/**
 * Whether a clock has nothing left to say: what it waited for is in the file, what it guarded has
 * passed, or the line is closed. A clock of whose end the file holds no sign keeps running.
 */
export function isSettled(file: LineFile, running: Running): boolean {
  if (file.line.closedOn !== null) return true;
  const { rule, happening, on, today, telling } = running;
  if (rule.meaning === "not-before") return on <= today;
  if (rule.way === "before")
    return (
      happening.on < today ||
      (telling !== null && isToldInTime(telling)) ||
      isPlantTold(file, happening) ||
      isExtensionDone(file, happening)
    );
  return SETTLED[happening.event](file, running);
}

/** The extension is asked for, or the permit needs none any more. */
function isExtensionDone(file: LineFile, { event, subjectId }: Happening): boolean {
  if (event !== "permit-expires") return false;
  const state = permitStateOf(file, { id: subjectId });
  return state === "extension-asked" || !isInForce(state);
}

/** Whoever runs the sewer was told of the dye of that day. */
function isPlantTold({ testDays }: LineFile, { event, subjectId }: Happening): boolean {
  if (event !== "dye-test") return false;
  return testDays.some(({ id, plantToldOn }) => id === subjectId && plantToldOn !== null);
}

function hasSent(file: LineFile, kind: LetterKind, days: { from: Day; to: Day | null }): boolean {
  return file.notices.some((notice) => {
    const sent = notice.kind === kind ? sentDayOf(file, notice) : null;
    return sent !== null && sent >= days.from && (days.to === null || sent <= days.to);
  });
}

type Settling = (file: LineFile, running: Running) => boolean;

const SETTLED: Record<ClockEvent, Settling> = {
  "letter-sent": allAnswered,
  "certified-letter-mailed": allAnswered,
  "split-sent": (file, { happening }) => file.splits.at(-1)?.id !== happening.subjectId,
  "locate-called": isTicketDone,
  "permit-issued": isPermitClockDone,
  "permit-submitted": (file, { happening }) =>
    hasLeft(file, happening.subjectId, ["submitted", "in-review"]),
  "corrections-asked": (file, { happening }) =>
    hasLeft(file, happening.subjectId, ["corrections", "waiting-on-signatures"]),
  "permit-denied": (file, { happening }) => hasLeft(file, happening.subjectId, ["denied"]),
  "permit-expires": () => false,
  "emergency-work": (file, { happening }) => hasLeft(file, happening.subjectId, ["emergency"]),
  "authority-order": (file, { happening }) =>
    hasSent(file, "authority-response", { from: happening.on, to: null }),
  "inspection-booked": (file, { happening }) =>
    file.inspections.find((each) => each.id === happening.subjectId)?.result !== "booked",
  "work-begins": () => false,
  "work-ends": () => false,
  "tenant-entry": () => false,
  "dye-test": () => false,
  "drains-paused": () => false,
  "drains-back": () => false,
  "street-closed": () => false,
};

function allAnswered(file: LineFile, { happening }: Running): boolean {
  return happening.noticeIds.every((noticeId) => {
    const notice = file.notices.find(({ id }) => id === noticeId);
    const state = notice === undefined ? "none" : answerOf(file, notice).state;
    return state === "waits" || state === "in";
  });
}

/** A newer ticket stands for it; a start in time has used it up; a passed trench needs none. */
function isTicketDone(file: LineFile, { rule, happening, on, today }: Running): boolean {
  const newest = newestTicket(file);
  if (newest?.id !== happening.subjectId) return true;
  const isDug = file.permits.some((permit) =>
    [
      "passed-may-backfill",
      "as-built-submitted",
      "as-built-rejected",
      "as-built-accepted",
      "final",
    ].includes(permitStateOf(file, permit)),
  );
  const begins = newest.workBeginsOn;
  const begun = begins !== null && begins <= on && begins <= today;
  return isDug || (rule.meaning === "not-after" && begun);
}

function isPermitClockDone(file: LineFile, { rule, happening }: Running): boolean {
  const state = permitStateOf(file, { id: happening.subjectId });
  if (rule.meaning === "expires") return isDoneWith(state);
  return state !== "issued" && state !== "extended";
}

function hasLeft(file: LineFile, permitId: string, states: readonly PermitState[]): boolean {
  const last = stepsOf(file, { id: permitId }).at(-1);
  return last !== undefined && !states.includes(last.state);
}
