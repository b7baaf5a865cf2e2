import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { movedAround } from "#lib/domain/narration/log/moved.ts";

const LOG = draftLog(
  `0:00 Zero at the main.
1:00 Ten feet, wye.
1:30 Crack.
2:00 Twenty feet, wye.
2:30 Roots.
3:00 Thirty feet, wye.
4:00 Open joint.`,
  { looks: "downstream", measuredFrom: null, mainCounter: null },
);
const ROWS = LOG.drafts.map(({ key, counter, videoSecond, reading }) => ({
  key,
  counter,
  second: videoSecond,
  reading,
}));
const keyOf = (fault: string) => LOG.drafts.find((row) => row.fault === fault)?.key ?? "";
const wye = (feet: number) => LOG.drafts.find((row) => row.counter === feet * 100)?.key ?? "";

test("rows next to a mended distance are worked out anew, others stay", () => {
  const moved = movedAround(ROWS, LOG.readings, new Map([[wye(20), 2400]]));
  expect([...moved.keys()].sort()).toEqual([keyOf("crack"), keyOf("roots")].sort());
  expect(moved.get(keyOf("crack"))).toBeGreaterThan(1600);
  expect(moved.get(keyOf("crack"))).toBeLessThan(1800);
  expect(moved.get(keyOf("roots"))).toBeGreaterThan(2600);
});

test("a row that was worked out and is typed over holds like a reading", () => {
  const moved = movedAround(ROWS, LOG.readings, new Map([[keyOf("crack"), 1900]]));
  expect(moved.size).toBe(0);
});

test("what lies beyond moves along with the last distance, and nothing moves without a mend", () => {
  const joint = LOG.drafts.find((row) => row.fault === "open-joint");
  const moved = movedAround(ROWS, LOG.readings, new Map([[wye(30), 3300]]));
  expect(joint?.reading).toBe("beyond");
  expect(moved.get(joint?.key ?? "")).toBe((joint?.counter ?? 0) + 300);
  expect(movedAround(ROWS, LOG.readings, new Map()).size).toBe(0);
});
