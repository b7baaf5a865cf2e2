import { type Cft, formatFeet, plainFeet } from "./station.ts";

/** A part of the trunk, or a point where both ends are the same. Hundredths of a foot from the main. */
export interface Stretch {
  readonly from: Cft;
  readonly to: Cft;
}

/** Whether two stretches have a place in common; where one ends and the other begins counts. */
export function touches(one: Stretch, other: Stretch): boolean {
  return one.from <= other.to && other.from <= one.to;
}

/** Overlapping and adjoining stretches as one, from the main upwards. */
export function joinedStretches(stretches: readonly Stretch[]): Stretch[] {
  const joined: Stretch[] = [];
  for (const { from, to } of stretches.toSorted((a, b) => a.from - b.from || a.to - b.to)) {
    const last = joined.at(-1);
    if (last !== undefined && from <= last.to)
      joined[joined.length - 1] = { from: last.from, to: Math.max(last.to, to) };
    else joined.push({ from, to });
  }
  return joined;
}

/** What is left of a stretch without others; a point is left where no other one holds it. */
export function withoutStretches(whole: Stretch, others: readonly Stretch[]): Stretch[] {
  const left: Stretch[] = [];
  const cut = joinedStretches(others).filter((other) => touches(whole, other));
  if (whole.from === whole.to) return cut.length === 0 ? [whole] : [];
  let from = whole.from;
  for (const other of cut) {
    if (other.from > from) left.push({ from, to: other.from });
    from = Math.max(from, other.to);
  }
  if (from < whole.to) left.push({ from, to: whole.to });
  return left;
}

/** What two stretches have in common; null where nothing, or only an end. */
export function commonStretch(one: Stretch, other: Stretch): Stretch | null {
  const from = Math.max(one.from, other.from);
  const to = Math.min(one.to, other.to);
  if (from < to) return { from, to };
  const isPoint = one.from === one.to || other.from === other.to;
  return from === to && isPoint ? { from, to } : null;
}

/** `from 12.0 to 46.0 ft`, `at 22.0 ft` for a point, `anywhere on the line` where no place is known. */
export function sayWhere(stretch: Stretch | null): string {
  if (stretch === null) return "anywhere on the line";
  const { from, to } = stretch;
  return from === to ? `at ${formatFeet(from)}` : `from ${plainFeet(from)} to ${formatFeet(to)}`;
}
