import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { assignSightings } from "#lib/domain/run/sighting.ts";
import {
  aCrossing,
  aFile,
  aGap,
  anAnchor,
  anEntry,
  anObservation,
  aPairing,
  aPoint,
  aProperty,
  aRecord,
  aRun,
  aScopeItem,
  aTest,
  aTieIn,
  aUnit,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

/** Gives sightings their tie-ins, as saving observations does. */
function withTieIns(file: LineFile): LineFile {
  let made = 0;
  const found = assignSightings(file, () => {
    made += 1;
    return `t${made}`;
  });
  const idOf = new Map(found.map((each) => [each.observationId, each.tieInId]));
  return {
    ...file,
    tieIns: [...file.tieIns, ...found.flatMap((each) => each.tieIn ?? [])],
    observations: file.observations.map((seen) => ({
      ...seen,
      tieInId: idOf.get(seen.id) ?? seen.tieInId,
    })),
  };
}

/** A back alley: two cards that read 2.3 ft short, two runs, one belly under water. */
function alley(): LineFile {
  const houses = ["12", "14", "16", "18", "20"];
  const card = (id: string, distance: number) =>
    anEntry(`e${id}`, { recordId: "card", label: `House ${id}`, distance, propertyId: id });
  const at = (id: string, runId: string, counter: number, clock: number) =>
    anObservation(id, { runId, counter, clock });
  return withTieIns(
    aFile({
      line: { upperEnd: 9_600 },
      properties: houses.map((id) => aProperty(id)),
      units: houses.map((id) => aUnit(`unit ${id}`, id)),
      records: [aRecord("card", { title: "Card 1184" }), aRecord("permit", { title: "Permit 94" })],
      entries: [
        card("12", 1_800),
        card("14", 3_400),
        card("16", 5_200),
        card("18", 6_800),
        anEntry("shop", { recordId: "permit", label: "Shop 22", distance: 8_000 }),
        anEntry("e20", {
          recordId: "permit",
          label: "Bakery 20",
          distance: 9_100,
          side: "right",
          propertyId: "20",
        }),
      ],
      runs: [
        aRun("one", { name: "Run 1", looks: "downstream", toCounter: 9_860 }),
        aRun("two", { name: "Run 2", toCounter: 3_300 }),
      ],
      anchors: [
        anAnchor("one", { counter: 9_860, station: 0 }),
        anAnchor("one", { kind: "cleanout", counter: 9_250, station: 600 }),
        anAnchor("two", { kind: "cleanout", counter: 0, station: 600 }),
      ],
      gaps: [aGap("one", { fromCounter: 5_160, toCounter: 5_760 })],
      observations: [
        at("bakery", "one", 540, 9),
        at("hole", "one", 2_410, 9),
        at("18", "one", 2_820, 3),
        at("16", "one", 4_430, 3),
        at("14", "one", 6_200, 3),
        at("drain", "one", 7_060, 10),
        at("12", "one", 7_820, 3),
        at("12 again", "two", 1_450, 9),
        at("drain again", "two", 2_220, 2),
        at("14 again", "two", 3_040, 9),
      ],
      scope: [aScopeItem("dig", { from: 2_800, to: 3_600 })],
    }),
  );
}

function standings(report: Report): string[] {
  return report.tieIns.map(({ station, standing, entryId }) => `${station} ${standing} ${entryId}`);
}

test("reportOn() tells of the whole alley: five on record, two undocumented, one not seen", () => {
  const report = reportOn(alley(), TODAY);
  expect(report.problems).toEqual([]);
  expect(standings(report)).toEqual([
    "2040 on-record-and-seen e12",
    "2810 undocumented null",
    "3640 on-record-and-seen e14",
    "5420 on-record-and-seen e16",
    "7030 on-record-and-seen e18",
    "7440 undocumented null",
    "9310 on-record-and-seen e20",
  ]);
  expect(report.entries.find(({ entryId }) => entryId === "shop")).toMatchObject({
    recordStation: 8_000,
    station: 8_230,
    standing: "on-record-not-seen",
  });
  expect(report.alignment).toMatchObject({ shift: 230, scale: 0, explained: 5, of: 6 });
  expect(report.coverage.map(({ from, to, state }) => [from, to, state])).toEqual([
    [0, 4_090, "seen"],
    [4_090, 4_690, "under-water"],
    [4_690, 9_600, "seen"],
  ]);
  expect(report.extent).toBe(9_600);
  expect(report.today).toBe(TODAY);
});

test("reportOn() gives one split for every rule, and reaches that cover the line", () => {
  const report = reportOn(alley(), TODAY);
  expect(report.splits.map(({ choice }) => choice.rule)).toEqual([...SPLIT_RULES]);
  expect(report.reaches[0]?.from).toBe(0);
  expect(report.reaches.at(-1)?.to).toBe(9_600);
});

test("reportOn() says the same of the same file, and of the file read back from text", () => {
  const file = alley();
  const report = reportOn(file, TODAY);
  expect(reportOn(file, TODAY)).toEqual(report);
  expect(reportOn(JSON.parse(JSON.stringify(file)) as LineFile, TODAY)).toEqual(report);
});

test("reportOn() knows a file with nothing in it", () => {
  const report = reportOn(aFile({ line: { upperEnd: null } }), TODAY);
  expect(report).toMatchObject({
    problems: [],
    tieIns: [],
    alignment: null,
    coverage: [],
    extent: 0,
  });
});

test("reportOn() reaches as far as anything known while nobody knows where the line ends", () => {
  const line = { upperEnd: null };
  expect(reportOn(aFile({ line, points: [aPoint("p", { station: 5_000 })] }), TODAY).extent).toBe(
    5_000,
  );
  const entries = [anEntry("e", { distance: 7_000 })];
  expect(reportOn(aFile({ line, entries, records: [aRecord("card")] }), TODAY).extent).toBe(7_000);
  const runs = [aRun("run", { toCounter: 8_800 })];
  const seen = aFile({ line, runs, anchors: [anAnchor("run")] });
  expect(reportOn(seen, TODAY).extent).toBe(8_800);
});

test("reportOn() drops a proposal once a person has refused it", () => {
  const file = alley();
  const [first] = reportOn(file, TODAY).proposals;
  if (!first) throw new Error("Nothing is proposed");
  const pairings = [aPairing(first.entryId, first.tieInId, { state: "refused" })];
  const again = reportOn({ ...file, pairings }, TODAY).proposals;
  expect(
    again.some(({ entryId, tieInId }) => entryId === first.entryId && tieInId === first.tieInId),
  ).toBe(false);
});

test.each<[string, string, Omit<Partial<LineFile>, "line">]>([
  ["missing-parent", "tieIns.0.parentId", { tieIns: [aTieIn("a", { parentId: "gone" })] }],
  ["cycle", "tieIns.0.parentId", { tieIns: [aTieIn("a", { parentId: "a" })] }],
  ["duplicate-id", "tieIns.1.id", { tieIns: [aTieIn("a"), aTieIn("a")] }],
  ["below-main", "tieIns.0.station", { tieIns: [aTieIn("a", { station: -100 })] }],
  ["beyond-upper-end", "tieIns.0.station", { tieIns: [aTieIn("a", { station: 10_100 })] }],
  [
    "anchors-out-of-order",
    "anchors.1.station",
    {
      runs: [aRun("run")],
      anchors: [
        anAnchor("run", { counter: 0, station: 5_000 }),
        anAnchor("run", { counter: 1_000, station: 4_600 }),
      ],
    },
  ],
  [
    "anchors-against-way",
    "anchors.1.station",
    {
      runs: [aRun("run")],
      anchors: [
        anAnchor("run", { counter: 0, station: 5_000 }),
        anAnchor("run", { counter: 1_000, station: 4_000 }),
      ],
    },
  ],
  [
    "off-zero",
    "anchors.0.station",
    {
      runs: [aRun("run", { looks: "downstream", measuredFrom: "main" })],
      anchors: [anAnchor("run", { counter: 9_200, station: 0 })],
    },
  ],
  [
    "ends-before-it-begins",
    "gaps.0.toCounter",
    { runs: [aRun("run")], gaps: [aGap("run", { fromCounter: 500, toCounter: 400 })] },
  ],
  ["ends-before-it-begins", "runs.0.toCounter", { runs: [aRun("run", { toCounter: -100 })] }],
  [
    "missing-run",
    "observations.0.runId",
    { observations: [anObservation("o", { runId: "gone" })] },
  ],
  [
    "missing-tie-in",
    "observations.0.tieInId",
    { runs: [aRun("run")], observations: [anObservation("o", { tieInId: "gone" })] },
  ],
  ["pairing-of-nothing", "pairings.0", { pairings: [aPairing("gone", "gone")] }],
  [
    "paired-twice",
    "pairings.1",
    {
      records: [aRecord("card")],
      entries: [anEntry("e", { distance: 100 })],
      tieIns: [aTieIn("a", { station: 100 }), aTieIn("b", { station: 200 })],
      pairings: [aPairing("e", "a"), aPairing("e", "b")],
    },
  ],
  [
    "two-owners",
    "pairings.0",
    {
      records: [aRecord("card")],
      entries: [anEntry("e", { distance: 100, propertyId: "12" })],
      tieIns: [aTieIn("a", { station: 100, propertyId: "14" })],
      pairings: [aPairing("e", "a")],
    },
  ],
  [
    "ends-before-it-begins",
    "crossings.0.to",
    { crossings: [aCrossing("x", { from: 500, to: 400 })] },
  ],
  [
    "set-apart",
    "tieIns.0.station",
    {
      runs: [aRun("run")],
      anchors: [anAnchor("run")],
      tieIns: [aTieIn("a", { station: 3_000 })],
      observations: [anObservation("o", { counter: 3_200, tieInId: "a" })],
    },
  ],
  [
    "tests-contradict",
    "tieIns.0.propertyId",
    {
      properties: [aProperty("12"), aProperty("14")],
      tieIns: [aTieIn("a", { station: 3_000, propertyId: "12" })],
      tests: [aTest("dye", "a", { propertyId: "14" })],
    },
  ],
  ["no-record", "entries.0.distance", { entries: [anEntry("e", { distance: 100 })] }],
  [
    "beyond-upper-end",
    "entries.0.distance",
    { records: [aRecord("card")], entries: [anEntry("e", { distance: 10_600 })] },
  ],
  ["beyond-upper-end", "points.0.station", { points: [aPoint("p", { station: 10_100 })] }],
])("reportOn() names %s at %s, and works out the rest", (reason, path, overrides) => {
  const report = reportOn(aFile(overrides), TODAY);
  expect(report.problems).toContainEqual(expect.objectContaining({ reason, path }));
  expect(report.problems.every(({ sentence }) => /^\S.*\.$/.test(sentence))).toBe(true);
});

test("reportOn() says by how much two sightings of one tie-in contradict each other", () => {
  const file = aFile({
    runs: [aRun("a"), aRun("b")],
    anchors: [anAnchor("a"), anAnchor("b")],
    tieIns: [aTieIn("t", { label: "T1" })],
    observations: [
      anObservation("o", { runId: "a", counter: 2_000, tieInId: "t" }),
      anObservation("p", { runId: "b", counter: 2_500, tieInId: "t" }),
    ],
  });
  expect(reportOn(file, TODAY).problems.map(({ sentence }) => sentence)).toEqual([
    "Sightings of T1 lie 3.6 ft farther apart than their runs are uncertain by: one may be another tie-in, or an anchor may be wrong.",
  ]);
});

test("reportOn() keeps broken tie-ins out of what is served and split, and in what is listed", () => {
  const file = alley();
  const ring = [aTieIn("x", { parentId: "y" }), aTieIn("y", { parentId: "x" })];
  const report = reportOn({ ...file, tieIns: [...file.tieIns, ...ring] }, TODAY);
  expect(report.tieIns).toHaveLength(9);
  expect(report.reaches).toEqual(reportOn(file, TODAY).reaches);
});

/** Files whose rows refer to one another at random, with lengths that need not be lengths. */
const junk = (() => {
  const id = fc.constantFrom("a", "b", "c", "");
  const maybeId = fc.option(id);
  const length = fc.oneof(
    fc.integer({ min: -500, max: 12_000 }),
    fc.constantFrom(Number.NaN, 0.5, Number.POSITIVE_INFINITY, 0),
  );
  const side = fc.constantFrom(
    "left" as const,
    "right" as const,
    "crown" as const,
    "unknown" as const,
  );
  const rows = <T>(row: fc.Arbitrary<T>) => fc.array(row, { maxLength: 4 });
  return fc.record({
    upperEnd: fc.option(fc.integer({ min: -10, max: 12_000 })),
    tieIns: rows(
      fc
        .record({ id, parentId: maybeId, station: fc.option(length), side })
        .map((each) => aTieIn(each.id, each)),
    ),
    records: rows(
      fc
        .record({
          id,
          measuredFrom: fc.constantFrom("main" as const, "upper-end" as const, "unknown" as const),
        })
        .map((each) => aRecord(each.id, each)),
    ),
    entries: rows(
      fc
        .record({ id, recordId: id, distance: fc.option(length), side, propertyId: maybeId })
        .map((each) => anEntry(each.id, each)),
    ),
    runs: rows(
      fc
        .record({
          id,
          looks: fc.constantFrom("upstream" as const, "downstream" as const),
          measuredFrom: fc.constantFrom("access" as const, "main" as const),
          selfLeveling: fc.constantFrom("yes" as const, "no" as const, "unknown" as const),
          toCounter: fc.option(length),
        })
        .map((each) => aRun(each.id, each)),
    ),
    anchors: rows(
      fc
        .record({ runId: id, counter: length, station: length })
        .map((each) => anAnchor(each.runId, each)),
    ),
    gaps: rows(
      fc
        .record({ runId: id, fromCounter: length, toCounter: length })
        .map((each) => aGap(each.runId, each)),
    ),
    observations: rows(
      fc
        .record({ id, runId: id, counter: length, tieInId: maybeId, clock: fc.option(fc.double()) })
        .map((each) => anObservation(each.id, each)),
    ),
    pairings: rows(fc.tuple(id, id).map(([entryId, tieInId]) => aPairing(entryId, tieInId))),
    properties: rows(id.map((each) => aProperty(each))),
  });
})();

test("reportOn() answers for any file whatever, and every answer is a sentence", () => {
  fc.assert(
    fc.property(junk, ({ upperEnd, ...rows }) => {
      const report = reportOn(aFile({ line: { upperEnd }, ...rows }), TODAY);
      const sentences = [...report.tieIns, ...report.entries, ...report.holds, ...report.problems];
      for (const { sentence } of sentences) expect(sentence).toMatch(/^\S.*\.$/);
      expect(report.tieIns).toHaveLength(rows.tieIns.length);
      expect(report.entries).toHaveLength(rows.entries.length);
      expect(JSON.stringify(report)).not.toContain("undefined");
    }),
    { numRuns: 300 },
  );
});
