import { expect, test } from "vitest";
import { placeMarks, roundScale } from "#lib/domain/split/bars.ts";

test("placeMarks() moves a mark a lane down where it would cover another", () => {
  expect(placeMarks([100, 100, 900, null, 110], 1000)).toEqual([
    { at: 0, percent: 10, lane: 0 },
    { at: 1, percent: 10, lane: 1 },
    { at: 4, percent: 11, lane: 2 },
    { at: 2, percent: 90, lane: 0 },
  ]);
});

test("placeMarks() keeps the least and the most on the bar, and moves what is between them", () => {
  expect(placeMarks([100, 870, 900], 1000).map(({ at, lane }) => [at, lane])).toEqual([
    [0, 0],
    [1, 1],
    [2, 0],
  ]);
});

test("placeMarks() moves the most a lane down where it would cover the least", () => {
  expect(placeMarks([100, 120], 1000).map(({ lane }) => lane)).toEqual([0, 1]);
});

test("placeMarks() puts everything at the left end where there is no scale", () => {
  expect(placeMarks([0], 0)).toEqual([{ at: 0, percent: 0, lane: 0 }]);
});

test("roundScale() ends where quarters of the scale are round dollars", () => {
  expect(roundScale(333_334)).toBe(400_000);
  expect(roundScale(400_000)).toBe(400_000);
  expect(roundScale(400_001)).toBe(800_000);
  expect(roundScale(1)).toBe(10_000);
  expect(roundScale(810_000)).toBe(1_000_000);
});
