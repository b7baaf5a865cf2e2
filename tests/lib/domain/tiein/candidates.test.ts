import { describe, expect, test } from "vitest";
import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Property, Stake } from "#lib/domain/facts/party.ts";
import type { TieInTest } from "#lib/domain/facts/test.ts";
import type { EntryFinding, TieInFinding } from "#lib/domain/findings/report.ts";
import { type Candidate, candidatesFor } from "#lib/domain/tiein/candidates.ts";

function property(id: string, stake: Stake): Property {
  const address = { street: id, unit: "", city: "", state: "", zip: "" };
  return {
    id,
    address,
    parcel: "",
    legalDescription: "",
    stake,
    weight: null,
    bothLanguages: false,
    note: "",
  };
}

function tieIn(id: string, propertyId: string | null): TieIn {
  return {
    id,
    label: id.toUpperCase(),
    parentId: null,
    station: null,
    side: "left",
    diameter: 4,
    material: "vitrified-clay",
    fitting: "unknown",
    kind: "unknown",
    propertyId,
    inactive: false,
    settledReason: "",
    settledBy: "",
    settledOn: null,
    ownerAccepted: false,
    note: "",
  };
}

function found(id: string, station: number | null, propertyId: string | null): TieInFinding {
  return {
    tieIn: tieIn(id, propertyId),
    station,
    uncertainty: 100,
    side: "left",
    compass: null,
    sightings: [],
    standing: propertyId === null ? "undocumented" : "on-record-and-seen",
    decided: true,
    sentence: "",
    sentenceEs: "",
    entryId: null,
    propertyId,
    level: 0,
    levelReason: "",
    live: true,
  };
}

function tested(propertyId: string, rest: Partial<TieInTest>): TieInTest {
  return {
    id: "t",
    tieInId: "t9",
    propertyId,
    unitId: null,
    kind: "dye",
    performedOn: "2026-11-11",
    fixture: "",
    colour: "",
    quantity: "",
    startedAt: "",
    firstSeenAt: "",
    seenAt: null,
    waitMinutes: null,
    filmed: "",
    dosedBy: "",
    watchedBy: "",
    otherWaterBarred: true,
    controlPropertyId: null,
    controlResult: "not-run",
    result: "positive",
    note: "",
    ...rest,
  };
}

const UNKNOWN = found("t9", 7_450, null);

function candidates(
  file: Partial<LineFile>,
  tieIns: readonly TieInFinding[] = [],
  entries: readonly EntryFinding[] = [],
): Candidate[] {
  const whole = { properties: [], tests: [], entries: [], crossings: [], ...file } as unknown;
  return candidatesFor(whole as LineFile, { tieIns: [...tieIns, UNKNOWN], entries }, UNKNOWN);
}

