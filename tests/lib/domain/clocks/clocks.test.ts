import { describe, expect, test } from "vitest";
import { clocksOf } from "#lib/domain/clocks/clocks.ts";
import type { ClockRule } from "#lib/domain/facts/clock-rule.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Clock } from "#lib/domain/findings/clock.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import {
  aClockRule,
  aDelivery,
  aFile,
  aHoliday,
  aLocateTicket,
  aNotice,
  anAuthority,
  anEvent,
  anInspection,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aReply,
  aRole,
  aSplit,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";
const HOLIDAYS = [2026, 2027]
  .flatMap(federalHolidays)
  .map(({ day, name }) => aHoliday(day, { name }));

function fileUnder(rules: readonly ClockRule[], facts: Parameters<typeof aFile>[0] = {}): LineFile {
  return aFile({ authority: anAuthority({ clockRules: rules, holidays: HOLIDAYS }), ...facts });
}

/** Day, title and whether it is settled, for each clock. */
function told(clocks: readonly Clock[]): [string, string, boolean][] {
  return clocks.map(({ on, title, settled }) => [on, title, settled]);
}

const OPENS = aClockRule("Locate marks", {
  event: "locate-called",
  count: 2,
  unit: "business-days",
  fullDays: true,
  roll: "none",
  meaning: "not-before",
});
const CLOSES = aClockRule("Latest start", {
  event: "locate-called",
  count: 10,
  unit: "business-days",
  roll: "none",
  meaning: "not-after",
});
const EXPIRES = aClockRule("Permit expires", {
  event: "permit-issued",
  count: 90,
  roll: "none",
  meaning: "expires",
});

test("clocksOf() is empty on a file in which nothing has happened", () => {
  expect(clocksOf(aFile(), TODAY)).toEqual([]);
  expect(clocksOf(fileUnder([OPENS, CLOSES, EXPIRES]), TODAY)).toEqual([]);
});

