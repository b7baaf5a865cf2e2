import type { FormPage, FormPlace } from "../facts/form.ts";

type Box = Omit<FormPlace, "page">;

/** A point on a page, in points from its upper left. */
export interface PagePoint {
  readonly left: number;
  readonly top: number;
}

/** No box is smaller, in points. */
export const LEAST_BOX = 8;

const within = (value: number, least: number, most: number) =>
  Math.min(Math.max(value, least), Math.max(least, most));

const tenth = (points: number) => Math.round(points * 10) / 10;

/** The box between two points that somebody drew on a page, in whichever direction, kept on the page. */
export function drawnBox(from: PagePoint, to: PagePoint, page: FormPage): Box {
  const x = [from.left, to.left].map((each) => within(each, 0, page.width));
  const y = [from.top, to.top].map((each) => within(each, 0, page.height));
  const left = Math.min(...x);
  const top = Math.min(...y);
  return fitted({ left, top, width: Math.max(...x) - left, height: Math.max(...y) - top }, page);
}

/** A box moved by so much, as far as the page goes. */
export function movedBox(box: Box, by: PagePoint, page: FormPage): Box {
  return fitted({ ...box, left: box.left + by.left, top: box.top + by.top }, page);
}

/** A box made wider and higher by so much, as far as the page goes. */
export function resizedBox(box: Box, by: PagePoint, page: FormPage): Box {
  return {
    ...box,
    width: tenth(within(box.width + by.left, LEAST_BOX, page.width - box.left)),
    height: tenth(within(box.height + by.top, LEAST_BOX, page.height - box.top)),
  };
}

function fitted(box: Box, page: FormPage): Box {
  const width = within(box.width, LEAST_BOX, page.width);
  const height = within(box.height, LEAST_BOX, page.height);
  return {
    left: tenth(within(box.left, 0, page.width - width)),
    top: tenth(within(box.top, 0, page.height - height)),
    width: tenth(width),
    height: tenth(height),
  };
}
