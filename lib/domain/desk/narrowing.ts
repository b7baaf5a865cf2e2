import type { Day } from "../time/day.ts";
import { addDays, WEEKDAYS, weekday } from "../time/days.ts";
import { DUE_KINDS, type DueKind, WAITS_ON, type WaitsOn } from "./answer.ts";

/** What a desk is narrowed to; each part that is null narrows nothing, and all of them hold at once. */
export interface Narrowing {
  /** The user who looks after the lines; empty: lines that nobody does. */
  readonly keeper: string | null;
  readonly waitsOn: WaitsOn | null;
  /** Only what has a day up to this one, so with what is overdue; what has no day is left out. */
  readonly until: Day | null;
}

export const EVERYTHING: Narrowing = { keeper: null, waitsOn: null, until: null };

export function isNarrowed({ keeper, waitsOn, until }: Narrowing): boolean {
  return keeper !== null || waitsOn !== null || until !== null;
}

/** So many things of a kind that wait on somebody, on lines of one keeper. */
export interface DueCount {
  readonly keeper: string;
  readonly waitsOn: WaitsOn;
  readonly kind: DueKind;
  /** They have a day up to the end of the week. */
  readonly soon: boolean;
  readonly count: number;
}

/** How many things of each kind are left of a desk. */
export function countsOf(
  counts: readonly DueCount[],
  narrowing: Narrowing,
): Readonly<Record<DueKind, number>> {
  const left = counts.filter(
    ({ keeper, waitsOn, soon }) =>
      (narrowing.keeper === null || keeper === narrowing.keeper) &&
      (narrowing.waitsOn === null || waitsOn === narrowing.waitsOn) &&
      (narrowing.until === null || soon),
  );
  const sum = (of: DueKind) =>
    left.filter(({ kind }) => kind === of).reduce((all, { count }) => all + count, 0);
  return { late: sum("late"), due: sum("due"), blocked: sum("blocked"), waiting: sum("waiting") };
}

/** How many things of all kinds are left of a desk. */
export function countOf(counts: readonly DueCount[], narrowing: Narrowing): number {
  const each = countsOf(counts, narrowing);
  return DUE_KINDS.reduce((sum, kind) => sum + each[kind], 0);
}

/** The Sunday that ends the week of a day. */
export function endOfWeek(day: Day): Day {
  return addDays(day, WEEKDAYS.indexOf("Sunday") - WEEKDAYS.indexOf(weekday(day)));
}

/** A narrowing as it stands in an address, whoever opens it: `mine` is theirs. */
export interface AskedNarrowing {
  readonly whose?: string | undefined;
  readonly waits?: string | undefined;
  readonly when?: string | undefined;
}

/** What an address asks for; a word that it doesn't know narrows nothing. */
export function narrowingOf(
  { whose, waits, when }: AskedNarrowing,
  { userId, today }: { readonly userId: string; readonly today: Day },
): Narrowing {
  return {
    keeper: keeperOf(whose ?? "", userId),
    waitsOn: WAITS_ON.find((each) => each === waits) ?? null,
    until: when === "week" ? endOfWeek(today) : null,
  };
}

function keeperOf(whose: string, userId: string): string | null {
  if (whose === "mine") return userId;
  if (whose === "none") return "";
  return whose === "" ? null : whose;
}

/** The address of a page with such a narrowing, and other words of it, as `/due/late?whose=mine`. */
export function narrowedAddress(
  path: string,
  { whose, waits, when }: AskedNarrowing,
  more: Readonly<Record<string, string>> = {},
): string {
  const asked = Object.entries({ whose, waits, when, ...more }).flatMap(([name, value]) =>
    value === undefined || value === "" ? [] : [[name, value]],
  );
  const words = new URLSearchParams(asked).toString();
  return words === "" ? path : `${path}?${words}`;
}