describe("letters", () => {
  const sent = (id: string, rest = {}) =>
    aNotice(id, { partyId: "ada", state: "sent", replyBy: "2026-12-01", ...rest });
  const parties = [aParty("ada", { name: "Ada Winfield" })];

  test("clocksOf() runs to the reply-by day of a letter that was sent, and not of a draft", () => {
    const file = aFile({
      parties,
      notices: [sent("n"), aNotice("draft", { replyBy: "2026-12-02" })],
      deliveries: [aDelivery("d", "n", { sentOn: "2026-11-16" })],
    });
    expect(clocksOf(file, TODAY)).toEqual([
      {
        key: "reply:n",
        title: "Reply from Ada Winfield",
        meaning: "due-by",
        startedOn: "2026-11-16",
        on: "2026-12-01",
        at: "",
        sentence:
          "The letter of Monday, November 16, 2026 asks for a reply by Tuesday, December 1, 2026.",
        citation: "",
        asOf: null,
        subjectId: "n",
        settled: false,
        telling: null,
      },
    ]);
  });

  test("clocksOf() settles a reply by the reply, by a newer letter, and by the letter's coming back", () => {
    const settled = (facts: Parameters<typeof aFile>[0]) =>
      clocksOf(aFile({ parties, ...facts }), TODAY).map((clock) => clock.settled);
    expect(settled({ notices: [sent("n")], replies: [aReply("r", "n")] })).toEqual([true]);
    expect(settled({ notices: [sent("n"), sent("newer")] })).toEqual([true, false]);
    expect(settled({ notices: [sent("n"), sent("other", { kind: "test-visit" })] })).toEqual([
      false,
      false,
    ]);
    const returned = aDelivery("d", "n", { outcome: "returned" });
    expect(settled({ notices: [sent("n")], deliveries: [returned] })).toEqual([true]);
  });

  test("clocksOf() starts one clock for the letters of a kind, a day and a way, with days for mail", () => {
    const rule = aClockRule("Objections", { count: 14, mailDays: 3 });
    const file = fileUnder([rule], {
      parties,
      notices: [
        sent("a", { replyBy: null }),
        sent("b", { replyBy: null, partyId: "bo" }),
        sent("c", { replyBy: null, partyId: "cy" }),
      ],
      deliveries: [
        aDelivery("1", "a", { sentOn: "2026-11-12" }),
        aDelivery("2", "b", { sentOn: "2026-11-12", method: "certified" }),
        aDelivery("3", "c", { sentOn: "2026-11-12", method: "by-hand" }),
      ],
    });
    expect(told(clocksOf(file, TODAY))).toEqual([
      ["2026-11-27", "Objections (letter of November 12, 2026)", false],
      ["2026-11-30", "Objections (2 letters of November 12, 2026)", false],
    ]);
  });

  test("clocksOf() counts certified letters alone for a rule on certified letters", () => {
    const rule = aClockRule("Cure period", { event: "certified-letter-mailed", count: 30 });
    const file = fileUnder([rule], {
      parties,
      notices: [sent("a", { replyBy: null }), sent("b", { replyBy: null })],
      deliveries: [aDelivery("1", "a"), aDelivery("2", "b", { method: "certified" })],
      replies: [aReply("r", "b")],
    });
    expect(clocksOf(file, TODAY)).toMatchObject([
      { subjectId: "b", on: "2026-12-16", settled: true },
    ]);
  });

  test("clocksOf() starts a split's clock when its letters go, and settles it by a newer split", () => {
    const rule = aClockRule("Objections to the split", { event: "split-sent", count: 30 });
    const facts = {
      notices: [sent("a", { replyBy: null, splitId: "one" })],
      deliveries: [aDelivery("1", "a", { sentOn: "2026-11-02" })],
    };
    const one = aSplit("one");
    const running = clocksOf(fileUnder([rule], { ...facts, splits: [one] }), TODAY);
    expect(told(running)).toEqual([["2026-12-02", "Objections to the split (split 1)", false]]);
    const splits = [one, aSplit("two", { number: 2 })];
    expect(clocksOf(fileUnder([rule], { ...facts, splits }), TODAY)[0]?.settled).toBe(true);
  });
});

describe("locate tickets", () => {
  test("clocksOf() opens the window on its first allowed day and closes it on its last", () => {
    const file = fileUnder([OPENS, CLOSES], {
      locateTickets: [aLocateTicket("t", { calledOn: "2026-11-24" })],
    });
    const clocks = clocksOf(file, TODAY);
    expect(told(clocks)).toEqual([
      ["2026-11-28", "Locate marks (ticket 26-555-0171)", false],
      ["2026-12-09", "Latest start (ticket 26-555-0171)", false],
    ]);
    expect(clocks[0]).toMatchObject({ citation: "QMC 13.08.070", asOf: "2026-10-01" });
    expect(clocksOf(file, "2026-11-28")[0]?.settled).toBe(true);
  });

  test("clocksOf() settles the clocks of a ticket that a newer one stands for", () => {
    const file = fileUnder([CLOSES], {
      locateTickets: [
        aLocateTicket("new", { calledOn: "2026-11-24" }),
        aLocateTicket("old", { calledOn: "2026-11-02" }),
      ],
    });
    expect(clocksOf(file, TODAY).map(({ subjectId, settled }) => [subjectId, settled])).toEqual([
      ["old", true],
      ["new", false],
    ]);
  });

  test("clocksOf() settles the latest start once work has begun in time", () => {
    const ticket = aLocateTicket("t", { calledOn: "2026-11-16", workBeginsOn: "2026-11-23" });
    const file = fileUnder([CLOSES], { locateTickets: [ticket] });
    expect(clocksOf(file, "2026-11-22")[0]?.settled).toBe(false);
    expect(clocksOf(file, "2026-11-23")[0]?.settled).toBe(true);
  });

  test("clocksOf() works notices back from the day on which the ticket has the work begin", () => {
    const rule = aClockRule("Tell the block", {
      event: "work-begins",
      count: 10,
      way: "before",
      roll: "backwards",
    });
    const facts = {
      properties: [aProperty("12")],
      parties: [aParty("ada")],
      roles: [aRole("ada", "12")],
      locateTickets: [aLocateTicket("t", { workBeginsOn: "2026-12-14" })],
    };
    const letter = { kind: "work-start", state: "sent", partyId: "ada", propertyId: "12" } as const;
    expect(told(clocksOf(fileUnder([rule], facts), TODAY))).toEqual([
      ["2026-12-04", "Tell the block", false],
    ]);
    const notices = [aNotice("n", { ...letter, createdOn: "2026-12-02" })];
    expect(clocksOf(fileUnder([rule], { ...facts, notices }), TODAY)[0]?.settled).toBe(true);
    expect(clocksOf(fileUnder([rule], facts), "2026-12-15")[0]?.settled).toBe(true);
  });
});

