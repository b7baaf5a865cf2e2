import { expect, test } from "vitest";
import { answersOn } from "#lib/domain/desk/answers.ts";
import { dueThings } from "#lib/domain/desk/due.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

/** Every text in a value that has a day as `2026-11-25` inside of other words. */
function bareDates(value: unknown, path = ""): string[] {
  if (typeof value === "string")
    return /\d{4}-\d{2}-\d{2}/.test(value) && /\s/.test(value) ? [`${path}: ${value}`] : [];
  if (value === null || typeof value !== "object") return [];
  return Object.entries(value).flatMap(([key, each]) => bareDates(each, `${path}.${key}`));
}

test("what people read of a line has no date as 2026-11-25", () => {
  const { file, office } = sampleLine();
  const report = reportOn(file, "2026-11-25");
  expect(bareDates(report)).toEqual([]);
  expect(bareDates(answersOn(file, report, office))).toEqual([]);
  expect(bareDates(dueThings(file, report))).toEqual([]);
  expect(bareDates(composePacket({ file, report, office }).sheets)).toEqual([]);
});
