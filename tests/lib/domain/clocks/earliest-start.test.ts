import { expect, test } from "vitest";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import type { Hold } from "#lib/domain/facts/hold.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { federalHolidays } from "#lib/domain/time/federal-holidays.ts";
import { aHold } from "#tests/support/answers.ts";
import {
  aClockRule,
  aConsent,
  aCrossing,
  aFile,
  aHoliday,
  aLand,
  aLocateTicket,
  aNotice,
  anAddress,
  anAuthority,
  aParty,
  aPermit,
  aPermitStep,
  aPoint,
  aProperty,
  aRequirement,
  aRequirementMark,
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
    consents: (["enter", "dig"] as const).map((kind) =>
      aConsent(kind, { kind, partyId: "ada", propertyId: "nine" }),
    ),
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
    "Nothing entered here prevents starting today. The start must be by Thursday, December 3.",
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
  const because = "because the locate window opens then at 4:00 PM.";
  expect(on("2026-11-24")).toBe(`Cannot start before Thursday, November 26, ${because}`);
  expect(on("2026-11-23")).toBe(`Cannot start before Wednesday, November 25, ${because}`);
  expect(on("2026-11-22")).toMatch(/^Nothing entered here prevents starting today\./);
});

test("earliestStart() counts what was not called or sent yet as if it were today", () => {
  const start = earliestStart(readyFile({ locateTickets: [], notices: [] }), TODAY);
  expect(start.bars.map(({ until, because }) => [until, because])).toEqual([
    ["2026-12-01", "the locate is not called in yet; if called in today, the window opens then"],
    [
      "2026-11-29",
      "“Tell the block” can be met only from then on, counted from today (not notified yet: ada)",
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
    "Cannot start yet, because no side sewer permit is in force: side sewer permit SS-1 is in review; consent to dig at 9 Ropewalk Lane is not on file. Even then, not before Saturday, November 28, because the locate window opens then. The start must be by Wednesday, December 9.",
  );
});

test("earliestStart() waits for the consent of every lot that the work lies on, unless its easement is recorded", () => {
  const because = (facts: Parameters<typeof aFile>[0]) =>
    earliestStart(readyFile(facts), TODAY).bars.map((bar) => bar.because);
  const yes = aConsent("yes", { partyId: "ada", propertyId: "nine" });
  const properties = ["nine", "ten"].map((id) =>
    aProperty(id, { address: anAddress(`${id} Ropewalk Lane`) }),
  );
  const roles = ["ada", "bob"].map((id, at) => aRole(id, properties[at]?.id ?? ""));
  const land = [
    aLand("nine", { from: 0, to: 1_000, propertyId: "nine" }),
    aLand("ten", { from: 1_000, to: 3_000, propertyId: "ten" }),
  ];
  const both = {
    properties,
    parties: [aParty("ada"), aParty("bob")],
    roles,
    land,
    crossings: [],
    consents: [yes],
  };
  expect(because(both)).toContain("consent to dig at ten Ropewalk Lane is not on file");
  const bobs = aConsent("bobs", { partyId: "bob", propertyId: "ten" });
  expect(because({ ...both, consents: [yes, bobs] }).join()).not.toContain("Ropewalk");
  const lined = [aScopeItem("line", { kind: "line", from: 500, to: 1_500 })];
  expect(because({ ...both, scope: lined, consents: [] }).slice(-2)).toEqual([
    "consent to enter nine Ropewalk Lane is not on file",
    "consent to enter ten Ropewalk Lane is not on file",
  ]);
  const no = aConsent("no", {
    kind: "enter",
    state: "refused",
    partyId: "ada",
    propertyId: "nine",
  });
  expect(because({ consents: [yes, no] })).toEqual([
    "consent to enter 9 Ropewalk Lane is not on file",
  ]);
  const recorded = aCrossing("c", {
    propertyId: "nine",
    from: 0,
    to: 2_000,
    easement: "recorded",
  });
  expect(because({ consents: [], crossings: [recorded] })).toEqual([]);
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
  expect(earliestStart(readyFile(), TODAY, { holds: [hold], tieIns: [] }).sentence).toMatch(
    /^Cannot start yet, because a hold blocks the work: Run 1\./,
  );
  const waiver = { id: "w", holdKey: hold.key, reason: "Located by hand", by: "Dana", on: TODAY };
  expect(earliestStart(readyFile(), TODAY, { holds: [{ ...hold, waiver }], tieIns: [] }).day).toBe(
    TODAY,
  );
  expect(
    earliestStart(readyFile(), TODAY, { holds: [{ ...hold, stops: ["final-split"] }], tieIns: [] })
      .day,
  ).toBe(TODAY);
});

test("earliestStart() wants another call once a ticket has run out unused", () => {
  const locateTickets = [aLocateTicket("t", { calledOn: "2026-11-02" })];
  const start = earliestStart(readyFile({ locateTickets }), TODAY);
  expect(start.sentence).toBe(
    "Cannot start before Tuesday, December 1, because the locate ticket expired; if called in again today, the window opens then.",
  );
});

test("earliestStart() sees that a permit expired although nobody entered that", () => {
  const permits = [aPermit("p", { number: "SS-1", expiresOn: "2026-11-23" })];
  expect(earliestStart(readyFile({ permits }), TODAY).sentence).toMatch(
    /^Cannot start yet, because no side sewer permit is in force: side sewer permit SS-1 is issued and expired Monday, November 23, so it has to be extended or applied for again\./,
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
    /The locate or permit expires Thursday, December 3, before that: renew in time\.$/,
  );
});

test("earliestStart() asks for a permit where there is none", () => {
  expect(earliestStart(aFile(), TODAY).sentence).toBe(
    "Cannot start yet, because there is no side sewer permit.",
  );
});

test("earliestStart() has no day on a closed line", () => {
  const start = earliestStart(readyFile({ line: { closedOn: "2026-11-24" } }), TODAY);
  expect(start).toEqual({ day: null, latest: null, bars: [], sentence: "The file is closed." });
});

const FINAL = { permitSteps: [aPermitStep("s", "p", { state: "final", on: "2026-11-20" })] };

test("earliestStart() has nothing left to start once every permit that the work took is final", () => {
  const start = earliestStart(readyFile(FINAL), TODAY);
  expect(start).toMatchObject({ day: null, bars: [] });
  expect(start.sentence).toBe("Nothing left to start: side sewer permit SS-1 is final.");
});

test.each([
  ["final", "is final, so more work needs a new one"],
  ["expired", "has expired, so it has to be extended or applied for again"],
  ["withdrawn", "was withdrawn, so a new one has to be applied for"],
] as const)("earliestStart() says of a permit that is %s what it takes", (state, words) => {
  const permits = [aPermit("p", { number: "SS-1" }), aPermit("q", { number: "SS-2" })];
  const permitSteps = [
    aPermitStep("s", "p", { state, on: "2026-11-20" }),
    aPermitStep("t", "q", { state: "in-review", on: "2026-11-20" }),
  ];
  expect(earliestStart(readyFile({ permits, permitSteps }), TODAY).sentence).toContain(
    `no side sewer permit is in force: side sewer permit SS-1 ${words}, side sewer permit SS-2 is in review`,
  );
});

test("earliestStart() wants a street use permit where the street is dug, and takes the office's word that none applies", () => {
  const land = [aLand("street", { to: 1_000, kind: "right-of-way", propertyId: null })];
  const bars = (facts: Parameters<typeof aFile>[0]) =>
    earliestStart(readyFile({ land, ...facts }), TODAY).bars.map(({ because }) => because);
  expect(bars({})).toEqual([
    "there is no street use permit, and the street is dug from 5.0 to 10.0 ft",
  ]);
  const permits = [aPermit("p"), aPermit("street", { kind: "street-use", number: "SU-9" })];
  const issued = aPermitStep("s", "p", { state: "issued", on: "2026-11-20" });
  expect(bars({ permits, permitSteps: [issued] })).toEqual([
    "no street use permit is in force, and the street is dug from 5.0 to 10.0 ft: street use permit SU-9 is being drafted",
  ]);
  const street = aPermitStep("u", "street", { state: "issued", on: "2026-11-20" });
  expect(bars({ permits, permitSteps: [issued, street] })).toEqual([]);
  expect(bars({ scope: [aScopeItem("dig", { from: 1_200, to: 1_500 })] })).toEqual([]);
  expect(bars({ scope: [aScopeItem("line", { kind: "line", from: 0, to: 1_500 })] })).toEqual([]);
  const asks = aRequirement("su", {
    title: "Street opening",
    permitKind: "street-use",
    due: "work",
  });
  const authority = { ...AUTHORITY, requirements: [asks] };
  const mark = aRequirementMark("su", {
    state: "does-not-apply",
    note: "Covered by the sewer permit",
  });
  expect(bars({ authority, requirementMarks: [mark] })).toEqual([]);
});

test("earliestStart() goes by the edge of the street where nobody said whose land it is", () => {
  const points = [aPoint("edge", { kind: "right-of-way-line", station: 800 })];
  const crossings = [aCrossing("c", { propertyId: "nine", from: 700, to: 2_000 })];
  expect(earliestStart(readyFile({ points, crossings }), TODAY).bars[0]?.because).toBe(
    "there is no street use permit, and the street is dug from 5.0 to 7.0 ft",
  );
});

test("earliestStart() wants every permit that the authority's requirements name", () => {
  const asks = aRequirement("c", {
    title: "Connection permit",
    permitKind: "connection",
    due: "work",
  });
  const authority = { ...AUTHORITY, requirements: [asks] };
  expect(earliestStart(readyFile({ authority }), TODAY).bars[0]).toMatchObject({
    because: "there is no connection permit, and City of Quillhaven asks for it: Connection permit",
    citation: "QMC 13.08.050",
  });
});

test("earliestStart() asks the holds of what is done, where it is done", () => {
  const at = (from: number, to: number) => ({
    holds: [aHold("h", { stops: ["digging"], stretch: { from, to }, subjectLabel: "Here" })],
    tieIns: [],
  });
  expect(earliestStart(readyFile(), TODAY, at(3_000, 4_000)).day).toBe(TODAY);
  expect(earliestStart(readyFile(), TODAY, at(1_400, 4_000)).sentence).toContain("Here");
  const lining = { holds: [aHold("h", { stops: ["lining"] })], tieIns: [] };
  expect(earliestStart(readyFile(), TODAY, lining).day).toBe(TODAY);
  const scope = [aScopeItem("w", { kind: "line", from: 500, to: 1_500 })];
  expect(earliestStart(readyFile({ scope }), TODAY, lining).day).toBeNull();
});
