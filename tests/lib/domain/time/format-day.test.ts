import { expect, test } from "vitest";
import {
  formatBriefDay,
  formatDate,
  formatDay,
  formatFullDay,
  formatNearDay,
  onNearDay,
} from "#lib/domain/time/format-day.ts";

const TODAY = "2026-11-25";

test.each([
  ["2026-12-03", "Thursday, December 3"],
  ["2026-11-16", "Monday, November 16"],
  ["2027-01-04", "Monday, January 4"],
  ["2027-12-03", "December 3, 2027"],
  ["2026-06-01", "June 1, 2026"],
])("formatDay() writes %s as %s", (day, words) => {
  expect(formatDay(day, TODAY)).toBe(words);
});

test.each([
  ["2026-11-24", "yesterday", "yesterday"],
  ["2026-11-25", "today", "today"],
  ["2026-11-26", "tomorrow", "tomorrow"],
  ["2026-12-01", "Tuesday", "on Tuesday"],
  ["2026-12-02", "Wednesday, December 2", "on Wednesday, December 2"],
  ["2026-11-23", "Monday, November 23", "on Monday, November 23"],
])("formatNearDay() says %s as %s", (day, words, inSentence) => {
  expect(formatNearDay(day, TODAY)).toBe(words);
  expect(onNearDay(day, TODAY)).toBe(inSentence);
});

test("formatFullDay() and formatDate() leave nothing to today", () => {
  expect(formatFullDay("2026-12-03")).toBe("Thursday, December 3, 2026");
  expect(formatDate("2026-12-03")).toBe("December 3, 2026");
});

test.each([
  ["2026-11-25", "today"],
  ["2026-12-01", "Tuesday"],
  ["2026-12-02", "Wed, Dec 2"],
  ["2026-11-11", "Wed, Nov 11"],
  ["2025-11-11", "Tue, Nov 11, 2025"],
])("formatBriefDay() says %s as %s", (day, words) => {
  expect(formatBriefDay(day, TODAY)).toBe(words);
});
