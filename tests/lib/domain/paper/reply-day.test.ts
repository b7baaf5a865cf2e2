import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { replyDayFor } from "#lib/domain/paper/reply-day.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aClockRule,
  aFile,
  anAuthority,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aTestDay,
  aTestStop,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const RULE = aClockRule("Answer to a letter", { count: 14, roll: "none", mailDays: 3 });

/** Letters have an answer after two weeks and the days for mail, and 12 is visited on a day. */
function visited(on: string) {
  const file: LineFile = aFile({
    authority: anAuthority({ clockRules: [RULE] }),
    properties: [aProperty("12")],
    parties: [aParty("ott")],
    roles: [aRole("ott", "12")],
    testDays: [aTestDay([aTestStop("12")], { on })],
  });
  return { file, report: reportOn(file, TODAY), office: anOffice() };
}

test("replyDayFor() never asks for an answer on or after the day that the letter tells of", () => {
  const asked = replyDayFor(visited("2026-12-03"), "test-visit");
  expect(asked?.on).toBe("2026-12-02");
  expect(asked?.sentence).toMatch(/too late: the visit is on December 3, 2026/);
  expect(replyDayFor(visited(TODAY), "test-visit")?.on).toBe(TODAY);
});

test("replyDayFor() keeps to the rule where there is time, and where the letter tells of no day", () => {
  expect(replyDayFor(visited("2027-01-20"), "test-visit")?.on).toBe("2026-12-12");
  expect(replyDayFor(visited("2026-12-03"), "finding")?.on).toBe("2026-12-12");
});
