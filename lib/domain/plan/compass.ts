import type { Side } from "../facts/line.ts";

/** The eight winds that people name a side by. */
const COMPASS_POINTS = [
  "north",
  "northeast",
  "east",
  "southeast",
  "south",
  "southwest",
  "west",
  "northwest",
] as const;
export type CompassPoint = (typeof COMPASS_POINTS)[number];

/** Degrees clockwise from north, 0 to below 360. */
export function turned(bearing: number): number {
  return ((bearing % 360) + 360) % 360;
}

/** The nearest of the eight winds. */
export function compassOf(bearing: number): CompassPoint {
  return COMPASS_POINTS[Math.round(turned(bearing) / 45) % 8] ?? "north";
}

/** Which way a side faces where the line runs upstream on this bearing; null for the crown and the unknown. */
export function sideBearing(bearing: number, side: Side): number | null {
  if (side === "left") return turned(bearing - 90);
  return side === "right" ? turned(bearing + 90) : null;
}

/** As a deed writes it: `N 35° E`, `due south`. */
export function formatBearing(bearing: number): string {
  const whole = turned(bearing);
  const due = ["north", "east", "south", "west"][whole / 90];
  if (due !== undefined) return `due ${due}`;
  const isNorth = whole < 90 || whole > 270;
  const isEast = whole < 180;
  const angle = isNorth ? Math.min(whole, 360 - whole) : Math.abs(180 - whole);
  return `${isNorth ? "N" : "S"} ${plain(angle)}° ${isEast ? "E" : "W"}`;
}

function plain(angle: number): string {
  return Number(angle.toFixed(1)).toString();
}

const WINDS: Readonly<Record<string, number>> = {
  n: 0,
  ne: 45,
  e: 90,
  se: 135,
  s: 180,
  sw: 225,
  w: 270,
  nw: 315,
};

/**
 * A bearing as typed: degrees clockwise from north (`35`, `35°`), a quadrant (`N 35 E`), or a wind
 * (`NE`, `due west`, `northeast`); to half a degree. Null where it is none.
 */
export function parseBearing(text: string): number | null {
  const plainText = text
    .trim()
    .toLowerCase()
    .replace(/^due\s+/, "")
    .replace(/north/g, "n")
    .replace(/south/g, "s")
    .replace(/east/g, "e")
    .replace(/west/g, "w")
    .replace(/[°.]?\s*(deg|degrees)\b|°/g, " ")
    .trim();
  const wind = WINDS[plainText.replace(/[\s-]/g, "")];
  if (wind !== undefined) return wind;
  const quadrant = /^([ns])\s*(\d{1,2}(?:\.\d+)?)\s*([ew])$/.exec(plainText);
  if (quadrant) {
    const angle = Number(quadrant[2]);
    if (angle > 90) return null;
    const [isNorth, isEast] = [quadrant[1] === "n", quadrant[3] === "e"];
    if (isNorth) return half(isEast ? angle : 360 - angle);
    return half(isEast ? 180 - angle : 180 + angle);
  }
  if (!/^\d{1,3}(\.\d+)?$/.test(plainText)) return null;
  const degrees = Number(plainText);
  return degrees <= 360 ? half(degrees) : null;
}

function half(degrees: number): number {
  return turned(Math.round(degrees * 2) / 2);
}
