import "server-only";
import { db } from "#app/db.ts";
import { today } from "#app/today.ts";
import {
  countOldSummaries,
  dueOf,
  getTallies,
  type SummedLine,
  summedLines,
} from "#db/queries/summary.ts";
import { DUE_KINDS, type DueKind, type DueThing, type Tallies } from "#lib/domain/desk/answer.ts";
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
  /** How many lines still say what they said before they, or the day, changed. */
  readonly old: number;
}

/** What is most urgent over all lines: the first things of each kind, and one page of the lines. */
export function deskNow({
  things,
  lines,
}: {
  /** The most of each kind. */
  readonly things: Readonly<Record<DueKind, number>>;
  readonly lines: { readonly from: number; readonly most: number };
}): Desk {
  const day = today();
  renewIfFree(db(), day, AT_ONCE);
  const tallies = getTallies(db());
  return {
    tallies,
    due: DUE_KINDS.filter((kind) => tallies[kind] > 0).map((kind) => ({
      kind,
      rows: dueOf(db(), kind, { from: 0, most: things[kind] }),
      of: tallies[kind],
    })),
    lines: {
      rows: summedLines(db(), "on-the-desk", { day, ...lines }),
      of: tallies["on-the-desk"],
    },
    old: countOldSummaries(db(), day),
  };
}

/** One page of what is late, due, blocked or waiting over all lines. */
export function dueNow(
  kind: DueKind,
  page: { readonly from: number; readonly most: number },
): Listed<NamedThing> {
  renewIfFree(db(), today(), AT_ONCE);
  return { rows: dueOf(db(), kind, page), of: getTallies(db())[kind] };
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