describe("hours", () => {
  const OPENS_IN_HOURS = aClockRule("Locate marks", {
    event: "locate-called",
    count: 48,
    unit: "hours",
    roll: "none",
    meaning: "not-before",
  });
  const BEFORE = aClockRule("Tell occupants", {
    event: "drains-paused",
    count: 24,
    unit: "hours",
    way: "before",
    roll: "none",
  });
  const when = (file: ReturnType<typeof fileUnder>, today = TODAY) =>
    clocksOf(file, today).map(({ on, at, settled }) => [on, at, settled]);

  test("clocksOf() counts from the hour of a call, and from the end of its day without one", () => {
    const called = { calledOn: "2026-11-23" };
    const noted = { locateTickets: [aLocateTicket("t", { ...called, calledAt: "16:00" })] };
    expect(when(fileUnder([OPENS_IN_HOURS], noted))).toEqual([["2026-11-25", "16:00", false]]);
    const bare = { locateTickets: [aLocateTicket("t", called)] };
    expect(when(fileUnder([OPENS_IN_HOURS], bare))).toEqual([["2026-11-26", "", false]]);
  });

  test("clocksOf() keeps a window that opens in the day running through that day", () => {
    const called = aLocateTicket("t", { calledOn: "2026-11-23", calledAt: "16:00" });
    const file = fileUnder([OPENS_IN_HOURS], { locateTickets: [called] });
    expect(when(file, "2026-11-25")).toEqual([["2026-11-25", "16:00", false]]);
    expect(when(file, "2026-11-26")).toEqual([["2026-11-25", "16:00", true]]);
  });

  test("clocksOf() counts hours back from an event's time, and from the start of its day without one", () => {
    const pause = (at: string) => ({
      events: [anEvent("e", { event: "drains-paused", on: "2026-12-01", at })],
    });
    expect(when(fileUnder([BEFORE], pause("07:00")))).toEqual([["2026-11-30", "07:00", false]]);
    expect(when(fileUnder([BEFORE], pause("")))).toEqual([["2026-11-29", "", false]]);
  });

  test("clocksOf() takes the hour of a start from a dated event of the same day", () => {
    const rule = { ...BEFORE, event: "work-begins" } as const;
    const locateTickets = [aLocateTicket("t", { workBeginsOn: "2026-12-01" })];
    const events = [anEvent("e", { event: "work-begins", on: "2026-12-01", at: "07:00" })];
    expect(when(fileUnder([rule], { locateTickets, events }))).toEqual([
      ["2026-11-30", "07:00", false],
    ]);
    const own = [aLocateTicket("t", { workBeginsOn: "2026-12-01", workBeginsAt: "09:30" })];
    expect(when(fileUnder([rule], { locateTickets: own, events }))).toEqual([
      ["2026-11-30", "09:30", false],
    ]);
  });

  test("clocksOf() says where a state's rule was counted over federal holidays only", () => {
    const rule = { ...OPENS, citation: "RCW 19.122.030" };
    const locateTickets = [aLocateTicket("t", { calledOn: "2026-11-24" })];
    const file = fileUnder([rule], { locateTickets });
    expect(clocksOf(file, TODAY)[0]?.sentence).toMatch(
      /\. Only federal holidays are entered, and RCW 19\.122\.030 is a state’s law: /,
    );
    expect(reportOn(file, TODAY).problems).toContainEqual(
      expect.objectContaining({
        path: "authority.clockRules.0.citation",
        reason: "only-federal-holidays",
      }),
    );
  });
});

