import { expect, test } from "vitest";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { anAddress } from "#tests/support/file.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const LINE = sampleLine();

function gaps(
  [party, property]: readonly [string, string],
  overrides: Parameters<typeof sampleNotice>[2],
  line = LINE,
): string[] {
  return letterGaps({ ...line, notice: sampleNotice(party, property, overrides) });
}

test("letterGaps() finds nothing wanting in a complete letter", () => {
  expect(gaps(["lodz", "p18"], { kind: "proposed-split" })).toEqual([]);
  expect(gaps(["tenant", "p16"], { kind: "drain-pause", replyBy: null })).toEqual([]);
});

test("letterGaps() asks for the day to answer by", () => {
  expect(gaps(["lodz", "p18"], { kind: "proposed-split", replyBy: null })).toEqual([
    "No reply-by date is set.",
  ]);
  expect(gaps(["lodz", "p18"], { kind: "finding", replyBy: null })).toEqual([]);
});

test("letterGaps() wants a street address where the post carries the letter, and only there", () => {
  const parties = LINE.file.parties.map((party) =>
    party.id === "lodz" ? { ...party, mailing: { ...anAddress(""), zip: "" } } : party,
  );
  const input = {
    ...LINE,
    file: { ...LINE.file, parties },
    notice: sampleNotice("lodz", "p18", { kind: "finding" }),
  };
  const lacks = ["The address of Agnieszka Łódź has no street or no ZIP code."];
  expect(letterGaps(input)).toEqual(lacks);
  expect(letterGaps(input, { method: "certified" })).toEqual(lacks);
  expect(letterGaps(input, { method: "mail-message" })).toEqual([]);
  expect(letterGaps(input, { method: "by-hand" })).toEqual([]);
});

test("letterGaps() asks for day and hours of a pause of drains", () => {
  const without = { ...LINE, file: { ...LINE.file, events: [] } };
  expect(gaps(["tenant", "p16"], { kind: "drain-pause", replyBy: null }, without)[0]).toMatch(
    /day of the shutdown/,
  );
  const noHours = LINE.file.events.map((event) => ({ ...event, until: "" }));
  const silent = { ...LINE, file: { ...LINE.file, events: noHours } };
  expect(gaps(["tenant", "p16"], { kind: "drain-pause", replyBy: null }, silent)[0]).toMatch(
    /hours of the shutdown/,
  );
});

test("letterGaps() says when a split is out of date", () => {
  const splits = LINE.report.splits.map((outcome) => ({ ...outcome, basis: "other" }));
  const stale = { ...LINE, report: { ...LINE.report, splits } };
  expect(gaps(["lodz", "p18"], { kind: "proposed-split" }, stale)[0]).toMatch(
    /^The split is out of date/,
  );
});

test("letterGaps() says when nothing shows well enough that a property is on the line", () => {
  expect(gaps(["larkspur", "p16"], { kind: "share-demand" })).toEqual([
    "Nothing on file shows well enough that 16 Fennel Row is on the line; a payment demand needs level 5 evidence or the owner’s written acceptance.",
  ]);
});

test("letterGaps() says when an inquiry names no tie-in", () => {
  expect(gaps(["nils", "p11"], { kind: "tie-in-inquiry" })).toEqual([
    "The letter does not say which tie-in it asks about.",
  ]);
});

test("letterGaps() asks for an answer before the day that the letter tells of", () => {
  const late = { kind: "drain-pause", replyBy: "2026-12-09" } as const;
  const events = LINE.file.events.map((each) =>
    each.event === "drains-paused" ? { ...each, on: "2026-12-02" } : each,
  );
  const line = { ...LINE, file: { ...LINE.file, events } };
  expect(gaps(["tenant", "p16"], late, line)).toEqual([
    "The reply-by date, December 9, 2026, is too late: drains are shut down on December 2, 2026. Choose an earlier day.",
  ]);
  expect(gaps(["tenant", "p16"], { ...late, replyBy: "2026-12-02" }, line)).toHaveLength(1);
  expect(gaps(["tenant", "p16"], { ...late, replyBy: "2026-12-01" }, line)).toEqual([]);
  const meeting = {
    id: "m",
    on: "2026-12-03",
    at: "18:30",
    until: "20:00",
    place: "Hall",
    note: "",
  };
  const invited = { ...LINE, file: { ...LINE.file, meetings: [meeting] } };
  expect(gaps(["lodz", "p18"], { kind: "meeting", replyBy: "2026-12-09" }, invited)).toEqual([
    "The reply-by date, December 9, 2026, is too late: the meeting is on December 3, 2026. Choose an earlier day.",
  ]);
});
