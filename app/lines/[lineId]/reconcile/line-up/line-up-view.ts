import type { Alignment } from "#lib/domain/findings/report.ts";
import { type Cft, formatFeet } from "#lib/domain/length/station.ts";
import { readingOf, stretchOf } from "#lib/domain/reconcile/fit.ts";

interface Moved {
  readonly shift: Cft;
  readonly scale: number;
}

/**
 * `2.4 ft downstream, stretched by 1.2%`, `in meters`, `from the other end, its zero at 163.0 ft`:
 * what is done to a record to lay it on the camera's axis.
 */
export function movedWords(move: Moved): string {
  const { shift } = move;
  const { meters, reversed } = readingOf(move);
  const stretch = stretchOf(move);
  const moved =
    shift === 0 ? "" : `${formatFeet(Math.abs(shift))} ${shift > 0 ? "upstream" : "downstream"}`;
  const percent = `${(Math.abs(stretch) / 10_000).toFixed(1)}%`;
  const parts = [
    meters ? "in meters" : "",
    reversed ? `from the other end, its zero at ${formatFeet(shift)}` : moved,
    stretch === 0 ? "" : `${stretch > 0 ? "stretched" : "shortened"} by ${percent}`,
  ];
  return parts.filter((part) => part !== "").join(", ") || "no shift";
}

export function isMoved({ shift, scale }: Moved): boolean {
  return shift !== 0 || scale !== 0;
}

/** What the search proposes, where a person decided otherwise. */
export function setAside({ decision, proposed, shift, scale }: Alignment): Moved | null {
  const same = proposed.shift === shift && proposed.scale === scale;
  return decision === null || same ? null : proposed;
}

/** Feet as typed with a sign for the direction, or percent: `-2.4` → hundredths or parts per million. */
export function signedNumber(text: string, unit: number): number | null {
  const plain = text
    .trim()
    .replace(/^[−–]/, "-")
    .replace(/\s*(ft|feet|%)$/i, "")
    .replace(",", ".");
  if (plain === "") return 0;
  if (!/^[+-]?(\d+(\.\d*)?|\.\d+)$/.test(plain)) return null;
  return Math.round(Number(plain) * unit) + 0;
}

/** The first sentence, without its period, and what follows it. */
export function splitSentence(text: string): readonly [string, string] {
  const end = text.search(/\.(\s|$)/);
  return end < 0 ? [text, ""] : [text.slice(0, end), text.slice(end + 1).trim()];
}
