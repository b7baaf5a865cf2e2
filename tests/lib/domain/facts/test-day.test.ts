import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { dyeWait, LEAST_WAIT } from "#lib/domain/testing/dye-wait.ts";
import { proposeTestDay, tieInsToTest } from "#lib/domain/testing/plan-test-day.ts";
import { plantNotice, testDayPeople } from "#lib/domain/testing/test-day-people.ts";
import { refusedStops, stopsInForce, testIdOf } from "#lib/domain/testing/test-day-results.ts";
import { laterBy, minutesOf, timeOf } from "#lib/domain/time/time-of-day.ts";
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
  aPoint,
  aProperty,
  aRecord,
  aRole,
  aRun,
  aTest,
  aTestDay,
  aTestStop,
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
  return aTestDay(stops, { controlPropertyId: "12", ...overrides });
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

/** As aStreet(), with T3 at 80 ft as well and 18 beside the others. */
function twoPlaces(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  const street = aStreet();
  return aStreet({
    tieIns: [...street.tieIns, aTieIn("t3", { kind: "unknown" })],
    observations: [...street.observations, anObservation("o3", { counter: 8_000, tieInId: "t3" })],
    ...rest,
  });
}

function refusal(partyId: string, propertyId: string) {
  return aConsent(`no-${partyId}`, {
    kind: "enter",
    partyId,
    propertyId,
    state: "refused",
    stateOn: "2026-11-23",
  });
}