describe("permits", () => {
  const permits = [aPermit("p", { number: "SS-1" })];
  const issued = aPermitStep("s", "p", { state: "issued", on: "2026-11-20" });

  test("clocksOf() counts a permit's expiry from the day of its issue", () => {
    const file = fileUnder([EXPIRES], { permits, permitSteps: [issued] });
    expect(told(clocksOf(file, TODAY))).toEqual([
      ["2027-02-18", "Permit expires (Side sewer permit SS-1)", false],
    ]);
  });

  test("clocksOf() lets the printed day outrank the computed one, and says so", () => {
    const printed = [aPermit("p", { number: "SS-1", expiresOn: "2027-01-31" })];
    const [clock] = clocksOf(
      fileUnder([EXPIRES], { permits: printed, permitSteps: [issued] }),
      TODAY,
    );
    expect(clock).toMatchObject({
      on: "2027-01-31",
      sentence:
        "The expiration date printed on the permit (Sunday, January 31, 2027) controls. Under the rule: 90 calendar days after Friday, November 20, 2026 is Thursday, February 18, 2027.",
    });
  });

  test("clocksOf() keeps the printed day without any rule", () => {
    const printed = [aPermit("p", { expiresOn: "2027-01-31" })];
    expect(told(clocksOf(aFile({ permits: printed, permitSteps: [issued] }), TODAY))).toEqual([
      ["2027-01-31", "Permit expires (Side sewer permit)", false],
    ]);
  });

  test("clocksOf() keeps the old day after an extension until its own is entered", () => {
    const extended = aPermitStep("x", "p", { state: "extended", on: "2027-02-10" });
    const [clock] = clocksOf(
      fileUnder([EXPIRES], { permits, permitSteps: [issued, extended] }),
      TODAY,
    );
    expect(clock).toMatchObject({ on: "2027-02-18", settled: false });
    expect(clock?.sentence).toMatch(
      /It was extended on Wednesday, February 10, 2027: enter the date printed on the extension\.$/,
    );
  });

  test("clocksOf() settles a permit's expiry once it is final", () => {
    const final = aPermitStep("f", "p", { state: "final", on: "2026-12-20" });
    const file = fileUnder([EXPIRES], { permits, permitSteps: [issued, final] });
    expect(clocksOf(file, TODAY)[0]?.settled).toBe(true);
  });

  test("clocksOf() counts from the last time that corrections were asked, until they are answered", () => {
    const rule = aClockRule("Answer corrections", { event: "corrections-asked", count: 30 });
    const asked = [
      aPermitStep("1", "p", { state: "corrections", on: "2026-11-02" }),
      aPermitStep("2", "p", { state: "submitted", on: "2026-11-06" }),
      aPermitStep("3", "p", { state: "corrections", on: "2026-11-20" }),
    ];
    const open = clocksOf(fileUnder([rule], { permits, permitSteps: asked }), TODAY);
    expect(open).toMatchObject([{ on: "2026-12-21", settled: false }]);
    const answered = [...asked, aPermitStep("4", "p", { state: "submitted", on: "2026-11-24" })];
    const closed = clocksOf(fileUnder([rule], { permits, permitSteps: answered }), TODAY);
    expect(closed).toMatchObject([{ settled: true }]);
  });

  test("clocksOf() counts the days to appeal from a denial, until it is appealed", () => {
    const rule = aClockRule("Appeal", { event: "permit-denied", count: 14 });
    const denied = [aPermitStep("1", "p", { state: "denied", on: "2026-11-20" })];
    const open = clocksOf(fileUnder([rule], { permits, permitSteps: denied }), TODAY);
    expect(open).toMatchObject([{ on: "2026-12-04", settled: false }]);
    const appealed = [...denied, aPermitStep("2", "p", { state: "appealed", on: "2026-11-24" })];
    const closed = clocksOf(fileUnder([rule], { permits, permitSteps: appealed }), TODAY);
    expect(closed).toMatchObject([{ settled: true }]);
  });

  test("clocksOf() runs to booked inspections and leaves canceled ones out", () => {
    const inspections = [
      anInspection("i", "p", { bookedFor: "2026-12-02", inspector: "R. Tam" }),
      anInspection("done", "p", { bookedFor: "2026-12-01", result: "passed" }),
      anInspection("off", "p", { result: "cancelled" }),
    ];
    const clocks = clocksOf(aFile({ permits, inspections }), TODAY);
    expect(told(clocks)).toEqual([
      ["2026-12-01", "Inspection: Open trench", true],
      ["2026-12-02", "Inspection: Open trench", false],
    ]);
    expect(clocks[1]?.sentence).toBe("Scheduled with R. Tam for Wednesday, December 2, 2026.");
  });
});

