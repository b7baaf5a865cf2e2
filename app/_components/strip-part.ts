import { idsOf } from "#lib/domain/strip/crowds.ts";
import type { FileDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import type { Flag } from "#lib/domain/strip/flags.ts";
import type { StripLayout } from "#lib/domain/strip/layout.ts";
import { xOn } from "#lib/domain/strip/places.ts";

/** What every part of the drawing is handed. */
export interface StripPart {
  readonly drawing: FileDrawing;
  readonly layout: StripLayout;
  /** Unique on the page, for the names of patterns. */
  readonly id: string;
  readonly pick: StripPick;
}

/** What is chosen, and what a choice does. */
export interface StripPick {
  /** Ids of the marks that are drawn as chosen. */
  readonly chosen: ReadonlySet<string>;
  /** The one stop that the tab key reaches. */
  readonly tabKey: string;
  readonly onSelect: (id: string) => void;
  /** Looks closer at marks that are counted together. */
  readonly onOpen: (marks: readonly StripMark[]) => void;
}

/** One thing that the arrow keys reach, from left to right. */
export interface StripStop {
  readonly key: string;
  readonly x: number;
  /** What it selects; null: it opens a group. */
  readonly id: string | null;
  readonly members: readonly string[];
  /** What a group is made of. */
  readonly marks: readonly StripMark[];
}

/** How a flag is called among the stops: a group goes by its first mark. */
export function flagKey(flag: Pick<Flag, "marks" | "mark">): string {
  return flag.marks.length > 1 ? `group:${flag.mark.id}` : flag.mark.id;
}

/** Everything on the drawing that can be chosen, in reading order. */
export function stopsOf(drawing: FileDrawing, layout: StripLayout): StripStop[] {
  const flags = [
    ...layout.holds,
    ...layout.points,
    ...layout.above,
    ...layout.below,
    ...layout.rows.flatMap((row) => row.flags),
  ].map((flag) => ({
    key: flagKey(flag),
    x: flag.x,
    id: flag.marks.length > 1 || flag.mark.crowd !== undefined ? null : flag.mark.id,
    members: flag.marks.flatMap(idsOf),
    marks: flag.marks,
  }));
  const marks = [
    ...drawing.onPipe.filter((mark) => mark.kind === "main"),
    ...bareMarks(drawing, layout),
  ];
  const onPipe = marks.map((mark) => ({
    key: mark.id,
    x: xOn(layout, mark.station) - (mark.kind === "main" ? 1 : 0),
    id: mark.crowd === undefined ? mark.id : null,
    members: idsOf(mark),
    marks: [mark],
  }));
  const cells = layout.bands.flatMap((band) =>
    band.cells.flatMap(({ id, x }) =>
      id === null ? [] : [{ key: `${band.title}:${id}`, x, id, members: [id], marks: [] }],
    ),
  );
  return [...onPipe, ...flags, ...cells].toSorted((one, other) => one.x - other.x);
}

/** Faults and water that no row names: they are chosen on the pipe itself. */
export function bareMarks(drawing: FileDrawing, layout: StripLayout): StripMark[] {
  const named = new Set(
    layout.rows.flatMap((row) => row.flags.flatMap((flag) => flag.marks.map((mark) => mark.id))),
  );
  return drawing.onPipe.filter(
    (mark) => (mark.kind === "fault" || mark.kind === "water") && !named.has(mark.id),
  );
}
