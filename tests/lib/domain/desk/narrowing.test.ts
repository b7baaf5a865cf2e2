import fc from "fast-check";
import { expect, test } from "vitest";
import { DUE_KINDS, WAITS_ON } from "#lib/domain/desk/answer.ts";
import {
  countOf,
  countsOf,
  type DueCount,
  EVERYTHING,
  endOfWeek,
  narrowedAddress,
  narrowingOf,
} from "#lib/domain/desk/narrowing.ts";

const WHO = { userId: "user-1", today: "2026-11-25" };

test("endOfWeek() is the Sunday, also of a Sunday and a Monday", () => {
  expect(endOfWeek("2026-11-25")).toBe("2026-11-29");
  expect(endOfWeek("2026-11-29")).toBe("2026-11-29");
  expect(endOfWeek("2026-11-30")).toBe("2026-12-06");
});

test("narrowingOf() reads an address for whoever opens it; words it does not know narrow nothing", () => {
  expect(narrowingOf({ whose: "mine", waits: "utility", when: "week" }, WHO)).toEqual({
    keeper: "user-1",
    waitsOn: "utility",
    until: "2026-11-29",
  });
  expect(narrowingOf({ whose: "none" }, WHO).keeper).toBe("");
  expect(narrowingOf({ whose: "", waits: "moon", when: "soon" }, WHO)).toEqual(EVERYTHING);
  expect(narrowingOf({}, WHO)).toEqual(EVERYTHING);
});

test("narrowedAddress() keeps what is chosen and leaves out the rest", () => {
  expect(narrowedAddress("/", {})).toBe("/");
  expect(narrowedAddress("/due/late", { whose: "mine", waits: "" }, { page: "2" })).toBe(
    "/due/late?whose=mine&page=2",
  );
  expect(narrowedAddress("/", { whose: "a&b" })).toBe("/?whose=a%26b");
});

const counts = fc.array(
  fc.record<DueCount>({
    keeper: fc.constantFrom("", "user-1", "user-2"),
    waitsOn: fc.constantFrom(...WAITS_ON),
    kind: fc.constantFrom(...DUE_KINDS),
    soon: fc.boolean(),
    count: fc.integer({ min: 1, max: 20 }),
  }),
);

test("countsOf(): what waits on each adds up to all, and narrowing never shows more", () => {
  fc.assert(
    fc.property(counts, fc.constantFrom(null, "", "user-1"), (rows, keeper) => {
      const all = countOf(rows, { ...EVERYTHING, keeper });
      const parts = WAITS_ON.map((waitsOn) => countOf(rows, { ...EVERYTHING, keeper, waitsOn }));
      expect(parts.reduce((sum, each) => sum + each, 0)).toBe(all);
      const soon = countsOf(rows, { ...EVERYTHING, keeper, until: "2026-11-29" });
      for (const kind of DUE_KINDS)
        expect(soon[kind]).toBeLessThanOrEqual(countsOf(rows, EVERYTHING)[kind]);
    }),
  );
});
