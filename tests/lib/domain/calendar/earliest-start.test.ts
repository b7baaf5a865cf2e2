import { expect, test } from "vitest";
import { earliestStart } from "#lib/domain/calendar/earliest-start.ts";
import { federalHolidays } from "#lib/domain/calendar/federal-holidays.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Hold } from "#lib/domain/tiein/hold.ts";
import {
  aClockRule,
  aConsent,
  aCrossing,
  aFile,
  aHoliday,
  aLocateTicket,
  aNotice,
  anAddress,
  anAuthority,
  aParty,
  aPermit,
  aPermitStep,
  aProperty,
  aRole,
  aScopeItem,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

const AUTHORITY = anAuthority({
  clockRules: [
    aClockRule("Locate marks", {
      event: "locate-called",
      count: 2,
      unit: "business-days",
      fullDays: true,
      roll: "none",
      meaning: "not-before",
    }),
    aClockRule("Latest start", {
      event: "locate-called",
      count: 10,
      unit: "business-days",
      roll: "none",
      meaning: "not-after",
    }),
    aClockRule("Tell the block", {
      event: "work-begins",
      count: 72,
      unit: "hours",
      way: "before",
      roll: "none",
    }),
  ],
  holidays: [2026, 2027].flatMap(federalHolidays).map(({ day, name }) => aHoliday(day, { name })),
});

/** Permitted, told, located, and everybody whose lot is dug has agreed. */
function readyFile(facts: Parameters<typeof aFile>[0] = {}): LineFile {
  return aFile({
    authority: AUTHORITY,
    properties: [aProperty("nine", { address: anAddress("9 Ropewalk Lane"), stake: "crossed" })],
    parties: [aParty("ada")],
    roles: [aRole("ada", "nine", { role: "crossed-lot-owner" })],
    crossings: [aCrossing("c", { propertyId: "nine", from: 0, to: 2_000 })],
    scope: [aScopeItem("dig", { from: 500, to: 1_500 })],
    consents: [aConsent("yes", { partyId: "ada", propertyId: "nine" })],
    permits: [aPermit("p", { number: "SS-1" })],
    permitSteps: [aPermitStep("s", "p", { state: "issued", on: "2026-11-20" })],
    notices: [
      aNotice("n", {
        kind: "work-start",
        state: "sent",
        createdOn: "2026-11-20",
        partyId: "ada",
        propertyId: "nine",
      }),
    ],
    locateTickets: [aLocateTicket("t", { calledOn: "2026-11-18" })],
    ...facts,
  });
}

test("earliestStart() has nothing against a start today, and says by when it must be", () => {
  const start = earliestStart(readyFile(), TODAY);
  expect(start).toMatchObject({ day: TODAY, latest: "2026-12-03", bars: [] });
  expect(start.sentence).toBe(
    "Nothing that is entered here stands against a start today. The start must be by Thursday, December 3.",
  );
});

test("earliestStart() waits for the locate window and says how it was counted", () => {
  const locateTickets = [aLocateTicket("t", { calledOn: "2026-11-24" })];
  const start = earliestStart(readyFile({ locateTickets }), TODAY);
  expect(start.day).toBe("2026-11-28");
  expect(start.sentence).toBe(
    "Cannot start before Saturday, November 28, because the locate window opens then. The start must be by Wednesday, December 9.",
  );
  expect(start.bars[0]?.sentence).toMatch(/^2 full business days after Tuesday, November 24, 2026/);
});

test("earliestStart() says the hour at which a window of hours opens, on that very day too", () => {
  const opens = aClockRule("Locate marks", {
    event: "locate-called",
    count: 48,
    unit: "hours",
    roll: "none",
    meaning: "not-before",
  });
  const authority = { ...AUTHORITY, clockRules: [opens] };
  const on = (calledOn: string) =>
    earliestStart(
      readyFile({
        authority,
        locateTickets: [aLocateTicket("t", { calledOn, calledAt: "16:00" })],
      }),
      TODAY,
    ).sentence;
  const because = "because the locate window opens then at 4:00 pm.";
  expect(on("2026-11-24")).toBe(`Cannot start before Thursday, November 26, ${because}`);
  expect(on("2026-11-23")).toBe(`Cannot start before Wednesday, November 25, ${because}`);
  expect(on("2026-11-22")).toMatch(/^Nothing that is entered here stands against a start today\./);
});

test("earliestStart() counts what was not called or sent yet as if it were today", () => {
  const start = earliestStart(readyFile({ locateTickets: [], notices: [] }), TODAY);
  expect(start.bars.map(({ until, because }) => [until, because])).toEqual([
    ["2026-12-01", "the locate is not called in yet; called in today, its window opens then"],
    [
      "2026-11-29",
      "“Tell the block” can be kept only from then on, counted from today (not told yet: ada)",
    ],
  ]);
  expect(start.day).toBe("2026-12-01");
  expect(start.latest).toBe(null);
});

test("earliestStart() names no day while something without a day is open", () => {
  const permitSteps = [aPermitStep("s", "p", { state: "in-review", on: "2026-11-20" })];
  const locateTickets = [aLocateTicket("t", { calledOn: "2026-11-24" })];
  const start = earliestStart(readyFile({ permitSteps, locateTickets, consents: [] }), TODAY);
  expect(start.day).toBe(null);
  expect(start.sentence).toBe(
    "Cannot start yet, because no side sewer permit is in force: side sewer permit SS-1 is in review; consent to dig at 9 Ropewalk Lane is not in hand. Even then not before Saturday, November 28, because the locate window opens then. The start must be by Wednesday, December 9.",
  );
});

test("earliestStart() minds a hold that stops digging until it is waived", () => {
  const hold: Hold = {
    key: "crossing-seen:run",
    cause: "crossing-seen",
    subjectId: "run",
    subjectLabel: "Run 1",
    stops: ["capping", "lining", "digging"],
    stretch: null,
    sentence: "",
    closes: "",
    waiver: null,
  };
  expect(earliestStart(readyFile(), TODAY, [hold]).sentence).toMatch(
    /^Cannot start yet, because a hold stops digging: Run 1\./,
  );
  const waiver = { id: "w", holdKey: hold.key, reason: "Located by hand", by: "Dana", on: TODAY };
  expect(earliestStart(readyFile(), TODAY, [{ ...hold, waiver }]).day).toBe(TODAY);
  expect(earliestStart(readyFile(), TODAY, [{ ...hold, stops: ["final-split"] }]).day).toBe(TODAY);
});

test("earliestStart() wants another call once a ticket has run out unused", () => {
  const locateTickets = [aLocateTicket("t", { calledOn: "2026-11-02" })];
  const start = earliestStart(readyFile({ locateTickets }), TODAY);
  expect(start.sentence).toBe(
    "Cannot start before Tuesday, December 1, because the locate ticket ran out; called in again today, its window opens then.",
  );
});

test("earliestStart() sees that a permit expired although nobody entered that", () => {
  const permits = [aPermit("p", { number: "SS-1", expiresOn: "2026-11-23" })];
  expect(earliestStart(readyFile({ permits }), TODAY).sentence).toMatch(
    /^Cannot start yet, because no side sewer permit is in force: side sewer permit SS-1 is issued and expired Monday, November 23\./,
  );
});

test("earliestStart() warns where the ticket will run out before the start", () => {
  const slow = aClockRule("Tell the block", {
    event: "work-begins",
    count: 720,
    unit: "hours",
    way: "before",
    roll: "none",
  });
  const authority = { ...AUTHORITY, clockRules: [...AUTHORITY.clockRules.slice(0, 2), slow] };
  expect(earliestStart(readyFile({ authority, notices: [] }), TODAY).sentence).toMatch(
    /What allows a start runs out Thursday, December 3, before that: call or apply again in time\.$/,
  );
});

test("earliestStart() asks for a permit where there is none", () => {
  expect(earliestStart(aFile(), TODAY).sentence).toBe(
    "Cannot start yet, because there is no side sewer permit.",
  );
});

test("earliestStart() has no day on a closed line", () => {
  const start = earliestStart(readyFile({ line: { closedOn: "2026-11-24" } }), TODAY);
  expect(start).toEqual({ day: null, latest: null, bars: [], sentence: "The line is closed." });
});