describe("proposeTestDay()", () => {
  test("doses the control first, then each candidate while the open tie-in is watched", () => {
    const { stops, controlPropertyId } = proposed();
    expect(controlPropertyId).toBe("12");
    expect(stops.map(({ propertyId }) => propertyId)).toEqual(["12", "14", "16"]);
    expect(stops.every(({ tieInIds }) => tieInIds.join() === "t2")).toBe(true);
  });

  test("watches one place at a time: tie-ins farther apart than a view are taken in turn", () => {
    const { stops } = proposed(twoPlaces());
    expect(stops.every(({ tieInIds }) => tieInIds.length === 1)).toBe(true);
    const places = stops.map(({ tieInIds }) => tieInIds[0]);
    expect(places).toEqual([...places].toSorted());
    expect(new Set(places)).toEqual(new Set(["t2", "t3"]));
    // The camera is moved once: what is watched changes once over the day.
    expect(places.filter((place, at) => at > 0 && place !== places[at - 1])).toHaveLength(1);
  });

  test("watches tie-ins together that lie within one view", () => {
    const street = aStreet();
    const file = aStreet({
      tieIns: [...street.tieIns, aTieIn("t3", { kind: "unknown" })],
      observations: [
        ...street.observations,
        anObservation("o3", { counter: 5_200, tieInId: "t3", clock: 3 }),
      ],
    });
    expect(new Set(proposed(file).stops.map(({ tieInIds }) => tieInIds.join()))).toEqual(
      new Set(["t2,t3"]),
    );
  });

  test("takes the control from below: dye from above would color the pipe before the camera", () => {
    const above = {
      entries: [anEntry("e", { distance: 7_000, propertyId: "12" })],
      observations: [
        anObservation("o1", { counter: 7_000, tieInId: "t1" }),
        anObservation("o2", { counter: 5_000, tieInId: "t2" }),
      ],
    };
    const { controlPropertyId, stops, reasons } = proposed(aStreet(above));
    expect(controlPropertyId).toBeNull();
    expect(stops.map(({ propertyId }) => propertyId)).not.toContain("12");
    expect(reasons.join(" ")).toContain("No address below");
  });

  test("without a control below, doses the pipe first from an access above and looks for it to pass", () => {
    const file = aStreet({
      pairings: [],
      entries: [],
      tieIns: [
        aTieIn("t1", { propertyId: "12", ownerAccepted: true }),
        aTieIn("t2", { kind: "unknown" }),
      ],
      points: [
        aPoint("low", { station: 1_000 }),
        aPoint("high", { station: 9_000, kind: "cleanout" }),
        aPoint("curb", { station: 6_000, kind: "curb" }),
      ],
    });
    const { stops, reasons } = proposed(file);
    expect(stops[0]).toMatchObject({ propertyId: null, pointId: "high", tieInIds: ["t2"] });
    expect(stops.slice(1).every(({ pointId }) => pointId === null)).toBe(true);
    expect(reasons.join(" ")).toContain(
      "dye goes into the pipe itself first, at the cleanout at 90.0 ft",
    );
    expect(reasons.join(" ")).toContain("below level 5");
  });

  test("leaves out who refused entry, and says so", () => {
    const file = aStreet({
      parties: [aParty("nils")],
      roles: [aRole("nils", "14")],
      consents: [refusal("nils", "14")],
    });
    const { stops, reasons } = proposed(file);
    expect(stops.map(({ propertyId }) => propertyId)).toEqual(["12", "16"]);
    expect(reasons.join(" ")).toContain("14 Fennel Row refused entry on November 23, 2026");
  });

  test("plans the units of a duplex apart, and a refusing tenant takes out their unit alone", () => {
    const duplex = {
      units: [aUnit("a", "14", { name: "Unit A" }), aUnit("b", "14", { name: "Unit B" })],
      parties: [aParty("ana")],
      roles: [aRole("ana", "14", { role: "occupant", unitId: "a" })],
    };
    const units = ({ stops }: ReturnType<typeof proposed>) =>
      stops.filter(({ propertyId }) => propertyId === "14").map(({ unitId }) => unitId);
    expect(units(proposed(aStreet(duplex)))).toEqual(["a", "b"]);
    const refused = { ...duplex, consents: [refusal("ana", "14")] };
    expect(units(proposed(aStreet(refused)))).toEqual(["b"]);
  });

  test("gives drains floor by floor, dose, flush and rinse, as common practice to be changed", () => {
    const { stops, reasons } = proposed();
    expect(stops[1]).toMatchObject({
      drains: [
        { floor: "basement", drain: "floor-drain" },
        { floor: "first-floor", drain: "toilet" },
        { floor: "upper-floor", drain: "toilet" },
      ],
      flushGallons: 5,
      rinseMinutes: 10,
    });
    expect(stops[1]?.dose).not.toBe("");
    expect(reasons.at(-1)).toContain("common practice");
  });

  test("leaves time to rinse and walk between colors, and another color each", () => {
    const { stops } = proposed(aStreet(), { startsAt: 8 * 60 + 30 });
    // 15 minutes of watching, 10 of rinsing, 5 to walk.
    expect(stops.map(({ startsAt }) => startsAt)).toEqual(["08:30", "09:00", "09:30"]);
    expect(new Set(stops.map(({ colour }) => colour)).size).toBe(3);
  });

  test("what does not end by five o’clock is left for another day, and named", () => {
    const { stops, reasons } = proposed(aStreet(), { startsAt: 16 * 60 });
    expect(stops.map(({ propertyId }) => propertyId)).toEqual(["12", "14"]);
    expect(reasons.join(" ")).toContain("For another day: 16 Fennel Row");
  });

  test("names who has to be called first, before anybody is sent away from water", () => {
    const file = aStreet({
      parties: [aParty("bea", { name: "Beatrix Holloway", needs: "Home dialysis" })],
      roles: [aRole("bea", "14", { role: "occupant" })],
    });
    expect(proposed(file).reasons.join(" ")).toContain(
      "Call first: Beatrix Holloway at 14 Fennel Row (Home dialysis)",
    );
  });

  test("says why: the control, the order and each wait", () => {
    const { reasons } = proposed();
    expect(reasons[0]).toBe(
      "Control for t2: 12 Fennel Row, whose tie-in t1 at 20.0 ft is settled and lies below. Its dye should not show at t2.",
    );
    expect(reasons.find((reason) => reason.startsWith("t2: watch for 15 minutes"))).toBeDefined();
  });

  test("plans nothing where nothing is open", () => {
    const tieIns = [aTieIn("t1"), aTieIn("t2", { propertyId: "14", ownerAccepted: true })];
    const file = aStreet({ tieIns });
    expect(tieInsToTest(reportOn(file, TODAY))).toEqual([]);
    expect(proposed(file).stops).toEqual([]);
  });

  test("of two open tie-ins, upstream-first begins with those of the upper one", () => {
    const { stops } = proposed(twoPlaces(), { order: "upstream-first" });
    expect(stops[0]?.tieInIds).toEqual(["t3"]);
  });
});

