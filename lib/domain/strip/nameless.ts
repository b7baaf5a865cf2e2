import type { StripDrawing, StripMark } from "./drawing.ts";

/**
 * The drawing with the file's own ids put away: numbers in the order in which they come, the same
 * number for the same thing. For readers outside the office, whose browser is given every id drawn.
 */
export function nameless(drawing: StripDrawing): StripDrawing {
  const numbers = new Map<string, string>();
  const numberOf = (id: string): string => {
    const number = numbers.get(id) ?? `${numbers.size + 1}`;
    numbers.set(id, number);
    return number;
  };
  const marks = (all: readonly StripMark[]) =>
    all.map(({ crowd, ...mark }) => ({
      ...mark,
      id: numberOf(mark.id),
      ...(crowd === undefined ? {} : { crowd: { ...crowd, ids: crowd.ids.map(numberOf) } }),
    }));
  return {
    ...drawing,
    above: marks(drawing.above),
    below: marks(drawing.below),
    onPipe: marks(drawing.onPipe),
    joins: drawing.joins.map(({ entryId, tieInId, ...join }) => ({
      ...join,
      entryId: numberOf(entryId),
      tieInId: numberOf(tieInId),
    })),
    bands: drawing.bands.map((band) => ({
      ...band,
      cells: band.cells.map(({ id: _id, ...cell }) => cell),
    })),
  };
}