describe("candidatesFor()", () => {
  test("candidatesFor() leaves out a property that nothing speaks for", () => {
    expect(candidates({ properties: [property("n1", "neighbour")] })).toEqual([]);
  });

  test("candidatesFor() puts a property where dye was seen before one without a tie-in", () => {
    const order = candidates({
      properties: [property("a", "connected"), property("b", "neighbour")],
      tests: [tested("b", {})],
    });
    expect(order.map((each) => [each.propertyId, each.speaksFor])).toEqual([
      ["b", ["Dye from here was seen, on November 11, 2026."]],
      ["a", ["It is connected, and no tie-in of its own has been found."]],
    ]);
  });

  test("candidatesFor() calls a test that saw nothing weak and keeps the property in the list", () => {
    const [only] = candidates({
      properties: [property("c", "candidate")],
      tests: [tested("c", { result: "not-seen" })],
    });
    expect(only?.speaksAgainst).toEqual([
      "A dye test on November 11, 2026 showed nothing; weak evidence.",
    ]);
    expect(only?.weight).toBe(7);
  });

  test("candidatesFor() hears only tests of this tie-in", () => {
    const none = candidates({
      properties: [property("n", "neighbour")],
      tests: [tested("n", { tieInId: "t1" })],
    });
    expect(none).toEqual([]);
  });

  test("candidatesFor() weighs a near own tie-in for a property and its having one against", () => {
    const [only] = candidates({ properties: [property("h", "connected")] }, [
      found("t4", 7_000, "h"),
    ]);
    expect(only?.speaksFor).toEqual(["Its own tie-in T4 is 4.5 ft away."]);
    expect(only?.speaksAgainst).toEqual(["It has T4 already."]);
  });

  test("candidatesFor() names the record entry that nothing answers to, and how far it is", () => {
    const entry: EntryFinding = {
      entryId: "e1",
      recordStation: 8_000,
      station: 8_000,
      compass: null,
      standing: "on-record-not-seen",
      decided: true,
      sentence: "",
      sentenceEs: "",
      tieInId: null,
    };
    const entries = [{ id: "e1", label: "Shop 22", propertyId: "s", explanation: "" }];
    const file = { properties: [property("s", "neighbour")], entries } as unknown;
    expect(candidates(file as LineFile, [], [entry])[0]?.speaksFor).toEqual([
      "The record shows “Shop 22” at 80.0 ft, 5.5 ft from here, with no matching tie-in.",
    ]);
    expect(candidates(file as LineFile, [], [{ ...entry, tieInId: "t1" }])).toEqual([]);
    const unsure = {
      properties: [property("s", "neighbour")],
      entries: [{ ...entries[0], uncertainty: 600 }],
    } as unknown;
    expect(candidates(unsure as LineFile, [], [entry])[0]?.speaksFor).toEqual([
      "The record shows “Shop 22” at 80.0 ft, give or take 6.0 ft, 5.5 ft from here, with no matching tie-in.",
    ]);
  });

  test("candidatesFor() hears a crossed lot only where the line crosses it", () => {
    const crossed = (to: number) =>
      candidates({
        properties: [property("x", "crossed")],
        crossings: [
          {
            id: "c",
            propertyId: "x",
            from: 7_000,
            to,
            easement: "unknown",
            recordingNumber: "",
            note: "",
          },
        ],
      }).length;
    expect([crossed(7_449), crossed(7_450)]).toEqual([0, 1]);
  });

  test("candidatesFor() puts the lot that the line crosses right there before an entry 73 ft off", () => {
    const entry: EntryFinding = {
      entryId: "e1",
      recordStation: 150,
      station: 150,
      compass: null,
      standing: "on-record-not-seen",
      decided: true,
      sentence: "",
      sentenceEs: "",
      tieInId: null,
    };
    const crossing = { id: "c", propertyId: "x", from: 7_000, to: 8_000, easement: "unknown" };
    const file = {
      properties: [property("h", "connected"), property("x", "crossed")],
      entries: [
        {
          ...{ id: "e1", label: "House 14", propertyId: "h", explanation: "" },
          ...{ material: "vitrified-clay", diameter: 4 },
        },
      ],
      crossings: [crossing],
    } as unknown as LineFile;
    const order = candidates(file, [], [entry]);
    expect(order.map(({ propertyId }) => propertyId)).toEqual(["x", "h"]);
  });

  test("candidatesFor() knows a tie-in of its own that dye has shown, settled or not", () => {
    const [only] = candidates(
      {
        properties: [property("h", "connected")],
        tests: [tested("h", { tieInId: "t2" }), tested("h", { id: "again", result: "not-seen" })],
      },
      [found("t2", 2_000, null)],
    );
    expect(only).toBeUndefined();
    const [near] = candidates(
      { properties: [property("h", "connected")], tests: [tested("h", { tieInId: "t2" })] },
      [found("t2", 7_000, null)],
    );
    expect(near?.speaksFor.join(" ")).not.toContain("no tie-in of its own");
    expect(near?.speaksAgainst).toEqual(["Tests show T2 to be its own."]);
  });
});
