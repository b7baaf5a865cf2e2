import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { laterBy, minutesOf, timeOf } from "#lib/domain/calendar/time-of-day.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { dyeWait, LEAST_WAIT } from "#lib/domain/tiein/dye-wait.ts";
import { proposeTestDay, tieInsToTest } from "#lib/domain/tiein/plan-test-day.ts";
import type { TestDay, TestStop } from "#lib/domain/tiein/test-day.ts";
import { testDayPeople } from "#lib/domain/tiein/test-day-people.ts";
import {
  aClockRule,
  aConsent,
  aFile,
  anAnchor,
  anAuthority,
  anEntry,
  anObservation,
  aPairing,
  aParty,
  aProperty,
  aRecord,
  aRole,
  aRun,
  aTieIn,
  aUnit,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

/** 12 is on record at 20 ft; T2 at 50 ft is nobody's; 14 and 16 may be on the line. */
function aStreet(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  return aFile({
    properties: [
      aProperty("12"),
      aProperty("14", { stake: "candidate" }),
      aProperty("16", { stake: "candidate" }),
      aProperty("40", { stake: "neighbour" }),
    ],
    records: [aRecord("card")],
    entries: [anEntry("e", { distance: 2_000, propertyId: "12" })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("t1"), aTieIn("t2", { kind: "unknown" })],
    observations: [
      anObservation("o1", { counter: 2_000, tieInId: "t1" }),
      anObservation("o2", { counter: 5_000, tieInId: "t2" }),
    ],
    pairings: [aPairing("e", "t1")],
    ...rest,
  });
}

function proposed(file = aStreet(), asked: Parameters<typeof proposeTestDay>[2] = {}) {
  return proposeTestDay(file, reportOn(file, TODAY), asked);
}

function aDay(stops: readonly TestStop[], overrides: Partial<TestDay> = {}): TestDay {
  return {
    id: "day",
    on: "2026-12-03",
    controlPropertyId: "12",
    stops,
    note: "",
    plannedBy: "Dana Okafor",
    plannedOn: TODAY,
    ...overrides,
  };
}

describe("dyeWait()", () => {
  const near = { tieIn: aTieIn("T"), station: 2_000 };
  test("is never under 15 minutes", () => {
    expect(dyeWait(near, { coverage: [], extent: 0 }).minutes).toBe(LEAST_WAIT);
  });
  // 5 + 2 × (100 + 620) ft / 60 ft a minute = 29, up to 30; by hand.
  test("grows with the pipe to go, and more where water stands in it", () => {
    const far = { ...near, station: 62_000 };
    expect(dyeWait(far, { coverage: [], extent: 0 }).minutes).toBe(30);
    const wet = [{ from: 1_000, to: 2_000, state: "under-water" as const }];
    // 5 + 2 × 24 = 53, up to 55.
    expect(dyeWait(far, { coverage: wet, extent: 0 }).minutes).toBe(55);
    const above = [{ from: 62_000, to: 63_000, state: "under-water" as const }];
    expect(dyeWait(far, { coverage: above, extent: 0 }).minutes).toBe(30);
  });
  test("takes the whole line where the tie-in has no station", () => {
    const lost = { ...near, station: null };
    expect(dyeWait(lost, { coverage: [], extent: 62_000 }).minutes).toBe(30);
  });
});

describe("proposeTestDay()", () => {
  test("doses the control first, then each candidate while the open tie-in is watched", () => {
    const { stops, controlPropertyId } = proposed();
    expect(controlPropertyId).toBe("12");
    expect(stops.map(({ propertyId }) => propertyId)).toEqual(["12", "14", "16"]);
    expect(stops.every(({ tieInIds }) => tieInIds.join() === "t2")).toBe(true);
  });

  test("has one dosing at a time, with time to walk, and another colour each", () => {
    const { stops } = proposed(aStreet(), { startsAt: 8 * 60 + 30 });
    expect(stops.map(({ startsAt }) => startsAt)).toEqual(["08:30", "08:55", "09:20"]);
    expect(new Set(stops.map(({ colour }) => colour)).size).toBe(3);
  });

  test("says why: the control, the order and each wait", () => {
    const { reasons } = proposed();
    expect(reasons[0]).toBe(
      "Control: 12 Fennel Row, whose tie-in t1 at 20.0 ft is settled. Its dye has to show there and not from t2.",
    );
    expect(reasons).toHaveLength(4);
    expect(reasons[2]).toMatch(/^t2: watch for 15 minutes/);
    expect(reasons[3]).toContain("common practice");
  });

  test("without a settled tie-in there is no control, and that is said", () => {
    const { controlPropertyId, reasons } = proposed(aStreet({ pairings: [], entries: [] }));
    expect(controlPropertyId).toBeNull();
    expect(reasons[0]).toContain("without a control");
  });

  test("plans nothing where nothing is open", () => {
    const tieIns = [aTieIn("t1"), aTieIn("t2", { propertyId: "14", ownerAccepted: true })];
    const file = aStreet({ tieIns });
    expect(tieInsToTest(reportOn(file, TODAY))).toEqual([]);
    expect(proposed(file).stops).toEqual([]);
  });

  test("of two open tie-ins, upstream-first begins with those of the upper one", () => {
    const extra = {
      tieIns: [...aStreet().tieIns, aTieIn("t3", { kind: "unknown" })],
      observations: [
        ...aStreet().observations,
        anObservation("o3", { counter: 8_000, tieInId: "t3" }),
      ],
    };
    const { stops } = proposed(aStreet(extra), { order: "upstream-first" });
    expect(stops[1]?.tieInIds).toContain("t3");
  });
});

describe("testDayPeople()", () => {
  const stop = proposed().stops[1] as TestStop;
  const people = (file: LineFile, day = aDay([stop])) =>
    testDayPeople(file, reportOn(file, TODAY), day);

  test("water stays off wherever flow passes the watched place, or may", () => {
    const file = aStreet({ units: [aUnit("u1", "14"), aUnit("u2", "14")] });
    expect(people(file).waterOff).toEqual([
      { propertyId: "14", unitIds: ["u1", "u2"], passes: "perhaps" },
      { propertyId: "16", unitIds: [], passes: "perhaps" },
    ]);
    const below = aDay([{ ...stop, tieInIds: ["t1", "t2"] }]);
    expect(people(file, below).waterOff[0]).toMatchObject({ propertyId: "12", passes: "surely" });
  });

  test("from the first dosing to the end of the last wait", () => {
    const { stops } = proposed();
    expect(people(aStreet(), aDay(stops))).toMatchObject({ from: "09:00", to: "10:05" });
  });

  test("occupants let in, else owners, with the consent and the last day for notice", () => {
    const file = aStreet({
      parties: [aParty("owner"), aParty("tenant")],
      roles: [aRole("owner", "14"), aRole("tenant", "14", { role: "occupant" })],
      consents: [aConsent("c", { kind: "enter", partyId: "tenant", propertyId: "14" })],
      authority: anAuthority({
        clockRules: [
          aClockRule("entry", {
            event: "tenant-entry",
            way: "before",
            count: 2,
            unit: "calendar-days",
            roll: "none",
            citation: "QMC 9.1",
          }),
        ],
      }),
    });
    expect(people(file).letIn).toEqual([
      {
        propertyId: "14",
        partyIds: ["tenant"],
        consented: true,
        noticeBy: "2026-12-01",
        citation: "QMC 9.1",
      },
    ]);
    expect(people(aStreet()).letIn[0]).toMatchObject({ consented: false, noticeBy: null });
  });
});

test("times of day go there and back, and round midnight", () => {
  expect(laterBy("23:50", 15)).toBe("00:05");
  expect(laterBy("", 15)).toBe("");
  expect(minutesOf("24:00")).toBeNull();
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 1_439 }), (minutes) => {
      expect(minutesOf(timeOf(minutes))).toBe(minutes);
    }),
  );
});
