import type { PlanPicture, ShapeKind, Spot } from "../facts/plan.ts";
import { type Cft, formatFeet, toTenth } from "../length/station.ts";
import { outlineOf } from "./outline.ts";
import { type Pixel, spotOfPixel } from "./picture.ts";

/** What is pressed to lay a picture on the ground: two points a known length apart, and the main connection. */
export const FIT_POINTS = ["one", "other", "main"] as const;
export type FitPoint = (typeof FIT_POINTS)[number];

/** What of it has been pressed. */
export type Fit = Readonly<Record<FitPoint, Pixel | null>>;

export const NO_FIT: Fit = { one: null, other: null, main: null };

/** What is to be pressed next; null once all of it is there. */
export function nextToFit(fit: Fit): FitPoint | null {
  return FIT_POINTS.find((point) => fit[point] === null) ?? null;
}

/** A picture's own size in pixels. */
interface Size {
  readonly width: number;
  readonly height: number;
}

/** Where on the screen a picture is shown, in the same units as a press. */
interface Shown extends Size {
  readonly left: number;
  readonly top: number;
}

/** The whole pixel of a picture under a press, or the nearest one of its edge; null while none of it shows. */
export function pixelAt(press: Pixel, shown: Shown, size: Size): Pixel | null {
  if (shown.width <= 0 || shown.height <= 0) return null;
  const x = ((press.x - shown.left) / shown.width) * size.width;
  const y = ((press.y - shown.top) / shown.height) * size.height;
  return inside({ x, y }, size);
}

/** The pixel so many to the right and down, kept on the picture. */
export function pixelBeside({ x, y }: Pixel, by: Pixel, size: Size): Pixel {
  return inside({ x: x + by.x, y: y + by.y }, size);
}

function inside({ x, y }: Pixel, { width, height }: Size): Pixel {
  return { x: within(x, width), y: within(y, height) };
}

function within(value: number, most: number): number {
  return Math.min(Math.max(Math.round(value), 0), most) + 0;
}

/** With one more corner, unless it is the last one again: a double press is one corner. */
export function withCorner(corners: readonly Pixel[], corner: Pixel): readonly Pixel[] {
  const last = corners.at(-1);
  return last?.x === corner.x && last.y === corner.y ? corners : [...corners, corner];
}

/** Corners that a shape needs to be drawn: a building is closed, everything else is a line. */
export function fewestCorners(kind: ShapeKind): number {
  return kind === "building" ? 3 : 2;
}

/** The outline that was pressed on a picture, as a shape keeps it; empty where the picture has no scale. */
export function tracedOutline(picture: PlanPicture, corners: readonly Pixel[]): string {
  return outlineOf(corners.flatMap((corner) => spotOfPixel(picture, corner) ?? []));
}

/** A place on the ground from the main connection: `12.4 ft east, 3.0 ft south of the main`. */
export function spotWords({ east, north }: Spot): string {
  const parts = [way(east, "east", "west"), way(north, "north", "south")].filter(
    (part) => part !== "",
  );
  return parts.length === 0 ? "at the main" : `${parts.join(", ")} of the main`;
}

function way(length: Cft, ahead: string, back: string): string {
  const tenth = toTenth(length);
  return tenth === 0 ? "" : `${formatFeet(Math.abs(tenth))} ${tenth > 0 ? ahead : back}`;
}
