import { newestTicket } from "../calendar/happenings.ts";
import { neededPermits, type PermitNeed } from "../closing/needed.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState } from "../facts/permit.ts";
import type { Clock } from "../findings/clock.ts";
import type { Report } from "../findings/report.ts";
import { kindName, permitStanding } from "../permit/say.ts";
import { isInForce, permitStateOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";
import { clocksOf } from "./clocks.ts";

/** A permit that the work needs and that is not in force. */
export interface PermitBar {
  readonly need: PermitNeed;
  /** `no street use permit is in force: …`, to complete "because". */
  readonly because: string;
  /** Every permit of its kind is final: the work under it is done. */
  readonly isDone: boolean;
}

/** The permits that the work needs and that are not in force on a day, each with what would mend it. */
export function permitBars(
  file: LineFile,
  today: Day,
  tieIns: Report["tieIns"],
  clocks: readonly Clock[] = clocksOf(file, today),
): PermitBar[] {
  return neededPermits(file, tieIns).flatMap((need) => {
    const permits = file.permits.filter(({ kind }) => kind === need.kind);
    if (permits.some((permit) => isUsable(file, permit, { clocks, today }))) return [];
    const open = permits.filter((permit) => permitStateOf(file, permit) !== "superseded");
    const isDone =
      open.length > 0 && open.every((permit) => permitStateOf(file, permit) === "final");
    return [{ need, because: becauseOf(file, { need, open, clocks, today }), isDone }];
  });
}

/** The permits in force on a day, and the locate ticket that stands for the others, if it has not run out. */
export function papersInForce(
  file: LineFile,
  today: Day,
): { readonly permits: readonly Permit[]; readonly tickets: LineFile["locateTickets"] } {
  const clocks = clocksOf(file, today);
  const ticket = newestTicket(file);
  return {
    permits: file.permits.filter((permit) => isUsable(file, permit, { clocks, today })),
    tickets: ticket === null || ranOut(clocks, ticket.id, today) !== null ? [] : [ticket],
  };
}

interface Around {
  readonly clocks: readonly Clock[];
  readonly today: Day;
}

function isUsable(file: LineFile, permit: Permit, { clocks, today }: Around): boolean {
  return isInForce(permitStateOf(file, permit)) && ranOut(clocks, permit.id, today) === null;
}

function becauseOf(
  file: LineFile,
  { need, open, clocks, today }: Around & { need: PermitNeed; open: readonly Permit[] },
): string {
  const name = kindName(need.kind);
  const why = need.because === "" ? "" : `, and ${need.because}`;
  if (open.length === 0) return `there is no ${name}${why}`;
  const standings = open.map((permit) => {
    const end = ranOut(clocks, permit.id, today);
    const state = permitStateOf(file, permit);
    const standing = permitStanding(file, permit);
    if (end !== null) return `${standing} and expired ${formatDay(end, today)}${REMEDIES.expired}`;
    return `${standing}${REMEDIES[state] ?? ""}`;
  });
  return `no ${name} is in force${why}: ${standings.join(", ")}`;
}

const REMEDIES: Partial<Record<PermitState, string>> = {
  final: ", so more work needs a new one",
  expired: ", so it has to be extended or applied for again",
  withdrawn: ", so a new one has to be applied for",
};

/** The end that a clock of this ticket or permit has passed without its being used; null: none. */
export function ranOut(clocks: readonly Clock[], subjectId: string, today: Day): Day | null {
  const ends = clocks.filter(
    (clock) => clock.subjectId === subjectId && isEnd(clock) && !clock.settled && clock.on < today,
  );
  return ends[0]?.on ?? null;
}

export function isEnd({ meaning }: Clock): boolean {
  return meaning === "not-after" || meaning === "expires";
}
