import fc from "fast-check";
import { expect, test } from "vitest";
import { formatTime, minutesOf, parseTime, timeOf } from "#lib/domain/time/time-of-day.ts";

test.each([
  ["07:00", "7:00 AM"],
  ["16:05", "4:05 PM"],
  ["12:00", "noon"],
  ["12:30", "12:30 PM"],
  ["00:00", "midnight"],
  ["00:10", "12:10 AM"],
  ["", ""],
])("formatTime() writes %s as %s", (kept, words) => {
  expect(formatTime(kept)).toBe(words);
});

test.each([
  ["4:05 PM", "16:05"],
  ["4 PM", "16:00"],
  ["4p", "16:00"],
  ["7 a.m.", "07:00"],
  ["16:05", "16:05"],
  ["07:00", "07:00"],
  ["12 am", "00:00"],
  ["noon", "12:00"],
])("parseTime() takes %s as %s", (typed, kept) => {
  expect(parseTime(typed)).toBe(kept);
});

test.each(["4", "4:05", "12:30", "25:00", "13 pm", "0 am", "7:60 AM", "soon", "16"])(
  "parseTime() refuses %s, which is no time or could be morning or evening",
  (typed) => {
    expect(parseTime(typed)).toBeNull();
  },
);

test("parseTime() reads back every time that formatTime() writes", () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_439 }), (minutes) => {
      const kept = timeOf(minutes);
      expect(parseTime(formatTime(kept))).toBe(kept);
      expect(minutesOf(kept)).toBe(minutes);
    }),
  );
});
