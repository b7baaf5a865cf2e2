import { expect, test } from "vitest";
import { drawnBox, LEAST_BOX, movedBox, resizedBox } from "#lib/domain/form/drawn-box.ts";

const PAGE = { width: 612, height: 792 };

test("a box is the same in whichever direction it is drawn, and ends at the edge of the page", () => {
  const box = { left: 100, top: 200, width: 150, height: 20 };
  const [from, to] = [
    { left: 100, top: 200 },
    { left: 250, top: 220 },
  ];
  expect(drawnBox(from, to, PAGE)).toEqual(box);
  expect(drawnBox(to, from, PAGE)).toEqual(box);
  expect(drawnBox(from, { left: 9_000, top: 9_000 }, PAGE)).toEqual({
    ...{ left: 100, top: 200, width: 512, height: 592 },
  });
});

test("a box is moved and resized as far as the page goes, and never too small to be typed into", () => {
  const box = { left: 100, top: 200, width: 150, height: 20 };
  expect(movedBox(box, { left: 4.5, top: -4.5 }, PAGE)).toMatchObject({ left: 104.5, top: 195.5 });
  expect(movedBox(box, { left: 900, top: -900 }, PAGE)).toEqual({ ...box, left: 462, top: 0 });
  expect(resizedBox(box, { left: 900, top: -900 }, PAGE)).toEqual({
    ...{ left: 100, top: 200, width: 512, height: LEAST_BOX },
  });
  const edge = drawnBox({ left: 611, top: 791 }, { left: 612, top: 792 }, PAGE);
  expect(edge).toEqual({ left: 604, top: 784, width: LEAST_BOX, height: LEAST_BOX });
});
