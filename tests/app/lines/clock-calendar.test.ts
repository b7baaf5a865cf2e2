import ICAL from "ical.js";
import { expect, test } from "vitest";
import { clockCalendar } from "#app/lines/[lineId]/calendar.ics/clock-calendar.ts";
import { groupClocks } from "#app/lines/[lineId]/schedule/clock-groups.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";

function clock(key: string, on: string, rest: Partial<Clock> = {}): Clock {
  return {
    key,
    title: "Locate marks; latest start",
    meaning: "not-after",
    startedOn: "2026-11-23",
    on,
    at: "",
    sentence: "10 business days after Monday, November 23, 2026 is that day.",
    citation: "RCW 19.122.030",
    asOf: null,
    subjectId: "ticket",
    settled: false,
    telling: null,
    ...rest,
  };
}

function eventsOf(clocks: readonly Clock[], papers: readonly Clock[] = []): ICAL.Event[] {
  const text = clockCalendar({
    lineId: "fennel",
    name: "Cinder Alley, behind Fennel Row",
    clocks,
    papers,
    office: "https://office.example.org/office",
    address: "https://office.example.org/lines/fennel/schedule",
  });
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents("vevent").map((event) => new ICAL.Event(event));
}

test("clockCalendar() gives every running clock one all-day event on its own day", () => {
  const [event] = eventsOf([clock("rule:ticket:2026-11-23", "2026-12-08")]);
  expect(event?.startDate.isDate).toBe(true);
  expect(event?.startDate.toString()).toBe("2026-12-08");
  expect(event?.summary).toBe(
    "not after: Locate marks; latest start, Cinder Alley, behind Fennel Row",
  );
});

test("clockCalendar() leaves settled clocks out", () => {
  expect(eventsOf([clock("a", "2026-12-08", { settled: true })])).toEqual([]);
});

test("clockCalendar() keeps the UID when the day of the same clock moves", () => {
  const [before] = eventsOf([clock("rule:ticket:2026-11-23", "2026-12-08")]);
  const [after] = eventsOf([clock("rule:ticket:2026-11-24", "2026-12-09")]);
  expect(after?.uid).toBe(before?.uid);
});

test("clockCalendar() comes out the same byte for byte", () => {
  const facts = {
    lineId: "f",
    name: "F",
    clocks: [clock("a", "2026-12-08")],
    papers: [],
    office: "https://office.example.org/office",
    address: "https://office.example.org",
  };
  expect(clockCalendar(facts)).toBe(clockCalendar(facts));
});

test("groupClocks() tells what has passed from what runs, today still runs", () => {
  const groups = groupClocks(
    [
      clock("later", "2026-12-03"),
      clock("week", "2026-12-02"),
      clock("today", "2026-11-25"),
      clock("passed", "2026-11-24"),
      clock("settled", "2026-11-01", { settled: true }),
    ],
    "2026-11-25",
  );
  const keys = (clocks: readonly Clock[]) => clocks.map(({ key }) => key);
  expect(keys(groups.passed)).toEqual(["passed"]);
  expect(keys(groups.week)).toEqual(["today", "week"]);
  expect(keys(groups.later)).toEqual(["later"]);
  expect(keys(groups.settled)).toEqual(["settled"]);
});

test("clockCalendar() has the company’s papers under one UID in every line’s calendar", () => {
  const license = clock("paper:license", "2027-06-30", { title: "License", meaning: "expires" });
  const [event] = eventsOf([], [license]);
  expect(event?.uid).toBe("paper%3Alicense@office.wyebook");
  expect(event?.summary).toBe("expires on: License");
  expect(event?.startDate.toString()).toBe("2027-06-30");
});
