import type { PlanPicture, Spot } from "../facts/plan.ts";

/** A place on a picture, in pixels from its left and upper edge. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** Hundredths of a foot to a pixel; null while its two points are the same or nothing apart. */
export function pictureScale(picture: PlanPicture): number | null {
  const pixels = Math.hypot(picture.otherX - picture.oneX, picture.otherY - picture.oneY);
  return pixels === 0 || picture.apart <= 0 ? null : picture.apart / pixels;
}

/** Why a picture can't be laid on the ground, with the field that is to be mended; null: it can. */
export function pictureProblem(picture: PlanPicture): { path: string; message: string } | null {
  if (picture.apart <= 0)
    return {
      path: "apart",
      message: "Enter the distance between the two points, in feet above zero",
    };
  if (picture.oneX === picture.otherX && picture.oneY === picture.otherY)
    return { path: "otherX", message: "Click two different points: these are the same one" };
  return null;
}

/** Where a pixel lies on the ground; null where the picture has no scale. */
export function spotOfPixel(picture: PlanPicture, { x, y }: Pixel): Spot | null {
  const scale = pictureScale(picture);
  if (scale === null) return null;
  const [right, up] = [(x - picture.mainX) * scale, (picture.mainY - y) * scale];
  const [sin, cos] = sineOf(picture.up);
  return { east: right * cos + up * sin, north: up * cos - right * sin };
}

/** Where a place on the ground lies on the picture; null where the picture has no scale. */
export function pixelOfSpot(picture: PlanPicture, { east, north }: Spot): Pixel | null {
  const scale = pictureScale(picture);
  if (scale === null) return null;
  const [sin, cos] = sineOf(picture.up);
  const [right, up] = [east * cos - north * sin, north * cos + east * sin];
  return { x: picture.mainX + right / scale, y: picture.mainY - up / scale };
}

function sineOf(degrees: number): [number, number] {
  const angle = (degrees * Math.PI) / 180;
  return [Math.sin(angle), Math.cos(angle)];
}
