import { type Cft, formatFeet } from "../length/station.ts";
import type { FileDrawing, StripMark } from "./drawing.ts";

/** So many marks of a kind are always drawn one by one. */
const FEW = 80;

/** What several of a kind are called together. */
const NOUNS: Partial<Record<StripMark["kind"], string>> = {
  fault: "defects",
  water: "wet sections",
  hold: "holds",
  work: "items",
};

/**
 * The drawing with defects, holds and work that begin less than `least` apart drawn as one, where
 * there are very many of them. Tie-ins, entries and points stay as they are: their flags see to it.
 */
export function crowded(drawing: FileDrawing, least: Cft): FileDrawing {
  return {
    ...drawing,
    onPipe: together(drawing.onPipe, least),
    holds: together(drawing.holds, least),
    work: together(drawing.work, least),
  };
}

/** Nearer than so many pixels, two marks are not told apart. */
const APART = 12;

/** How far apart marks have to begin to be told apart, where the whole line is `wide` pixels wide. */
export function leastApart({ extent }: Pick<FileDrawing, "extent">, wide: number): Cft {
  return Math.ceil((extent * APART) / wide);
}

/** How many a mark stands for. */
export function countOf({ crowd }: StripMark): number {
  return crowd?.count ?? 1;
}

/** The ids of all that a mark stands for. */
export function idsOf({ id, crowd }: StripMark): readonly string[] {
  return crowd === undefined || crowd.ids.length === 0 ? [id] : crowd.ids;
}

function together(marks: readonly StripMark[], least: Cft): readonly StripMark[] {
  const kinds = Object.keys(NOUNS) as StripMark["kind"][];
  const many = kinds.filter((kind) => marks.filter((mark) => mark.kind === kind).length > FEW);
  if (many.length === 0) return marks;
  return [
    ...marks.filter((mark) => !many.includes(mark.kind)),
    ...many.flatMap((kind) =>
      crowdsOf(
        marks.filter((mark) => mark.kind === kind),
        least,
      ),
    ),
  ];
}

function crowdsOf(marks: readonly StripMark[], least: Cft): StripMark[] {
  const crowds: StripMark[][] = [];
  let begins = Number.NEGATIVE_INFINITY;
  for (const mark of marks.toSorted((one, other) => one.station - other.station)) {
    if (mark.station - begins < least) crowds.at(-1)?.push(mark);
    else {
      crowds.push([mark]);
      begins = mark.station;
    }
  }
  return crowds.map(asOne);
}

function asOne(marks: readonly StripMark[]): StripMark {
  const [first] = marks as readonly [StripMark];
  if (marks.length === 1) return first;
  const from = first.station;
  const to = Math.max(...marks.map((mark) => mark.toStation ?? mark.station));
  const count = marks.reduce((sum, mark) => sum + countOf(mark), 0);
  const label = `${count} ${NOUNS[first.kind]}`;
  const where = to === from ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
  return {
    ...first,
    toStation: marks.every((mark) => mark.toStation === null) ? null : to,
    whisker: 0,
    side: "unknown",
    label,
    detail: where,
    loud: marks.some((mark) => mark.loud),
    sentence: `${label}, ${where}. Zoom in.`,
    crowd: { count, ids: marks.flatMap(idsOf) },
  };
}
