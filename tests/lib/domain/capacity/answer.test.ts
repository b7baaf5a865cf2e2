import { expect, test } from "vitest";
import { capacityAnswer } from "#lib/domain/capacity/answer.ts";
import { slopeFinding } from "#lib/domain/capacity/slopes.ts";
import { NO_CAPACITY } from "#tests/support/capacity.ts";

const at = (station: number, invert: number) => ({ station, invert, uncertainty: 2 });

test("capacityAnswer() counts the stretches by their verdict, the worst first", () => {
  const slopes = [
    slopeFinding(at(0, 0), at(1_000, 100), "eighth-inch"),
    slopeFinding(at(1_000, 100), at(2_000, 102), "eighth-inch"),
    slopeFinding(at(2_000, 102), at(3_000, 202), "eighth-inch"),
  ];
  expect(capacityAnswer({ ...NO_CAPACITY, slopes })).toEqual({
    head: "Slope: 1 section too flat, 2 steep enough.",
    rest: ["The flattest section is 0.20%, from 10.0 to 20.0 ft."],
  });
  expect(capacityAnswer({ ...NO_CAPACITY, slopes: slopes.slice(0, 1) })).toEqual({
    head: "Slope: steep enough.",
    rest: [],
  });
});

test("capacityAnswer() says that nothing is known while nothing is", () => {
  expect(capacityAnswer(NO_CAPACITY).head).toBe("Neither slope nor load is known yet.");
});

test("capacityAnswer() says that a slope over standing water is an average only", () => {
  const water = [{ from: 400, to: 700, depth: null }];
  const slopes = [
    slopeFinding(at(0, 0), at(1_000, 100), "eighth-inch", water),
    slopeFinding(at(1_000, 100), at(2_000, 300), "eighth-inch"),
  ];
  expect(capacityAnswer({ ...NO_CAPACITY, slopes })).toEqual({
    head: "Slope: 1 section average only because of standing water, 1 steep enough.",
    rest: ["The flattest section is 10.00% on average, from 0.0 to 10.0 ft."],
  });
});
