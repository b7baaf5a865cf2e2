import "server-only";
import { db } from "#app/db.ts";
import { today } from "#app/today.ts";
import { getOffice } from "#db/queries/office.ts";
import {
  countDue,
  countKept,
  countOldSummaries,
  dueOf,
  getTallies,
  type SummedLine,
  summedLines,
} from "#db/queries/summary.ts";
import { papersBy, pressingPapers } from "#lib/domain/clocks/paper-clocks.ts";
import { DUE_KINDS, type DueKind, type DueThing, type Tallies } from "#lib/domain/desk/answer.ts";
import {
  countsOf,
  type DueCount,
  endOfWeek,
  isNarrowed,
  type Narrowing,
} from "#lib/domain/desk/narrowing.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { renewIfFree } from "#lib/operations/renew-summaries.ts";

/** What changed a moment ago is summed up at once; a whole office on a new day is the worker's. */
const AT_ONCE = 4;

export interface NamedThing extends DueThing {
  readonly lineName: string;
}

/** A part of a long list, and how long all of it is. */
export interface Listed<T> {
  readonly rows: readonly T[];
  readonly of: number;
}

export interface Desk {
  readonly tallies: Tallies;
  readonly due: readonly ({ readonly kind: DueKind } & Listed<NamedThing>)[];
  readonly lines: Listed<SummedLine>;
  /** The office’s own papers that ran out or will soon; what is late or due of them is counted. */
  readonly papers: readonly Clock[];
  /** What there is to narrow it by, with how much each leaves. */
  readonly counts: readonly DueCount[];
  /** How many lines still say what they said before they, or the day, changed. */
  readonly old: number;
}

/** What is most urgent over all lines: the first things of each kind, and one page of the lines. */
export function deskNow({
  things,
  lines,
  narrowing,
}: {
  /** The most of each kind. */
  readonly things: Readonly<Record<DueKind, number>>;
  readonly lines: { readonly from: number; readonly most: number };
  readonly narrowing: Narrowing;
}): Desk {
  const day = today();
  renewIfFree(db(), day, AT_ONCE);
  const tallies = getTallies(db());
  const papers = companyPapers(day);
  const { late, due } = papersBy(papers, day);
  const counts = countDue(db(), endOfWeek(day));
  const left = isNarrowed(narrowing) ? countsOf(counts, narrowing) : tallies;
  const { keeper } = narrowing;
  return {
    tallies: {
      ...tallies,
      late: tallies.late + late.length,
      due: tallies.due + due.length,
    },
    // A paper is the whole office's: no line's, and nobody's in particular.
    papers: isNarrowed(narrowing) ? [] : papers,
    counts,
    due: DUE_KINDS.filter((kind) => left[kind] > 0).map((kind) => ({
      kind,
      rows: dueOf(db(), kind, { from: 0, most: things[kind], narrowing }),
      of: left[kind],
    })),
    lines: {
      rows: summedLines(db(), "on-the-desk", { day, ...lines, keeper }),
      of: keeper === null ? tallies["on-the-desk"] : countKept(db(), keeper),
    },
    old: countOldSummaries(db(), day),
  };
}

/** License, bond, insurance: those of the office that ran out, or will within weeks. */
function companyPapers(day: string): readonly Clock[] {
  const office = getOffice(db());
  return office === null ? [] : pressingPapers(office, day);
}

/** Those of them that count among what is late or due; none among what is blocked or waits. */
export function papersOf(kind: DueKind): readonly Clock[] {
  const day = today();
  const counted = papersBy(companyPapers(day), day);
  return kind === "late" || kind === "due" ? counted[kind] : [];
}

/** One page of what is late, due, blocked or waiting over all lines. */
export function dueNow(
  kind: DueKind,
  page: { readonly from: number; readonly most: number; readonly narrowing: Narrowing },
): Listed<NamedThing> {
  const day = today();
  renewIfFree(db(), day, AT_ONCE);
  const of = isNarrowed(page.narrowing)
    ? countsOf(countDue(db(), endOfWeek(day)), page.narrowing)[kind]
    : getTallies(db())[kind];
  return { rows: dueOf(db(), kind, page), of };
}

/** One page of the lines that are open or closed, the most pressing first. */
export function linesNow(
  which: "open" | "closed",
  page: { readonly from: number; readonly most: number },
): Listed<SummedLine> {
  const day = today();
  renewIfFree(db(), day, AT_ONCE);
  return { rows: summedLines(db(), which, { day, ...page }), of: getTallies(db())[which] };
}
