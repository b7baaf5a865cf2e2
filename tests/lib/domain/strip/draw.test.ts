import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ReachFinding } from "#lib/domain/findings/reach-finding.ts";
import type { Report, TieInFinding } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrip, drawStrips, ticksTo } from "#lib/domain/strip/draw.ts";
import { STRIP_TOPICS, type StripBand } from "#lib/domain/strip/drawing.ts";
import { NO_CAPACITY } from "#tests/support/capacity.ts";
import {
  aCrossing,
  aFile,
  anAddress,
  anAnchor,
  anEntry,
  anObservation,
  aPoint,
  aProperty,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

const FILE = aFile({
  properties: [
    aProperty("p12", { address: anAddress("12 Fennel Row") }),
    aProperty("p14", { address: anAddress("14 Fennel Row") }),
  ],
  points: [aPoint("row", { kind: "right-of-way-line", station: 1200 })],
  tieIns: [aTieIn("t1", { label: "T1" }), aTieIn("t2", { label: "T2" })],
  entries: [anEntry("e1", { label: "House 12" }), anEntry("e2", { label: "House 20" })],
  observations: [
    anObservation("belly", { kind: "fault", fault: "belly" }),
    anObservation("remark", { kind: "remark" }),
  ],
});

function finding(id: string, rest: Partial<TieInFinding>): TieInFinding {
  const tieIn = FILE.tieIns.find((one) => one.id === id) ?? aTieIn(id);
  return {
    tieIn,
    station: 1750,
    uncertainty: 100,
    side: "left",
    compass: null,
    sightings: [],
    standing: "on-record-and-seen",
    decided: true,
    sentence: "Within 1 ft of the entry.",
    sentenceEs: "",
    entryId: null,
    propertyId: "p12",
    level: 0,
    levelReason: "",
    live: true,
    ...rest,
  };
}

function reach(from: number, to: number, rest: Partial<ReachFinding> = {}): ReachFinding {
  return {
    from,
    to,
    material: "vitrified-clay",
    diameter: 6,
    servedBy: ["p12"],
    unknownTieIns: [],
    holder: "owners",
    mender: "owners",
    menders: { clearing: "owners", repair: "owners", replacement: "owners" },
    answerable: [],
    reason: "",
    citation: "",
    cost: 0,
    authorityCost: 0,
    crossedBy: [],
    ...rest,
  };
}

function report(rest: Partial<Report> = {}): Report {
  return {
    today: "2026-11-25",
    problems: [],
    stations: [],
    tieIns: [],
    entries: [],
    alignment: null,
    proposals: [],
    alternatives: [],
    residuals: [],
    runCoverage: [],
    coverage: [],
    reaches: [],
    capacity: NO_CAPACITY,
    ties: [],
    holds: [],
    splits: [],
    clocks: [],
    extent: 10_000,
    ...rest,
  };
}

function band(
  file: LineFile,
  one: Report,
  topic: "all" | "who" | "cost" | "responsibility",
  title: string,
) {
  return drawStrip(file, one, topic).bands.find((each: StripBand) => each.title === title);
}

describe("drawStrip()", () => {
  test("draws an undocumented tie-in quietly once it is settled whose it is, and asks nothing of a dead one", () => {
    const drawn = drawStrip(
      FILE,
      report({
        tieIns: [
          finding("t1", { standing: "undocumented", level: 5 }),
          finding("t2", {
            station: 3450,
            standing: "inactive",
            live: false,
            propertyId: null,
            sentence: "Taken out of use.",
          }),
        ],
      }),
      "reconcile",
    );
    expect(
      drawn.below.map(({ loud, detail, brief, sentence }) => [loud, detail, brief, sentence]),
    ).toEqual([
      [
        false,
        "12 Fennel Row, not on record",
        "no. 12, not on record",
        "T1 at 17.5 ft, serves 12 Fennel Row: Within 1 ft of the entry.",
      ],
      [false, "inactive", "inactive", "T2 at 34.5 ft: Taken out of use."],
    ]);
  });

  test("draws a tie-in at its station with whose it is, and an undocumented one loud", () => {
    const drawn = drawStrip(
      FILE,
      report({
        tieIns: [
          finding("t1", {}),
          finding("t2", { station: 3450, standing: "undocumented", propertyId: null }),
        ],
      }),
      "reconcile",
    );
    expect(
      drawn.below.map(({ id, station, whisker, label, detail, loud }) => ({
        id,
        station,
        whisker,
        label,
        detail,
        loud,
      })),
    ).toEqual([
      { id: "t1", station: 1750, whisker: 100, label: "T1", detail: "12 Fennel Row", loud: false },
      {
        id: "t2",
        station: 3450,
        whisker: 100,
        label: "T2",
        detail: "undocumented, owner unknown",
        loud: true,
      },
    ]);
  });

  test("leaves out what is relative only, and never guesses a station", () => {
    const drawn = drawStrip(FILE, report({ tieIns: [finding("t1", { station: null })] }), "all");
    expect(drawn.below).toEqual([]);
  });

  test("draws a branch of a branch where its trunk tie-in stands", () => {
    const branch = aTieIn("t3", { label: "T3", parentId: "t1" });
    const drawn = drawStrip(
      FILE,
      report({ tieIns: [finding("t1", {}), finding("t3", { tieIn: branch, station: 300 })] }),
      "all",
    );
    expect(drawn.below.map((mark) => [mark.label, mark.station])).toEqual([
      ["T1", 1750],
      ["T3 on T1", 1750],
    ]);
  });

  test("draws the record where it is written, not where it was shifted to", () => {
    const entry = {
      entryId: "e1",
      recordStation: 1550,
      station: 1750,
      compass: null,
      standing: "on-record-and-seen" as const,
      decided: false,
      sentence: "2.0 ft apart.",
      sentenceEs: "",
      tieInId: "t1",
    };
    const missing = { ...entry, entryId: "e2", recordStation: 7700, tieInId: null };
    const drawn = drawStrip(
      FILE,
      report({
        tieIns: [finding("t1", {})],
        entries: [entry, { ...missing, standing: "on-record-not-seen" }],
      }),
      "reconcile",
    );
    expect(drawn.above.map((mark) => [mark.label, mark.station, mark.detail])).toEqual([
      ["House 12", 1550, "15.5 ft"],
      ["House 20", 7700, "77.0 ft, not seen"],
    ]);
    expect(drawn.joins).toEqual([
      { entryId: "e1", tieInId: "t1", state: "proposed", distance: 200 },
    ]);
  });

  test("shows another pairing that is nearly as good, once", () => {
    const proposal = {
      distance: 0,
      rawDistance: 0,
      tolerance: 100,
      band: "same" as const,
      reasons: [],
      nearTie: true,
    };
    const drawn = drawStrip(
      FILE,
      report({
        entries: [
          {
            entryId: "e1",
            recordStation: 1550,
            station: 1550,
            compass: null,
            standing: "on-record-and-seen",
            decided: false,
            sentence: "",
            sentenceEs: "",
            tieInId: "t1",
          },
        ],
        proposals: [
          { ...proposal, entryId: "e1", tieInId: "t1" },
          { ...proposal, entryId: "e1", tieInId: "t2" },
        ],
      }),
      "reconcile",
    );
    expect(drawn.joins).toEqual([
      { entryId: "e1", tieInId: "t1", state: "proposed" },
      { entryId: "e1", tieInId: "t2", state: "alternative" },
    ]);
  });

  test("turns a stretch that was run against the stations the right way round", () => {
    const drawn = drawStrip(
      FILE,
      report({
        stations: [
          {
            observationId: "belly",
            runId: "r1",
            station: 5200,
            toStation: 4700,
            uncertainty: 100,
            side: "unknown",
            unsureSide: "unknown",
          },
          {
            observationId: "remark",
            runId: "r1",
            station: 100,
            toStation: null,
            uncertainty: 100,
            side: "unknown",
            unsureSide: "unknown",
          },
        ],
      }),
      "camera",
    );
    const faults = drawn.onPipe.filter((mark) => mark.kind === "fault");
    expect(faults.map((mark) => [mark.label, mark.station, mark.toStation, mark.sentence])).toEqual(
      [["belly", 4700, 5200, "Belly, 47.0 ft to 52.0 ft."]],
    );
  });

  test("draws a fault once that two runs saw, over all that they saw of it", () => {
    const file = aFile({
      runs: [aRun("up"), aRun("down", { looks: "downstream" })],
      anchors: [anAnchor("up"), anAnchor("down", { counter: 10_000 })],
      observations: [
        anObservation("f1", {
          runId: "up",
          kind: "fault",
          fault: "crack",
          counter: 2_860,
          toCounter: 3_260,
        }),
        anObservation("f2", {
          runId: "down",
          kind: "fault",
          fault: "crack",
          counter: 6_790,
          toCounter: 7_120,
        }),
        anObservation("f3", { runId: "up", kind: "fault", fault: "roots", counter: 3_000 }),
      ],
    });
    const { onPipe } = drawStrip(file, reportOn(file, "2026-11-25"), "camera");
    const faults = onPipe.filter(({ kind }) => kind === "fault");
    expect(faults.map(({ sentence }) => sentence)).toEqual([
      "Crack, 28.6 ft to 32.6 ft.",
      "Roots, 30.0 ft.",
    ]);
  });

  test("joins reaches of one material into one piece of pipe", () => {
    const drawn = drawStrip(
      FILE,
      report({
        reaches: [reach(0, 1200), reach(1200, 1750), reach(1750, 10_000, { material: "pvc" })],
      }),
      "all",
    );
    expect(drawn.pipes).toEqual([
      { from: 0, to: 1750, material: "vitrified-clay", words: "6 in vitrified clay" },
      { from: 1750, to: 10_000, material: "pvc", words: "6 in PVC" },
    ]);
  });

  test("says whose flow passes, with unknown ones counted apart from house numbers", () => {
    const served = band(
      FILE,
      report({
        reaches: [
          reach(0, 1750, { servedBy: ["p12", "p14"], unknownTieIns: ["t2"] }),
          reach(1750, 3450, { servedBy: [], unknownTieIns: ["t2"] }),
          reach(3450, 10_000, { servedBy: [] }),
        ],
      }),
      "who",
      "Flow of",
    );
    expect(served?.cells.map((cell) => [cell.from, cell.to, cell.words])).toEqual([
      [0, 1750, "12, 14 + 1 unknown"],
      [1750, 3450, "1 unknown"],
    ]);
  });

  test("keeps every amount apart, and says where there is no work", () => {
    const costs = band(
      FILE,
      report({
        reaches: [
          reach(0, 1000),
          reach(1000, 2000),
          reach(2000, 3000, { cost: 120_000 }),
          reach(3000, 4000, { cost: 120_000 }),
        ],
      }),
      "cost",
      "Cost",
    );
    expect(costs?.cells.map((cell) => [cell.from, cell.to, cell.words])).toEqual([
      [0, 2000, "no work"],
      [2000, 3000, "$1,200.00"],
      [3000, 4000, "$1,200.00"],
    ]);
  });

  test("is loud about an unclear reach only while it is held", () => {
    const unclear = [reach(0, 1200, { holder: "unclear", mender: "unclear" })];
    const hold = {
      key: "responsibility-unclear:0",
      cause: "responsibility-unclear" as const,
      subjectId: "0",
      subjectLabel: "0 to 12 ft",
      stops: ["final-split" as const],
      stretch: { from: 0, to: 1200 },
      sentence: "",
      closes: "",
      waiver: null,
    };
    const loud = (holds: Report["holds"]) =>
      band(FILE, report({ reaches: unclear, holds }), "responsibility", "Responsible")?.cells[0]
        ?.loud;
    expect(loud([hold])).toBe(true);
    expect(loud([])).toBe(false);
  });

  test("draws a line of which nothing is known as a short pipe, without bands", () => {
    const drawn = drawStrip(aFile({ line: { upperEnd: null } }), report({ extent: 0 }), "all");
    expect([drawn.extent, drawn.bands, drawn.pipes.length]).toEqual([1000, [], 1]);
  });
});

describe("drawStrip() beyond the pipe", () => {
  const hold = {
    key: "tie-in-owner-unknown:t2",
    cause: "tie-in-owner-unknown" as const,
    subjectId: "t2",
    subjectLabel: "T2",
    stops: ["capping" as const, "lining" as const],
    stretch: null,
    sentence: "T2 is on no record.",
    closes: "",
    waiver: null,
  };

  test("brackets the place that a hold stops, as wide as that place is uncertain", () => {
    const drawn = drawStrip(
      FILE,
      report({
        tieIns: [finding("t2", { station: 3450, uncertainty: 170 })],
        holds: [
          hold,
          {
            ...hold,
            key: "responsibility-unclear:0-1200",
            subjectId: "0-1200",
            stretch: { from: 0, to: 1200 },
          },
          { ...hold, key: "station-relative-only:t9", subjectId: "t9" },
        ],
      }),
      "reconcile",
    );
    expect(drawn.holds.map((mark) => [mark.id, mark.station, mark.toStation, mark.loud])).toEqual([
      ["tie-in-owner-unknown:t2", 3280, 3620, true],
      ["responsibility-unclear:0-1200", 0, 1200, true],
    ]);
    expect(drawn.holds[0]?.sentence).toContain("It stops capping, lining.");
  });

  test("is quiet about a hold that somebody waived, and names who did", () => {
    const waiver = { id: "w", holdKey: hold.key, reason: "", by: "Ruth Ames", on: "2026-11-20" };
    const drawn = drawStrip(
      FILE,
      report({ tieIns: [finding("t2", {})], holds: [{ ...hold, waiver }] }),
      "reconcile",
    );
    expect([drawn.holds[0]?.loud, drawn.holds[0]?.label]).toEqual([false, "waived: T2"]);
    expect(drawn.holds[0]?.sentence).toContain("waived by Ruth Ames");
  });

  test("knows where the rows of the tables lie, and which mark stands for them", () => {
    const sighting = {
      observationId: "remark",
      runId: "r1",
      station: 1750,
      toStation: null,
      uncertainty: 100,
      side: "left" as const,
      unsureSide: "unknown" as const,
    };
    const drawn = drawStrip(
      FILE,
      report({
        stations: [sighting],
        tieIns: [finding("t1", { sightings: [sighting] })],
        reaches: [reach(0, 1200), reach(1200, 10_000)],
        holds: [{ ...hold, subjectId: "t1", key: "tie-in-undecided:t1" }],
      }),
      "responsibility",
    );
    const spots = drawn.spots.map(({ id, from, to, markId }) => [id, from, to, markId]);
    expect(spots).toEqual([
      ["remark", 1700, 1800, "t1"],
      ["reach:0", 0, 1200, null],
      ["reach:1200", 1200, 10_000, null],
      ["tie-in-undecided:t1", 1650, 1850, "t1"],
    ]);
  });

  test("gives a tied run a row, and names one that is relative only beside the drawing", () => {
    const file = aFile({ runs: [aRun("r1", { ended: "blocked" }), aRun("r2", { name: "Yard" })] });
    const spans = [
      { from: 600, to: 900, state: "seen" as const },
      { from: 900, to: 1000, state: "under-water" as const },
    ];
    const drawn = drawStrip(
      file,
      report({
        runCoverage: [
          { runId: "r1", spans, from: 600, to: 1000, sentence: "Went in." },
          { runId: "r2", spans: [], from: null, to: null, sentence: "Not tied." },
        ],
      }),
      "camera",
    );
    expect(drawn.runs.map((run) => [run.id, run.from, run.to, run.ending])).toEqual([
      ["r1", 600, 1000, "blocked"],
    ]);
    expect(drawn.runs[0]?.cells.map((cell) => [cell.words, cell.hatch])).toEqual([
      ["seen", "none"],
      ["under water", "dense"],
    ]);
    expect(drawn.beside.map((one) => [one.id, one.label])).toEqual([["r2", "Yard"]]);
  });

  test("marks in an alternative only the pairs that differ from what is proposed", () => {
    const entry = {
      entryId: "e1",
      recordStation: 1550,
      station: 1550,
      compass: null,
      standing: "on-record-and-seen" as const,
      decided: false,
      sentence: "",
      sentenceEs: "",
      tieInId: "t1",
    };
    const drawn = drawStrip(
      FILE,
      report({
        tieIns: [finding("t1", {}), finding("t2", { station: 3450 })],
        entries: [entry, { ...entry, entryId: "e2", recordStation: 3300, tieInId: null }],
        alternatives: [
          {
            recordId: null,
            key: "k",
            shift: 0,
            scale: 0,
            explained: 2,
            pairs: [
              { entryId: "e1", tieInId: "t1", distance: 0 },
              { entryId: "e2", tieInId: "t2", distance: 0 },
            ],
            sentence: "Takes House 20 for T2.",
          },
        ],
      }),
      "reconcile",
    );
    expect(
      drawn.choices[0]?.joins.map((join) => [join.tieInId, join.differs, join.distance]),
    ).toEqual([
      ["t1", false, 200],
      ["t2", true, 150],
    ]);
  });
});

test("ticksTo() gives round stations, at most a dozen and the zero", () => {
  expect(ticksTo(2000)).toEqual([0, 500, 1000, 1500, 2000]);
  expect(ticksTo(9600)).toEqual([0, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000, 9000]);
  for (const extent of [1, 999, 12_345, 60_000, 119_999]) {
    expect(ticksTo(extent).length).toBeLessThanOrEqual(13);
  }
});

test("drawStrips() gives each page the strip that it would draw alone", () => {
  const one = report({ tieIns: [finding("t1", {})], reaches: [reach(0, 10_000, { cost: 500 })] });
  const drawn = drawStrips(FILE, one);
  for (const topic of STRIP_TOPICS) expect(drawn[topic]).toEqual(drawStrip(FILE, one, topic));
  expect(drawn.cost.below).toBe(drawn.reconcile.below);
});

describe("before any run of the camera", () => {
  const CARD = aFile({
    line: { upperEnd: null },
    properties: [aProperty("p12"), aProperty("p14")],
    records: [aRecord("card", { length: 16_800 })],
    entries: [
      anEntry("e1", { recordId: "card", label: "House 12", distance: 4_200 }),
      anEntry("e2", { recordId: "card", label: "House 14", distance: 7_100 }),
    ],
    crossings: [aCrossing("x", { propertyId: "p14", from: 11_200, to: 13_100 })],
  });

  test("drawStrip() reaches as far as the card and the crossed lots do, also without an entry", () => {
    expect(drawStrip(CARD, reportOn(CARD, "2026-11-25"), "all").extent).toBe(16_800);
    const bare = { ...CARD, entries: [], records: [aRecord("card", { length: null })] };
    expect(drawStrip(bare, reportOn(bare, "2026-11-25"), "all").extent).toBe(13_100);
  });

  test("drawStrip() is calm: nothing was looked at, so nothing is alarming", () => {
    const drawing = drawStrip(CARD, reportOn(CARD, "2026-11-25"), "all");
    expect(drawing.above.map(({ label, detail, loud }) => [label, detail, loud])).toEqual([
      ["House 12", "42.0 ft", false],
      ["House 14", "71.0 ft", false],
    ]);
    expect(drawing.holds.length).toBeGreaterThan(0);
    expect(drawing.holds.some(({ loud }) => loud)).toBe(false);
  });

  test("drawStrip() is loud once a camera looked", () => {
    const file = { ...CARD, runs: [aRun("r", { toCounter: 10_000 })] };
    const drawing = drawStrip(file, reportOn(file, "2026-11-25"), "all");
    expect(drawing.holds.some(({ loud }) => loud)).toBe(true);
  });
});
