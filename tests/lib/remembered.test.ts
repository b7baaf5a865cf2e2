import { expect, test } from "vitest";
import { remembered } from "#lib/remembered.ts";

test("remembered() works once while all it is given stays the same thing, and anew otherwise", () => {
  let worked = 0;
  const sum = remembered((numbers: readonly number[], more: number) => {
    worked += 1;
    return numbers.reduce((total, each) => total + each, more);
  });
  const [one, same] = [
    [1, 2],
    [1, 2],
  ];
  expect([sum(one, 1), sum(one, 1), worked]).toEqual([4, 4, 1]);
  expect([sum(one, 5), worked]).toEqual([8, 2]);
  expect([sum(same, 5), worked]).toEqual([8, 3]);
  expect([sum(one, 5), worked]).toEqual([8, 3]);
});