describe("testDayPeople()", () => {
  const stop = proposed().stops[1] as TestStop;
  const people = (file: LineFile, day = aDay([stop])) =>
    testDayPeople(file, reportOn(file, TODAY), day);

  test("water stays off wherever flow passes the watched place, or may", () => {
    const file = aStreet({ units: [aUnit("u1", "14"), aUnit("u2", "14")] });
    const all = [{ from: "09:30", to: "09:45" }];
    expect(people(file).waterOff).toEqual([
      { propertyId: "14", unitIds: ["u1", "u2"], passes: "perhaps", spans: all },
      { propertyId: "16", unitIds: [], passes: "perhaps", spans: all },
    ]);
    const below = aDay([{ ...stop, tieInIds: ["t1"] }]);
    expect(people(file, below).waterOff[0]).toMatchObject({ propertyId: "12", passes: "surely" });
  });

  test("the control below is dosed, and not sent away from water", () => {
    const { stops } = proposed();
    const off = people(aStreet(), aDay(stops)).waterOff.map(({ propertyId }) => propertyId);
    expect(off).toEqual(["14", "16"]);
  });

  test("nobody keeps water off longer than the place is watched that their flow passes", () => {
    const file = twoPlaces({
      properties: [aProperty("12"), aProperty("14", { stake: "candidate" }), aProperty("60")],
      tieIns: [...twoPlaces().tieIns, aTieIn("t4")],
      entries: [...twoPlaces().entries, anEntry("e60", { distance: 6_000, propertyId: "60" })],
      observations: [
        ...twoPlaces().observations,
        anObservation("o4", { counter: 6_000, tieInId: "t4" }),
      ],
      pairings: [...twoPlaces().pairings, aPairing("e60", "t4")],
    });
    const day = aDay([
      aTestStop("14", { tieInIds: ["t2"], startsAt: "09:00" }),
      aTestStop("14", { tieInIds: ["t3"], startsAt: "10:00" }),
    ]);
    const off = people(file, day).waterOff;
    const spansOf = (id: string) => off.find(({ propertyId }) => propertyId === id)?.spans;
    // 60 joins between the two watched places: its flow passes the lower one alone.
    expect(spansOf("60")).toEqual([{ from: "09:00", to: "09:15" }]);
    expect(spansOf("14")).toEqual([
      { from: "09:00", to: "09:15" },
      { from: "10:00", to: "10:15" },
    ]);
  });

  test("from the first dosing to the end of the last wait", () => {
    const { stops } = proposed();
    expect(people(aStreet(), aDay(stops))).toMatchObject({ from: "09:00", to: "10:15" });
  });

  test("an address that refused is in no plan any more, unless its result is in", () => {
    const refused = aStreet({
      parties: [aParty("nils")],
      roles: [aRole("nils", "14")],
      consents: [refusal("nils", "14")],
    });
    const day = aDay(proposed().stops);
    expect(stopsInForce(refused, day).map(({ propertyId }) => propertyId)).toEqual(["12", "16"]);
    expect(refusedStops(refused, day)).toMatchObject([
      { stop: { propertyId: "14" }, refusal: { on: "2026-11-23", partyId: "nils" } },
    ]);
    expect(people(refused, day).letIn.map(({ propertyId }) => propertyId)).toEqual(["12", "16"]);
    const told = aTest("t", "t2", { propertyId: "14" });
    const [, first] = day.stops;
    if (first === undefined) throw new Error("No stop");
    const tested = { ...refused, tests: [{ ...told, id: testIdOf(day, first, "t2") }] };
    expect(stopsInForce(tested, day)).toHaveLength(3);
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
        unitId: null,
        partyIds: ["tenant"],
        consented: true,
        noticeBy: "2026-12-01",
        citation: "QMC 9.1",
      },
    ]);
    expect(people(aStreet()).letIn[0]).toMatchObject({ consented: false, noticeBy: null });
    const lives = {
      ...file,
      roles: [aRole("owner", "14"), aRole("owner", "14", { role: "occupant", id: "lives" })],
    };
    expect(people(lives).letIn[0]).toMatchObject({
      partyIds: ["owner"],
      noticeBy: null,
      citation: "",
    });
    const nobodySaid = { ...file, roles: [aRole("owner", "14")] };
    expect(people(nobodySaid).letIn[0]).toMatchObject({ noticeBy: "2026-12-01" });
  });

  test("the authority’s rule on dye gives the day to tell the plant by; without one it is asked", () => {
    const authority = anAuthority({
      clockRules: [
        aClockRule("dye", {
          event: "dye-test",
          way: "before",
          count: 1,
          unit: "calendar-days",
          roll: "none",
          title: "Tell the plant of dye",
          citation: "QMC 9.9",
        }),
      ],
    });
    const day = aDay([stop]);
    const told = { ...day, plantToldOn: "2026-11-30" };
    expect(plantNotice(aStreet({ authority }), day)).toEqual({
      asked: true,
      by: "2026-12-02",
      citation: "QMC 9.9",
      toldOn: null,
    });
    expect(plantNotice(aStreet(), told)).toMatchObject({ asked: false, toldOn: "2026-11-30" });
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