describe("other events", () => {
  const ORDER = aClockRule("Comply with the order", { count: 30, event: "authority-order" });
  const PAUSE = aClockRule("Tell occupants", {
    event: "drains-paused",
    count: 24,
    unit: "hours",
    way: "before",
    roll: "backwards",
  });

  test("clocksOf() counts from an order until the authority is answered", () => {
    const events = [anEvent("e", { note: "Case 26-118" })];
    expect(told(clocksOf(fileUnder([ORDER], { events }), TODAY))).toEqual([
      ["2026-12-21", "Comply with the order (Case 26-118)", false],
    ]);
    const notices = [
      aNotice("n", { kind: "authority-response", state: "sent", createdOn: "2026-11-24" }),
    ];
    expect(clocksOf(fileUnder([ORDER], { events, notices }), TODAY)[0]?.settled).toBe(true);
  });

  test("clocksOf() wants occupants told on the last business day before a pause on Monday", () => {
    const facts = {
      properties: [aProperty("12")],
      parties: [aParty("ada")],
      roles: [aRole("ada", "12", { role: "occupant" })],
      events: [anEvent("e", { event: "drains-paused", on: "2026-12-07" })],
    };
    expect(told(clocksOf(fileUnder([PAUSE], facts), TODAY))).toEqual([
      ["2026-12-04", "Tell occupants", false],
    ]);
    const letter = {
      kind: "drain-pause",
      state: "sent",
      partyId: "ada",
      propertyId: "12",
    } as const;
    const notices = [aNotice("n", { ...letter, createdOn: "2026-12-03" })];
    expect(clocksOf(fileUnder([PAUSE], { ...facts, notices }), TODAY)[0]?.settled).toBe(true);
  });

  test("clocksOf() starts one clock for an event that is also in the permit's steps", () => {
    const file = fileUnder([EXPIRES], {
      permits: [aPermit("p")],
      permitSteps: [aPermitStep("s", "p", { state: "issued", on: "2026-11-20" })],
      events: [anEvent("e", { event: "permit-issued", on: "2026-11-20" })],
    });
    expect(clocksOf(file, TODAY)).toHaveLength(1);
  });

  test("clocksOf() settles everything on a closed line", () => {
    const file = fileUnder([ORDER, OPENS, CLOSES], {
      line: { closedOn: "2026-11-24" },
      events: [anEvent("e")],
      locateTickets: [aLocateTicket("t")],
    });
    expect(clocksOf(file, TODAY).every(({ settled }) => settled)).toBe(true);
    expect(clocksOf(file, TODAY)).toHaveLength(3);
  });
});
