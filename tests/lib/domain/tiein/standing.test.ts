import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { EntryFinding, TieInFinding } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aGap,
  anAnchor,
  anEntry,
  anObservation,
  aPairing,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** One branch seen at 36.5 ft by a run over the whole line, and one entry at 36.0 ft. */
const FACTS = {
  records: [aRecord("card", { title: "Card 1184" })],
  entries: [anEntry("e", { label: "House 14", distance: 3_600, propertyId: "14" })],
  runs: [aRun("run", { name: "Run 1" })],
  anchors: [anAnchor("run")],
  tieIns: [aTieIn("t", { label: "T1", kind: "unknown" })],
  observations: [anObservation("o", { counter: 3_650, tieInId: "t" })],
};

function tieInOf(overrides: Partial<typeof FACTS> & Partial<LineFile>): TieInFinding {
  const { line: _line, ...rest } = overrides;
  const [finding] = reportOn(aFile({ ...FACTS, ...rest }), "2026-11-25").tieIns;
  if (!finding) throw new Error("There is no tie-in");
  return finding;
}

function entryOf(overrides: Partial<typeof FACTS> & Partial<LineFile>): EntryFinding {
  const { line: _line, ...rest } = overrides;
  const [finding] = reportOn(aFile({ ...FACTS, ...rest }), "2026-11-25").entries;
  if (!finding) throw new Error("There is no entry");
  return finding;
}

test("a tie-in near an entry is on record and seen, but not decided until a person accepts", () => {
  const found = tieInOf({});
  expect(found).toMatchObject({ standing: "on-record-and-seen", decided: false, entryId: "e" });
  expect(found.sentence).toBe(
    "Card 1184 shows House 14 at 36.0 ft; seen at 36.5 ft, give or take 1.0 ft, in Run 1: 0.5 ft difference, within the 1.4 ft tolerance. Proposed; no one has accepted it yet.",
  );
});

test("an accepted pairing decides tie-in and entry, and names who accepted", () => {
  const pairings = [aPairing("e", "t")];
  const found = tieInOf({ pairings });
  expect(found).toMatchObject({ decided: true, propertyId: "14" });
  expect(found.sentence).toMatch(/Dana Okafor accepted the match\.$/);
  expect(entryOf({ pairings })).toMatchObject({
    standing: "on-record-and-seen",
    decided: true,
    tieInId: "t",
  });
});

test("a record that says it may be off is allowed as much, and its sentences say so", () => {
  const told = (uncertainty: number | null) =>
    tieInOf({ entries: [anEntry("e", { label: "House 14", distance: 3_400, uncertainty })] });
  expect(told(null)).toMatchObject({ standing: "on-record-seen-elsewhere" });
  const sure = told(null).sentence;
  expect(sure).toContain("shows House 14 at 34.0 ft; seen at 36.5 ft");
  expect(sure).toContain("2.5 ft difference, beyond the 1.4 ft tolerance");
  const about = told(300);
  expect(about).toMatchObject({ standing: "on-record-and-seen", entryId: "e" });
  expect(about.sentence).toContain(
    "shows House 14 at 34.0 ft, give or take 3.0 ft; seen at 36.5 ft",
  );
  expect(about.sentence).toContain("2.5 ft difference, within the 3.2 ft tolerance");
  expect(about.sentenceEs).toContain("a 34.0 pies, con un margen de 3.0 pies; vista a 36.5 pies");
});

test("an accepted pairing of things far apart is on record, seen elsewhere, with the numbers", () => {
  const entries = [anEntry("e", { label: "House 14", distance: 4_400 })];
  const found = tieInOf({ entries, pairings: [aPairing("e", "t")] });
  expect(found).toMatchObject({ standing: "on-record-seen-elsewhere", decided: true });
  expect(found.sentence).toContain("7.5 ft difference, beyond the 1.4 ft");
});

test("a pairing on another side is seen elsewhere, and says which sides", () => {
  const entries = [anEntry("e", { label: "House 14", distance: 3_650, side: "right" })];
  const found = tieInOf({ entries });
  expect(found.standing).toBe("on-record-seen-elsewhere");
  expect(found.sentence).toContain("right on the record, left in the pipe");
});

test("where the line has a bearing, the sides are named by the compass as well", () => {
  const entries = [anEntry("e", { label: "House 14", distance: 3_650, side: "right" })];
  const file = aFile({ ...FACTS, entries, line: { bearing: 90 } });
  const [found] = reportOn(file, "2026-11-25").tieIns;
  expect(found?.sentence).toContain(
    "right (south side) on the record, left (north side) in the pipe",
  );
  expect(found?.sentenceEs).toContain(
    "a la derecha (lado sur) en el registro, a la izquierda (lado norte) en la tubería",
  );
});

/** The same card with one entry more, House 20, which the camera saw at 60.0 ft. */
const AGREEING = {
  tieIns: [...FACTS.tieIns, aTieIn("u", { label: "T2", kind: "unknown" })],
  observations: [...FACTS.observations, anObservation("p", { counter: 6_000, tieInId: "u" })],
};
const HOUSE_20 = anEntry("f", { label: "House 20", distance: 6_000 });

test("a tie-in that no entry answers to is undocumented, where the record agrees elsewhere", () => {
  expect(tieInOf({ ...AGREEING, entries: [HOUSE_20] })).toMatchObject({
    standing: "undocumented",
    decided: true,
    sentence: "Seen at 36.5 ft, give or take 1.0 ft, in Run 1; no matching entry on record.",
    entryId: null,
  });
});

test("nothing is firm while nothing of the record agrees: neither undocumented nor not seen", () => {
  const entries = [anEntry("e", { label: "Shop 22", distance: 8_000 })];
  expect(tieInOf({ entries })).toMatchObject({
    standing: "undocumented",
    decided: false,
    sentence:
      "Seen at 36.5 ft, give or take 1.0 ft, in Run 1; too little of the record matches the camera to say no entry matches it.",
  });
  expect(entryOf({ entries })).toMatchObject({
    standing: "on-record-place-unclear",
    decided: false,
    sentence:
      "Card 1184 shows Shop 22 at 80.0 ft; too little of the record matches the camera to tell where in the pipe that is.",
  });
});

test("an entry that the record does not place may be any tie-in left over", () => {
  const entries = [HOUSE_20, anEntry("g", { label: "House 31", distance: null })];
  expect(tieInOf({ ...AGREEING, entries })).toMatchObject({
    standing: "undocumented",
    decided: false,
    sentence:
      "Seen at 36.5 ft, give or take 1.0 ft, in Run 1; it may be House 31, which the record does not place.",
  });
  const explained = [HOUSE_20, anEntry("g", { distance: null, explanation: "Never built" })];
  expect(tieInOf({ ...AGREEING, entries: explained }).decided).toBe(true);
});

test("an entry written twice on one record is one connection, and the second says so", () => {
  const house = { label: "House 14", distance: 3_600, propertyId: "14" };
  const twice = aFile({ ...FACTS, entries: [anEntry("e", house), anEntry("f", house)] });
  const { entries, tieIns, problems, alignment } = reportOn(twice, "2026-11-25");
  expect(entries.map(({ standing, tieInId }) => [standing, tieInId])).toEqual([
    ["on-record-and-seen", "t"],
    ["on-record-and-seen", "t"],
  ]);
  expect(entries[1]?.sentence).toMatch(/^It appears twice on the record and counts as one\. Card/);
  expect(alignment?.of).toBe(1);
  expect(tieIns[0]?.standing).toBe("on-record-and-seen");
  expect(problems).toEqual([
    {
      path: "entries.1",
      reason: "written-twice",
      sentence:
        "House 14 at 36.0 ft is written twice on Card 1184; it is taken as one. Remove the second, or say what tells the two apart.",
    },
  ]);
});

test("a tie-in is not called undocumented for certain before a record is entered", () => {
  const found = tieInOf({ entries: [] });
  expect(found).toMatchObject({ standing: "undocumented", decided: false });
  expect(found.sentence).toContain("no record has been entered yet");
});

test("a tie-in is not called undocumented for certain while its run is relative only", () => {
  const found = tieInOf({ anchors: [] });
  expect(found).toMatchObject({ standing: "undocumented", decided: false, station: null });
  expect(found.sentence).toContain("never tied to the main");
});

test("a tie-in is not called undocumented for certain while a pairing in conflict waits", () => {
  const found = tieInOf({ entries: [anEntry("e", { label: "House 14", distance: 4_400 })] });
  expect(found).toMatchObject({ standing: "undocumented", decided: false, entryId: null });
  expect(found.sentence).toContain("the nearest entry, House 14, is 7.5 ft away");
});

test("an entry of which a person said what became of it is looked for at no tie-in far off", () => {
  const gone = { explanation: "Taken out in 1971", explainedBy: "Ruth Lindqvist" };
  const entries = [
    anEntry("e", { label: "House 14", distance: 4_400, ...gone }),
    anEntry("f", { label: "House 16", distance: 7_000 }),
  ];
  const tieIns = [...FACTS.tieIns, aTieIn("u", { label: "T2" })];
  const observations = [
    ...FACTS.observations,
    anObservation("p", { counter: 7_000, tieInId: "u" }),
  ];
  const found = tieInOf({ entries, tieIns, observations });
  expect(found).toMatchObject({ standing: "undocumented", decided: true });
  expect(found.sentence).toContain("no matching entry on record");
});

test("a tie-in that fits an entry nearly as well as the one proposed is not undocumented for certain", () => {
  const { tieIns } = reportOn(
    aFile({
      ...FACTS,
      tieIns: [...FACTS.tieIns, aTieIn("u", { label: "T2", kind: "unknown" })],
      observations: [
        anObservation("o", { counter: 3_650, tieInId: "t" }),
        anObservation("p", { counter: 3_540, tieInId: "u" }),
      ],
    }),
    "2026-11-25",
  );
  const left = tieIns.find(({ standing }) => standing === "undocumented");
  expect(left).toMatchObject({ decided: false, entryId: null });
  expect(left?.sentence).toBe(
    "Seen at 35.4 ft, give or take 1.0 ft, in Run 1; House 14 fits it nearly as well as the tie-in that it is proposed for.",
  );
});

test("a tie-in proven dead is inactive, with who proved it, and so is its entry", () => {
  const settled = { settledBy: "Dana Okafor", settledReason: "Capped behind the wall, dug up" };
  const tieIns = [aTieIn("t", { label: "T1", inactive: true, ...settled })];
  const found = tieInOf({ tieIns });
  expect(found).toMatchObject({ standing: "inactive", decided: true, live: false });
  expect(found.sentence).toBe("Out of use as Dana Okafor settled: Capped behind the wall, dug up.");
  expect(entryOf({ tieIns }).standing).toBe("inactive");
});

test.each(["yard-drain", "roof-drain", "cleanout-riser"] as const)(
  "a %s is no sanitary branch, carries nobody's sewage and answers to no entry",
  (kind) => {
    const tieIns = [aTieIn("t", { kind })];
    expect(tieInOf({ tieIns })).toMatchObject({
      standing: "not-a-sanitary-branch",
      live: false,
      entryId: null,
    });
    expect(entryOf({ tieIns }).standing).toBe("on-record-not-seen");
  },
);

test.each([
  ["unknown", true],
  ["building", true],
  ["capped-stub", false],
  ["old-septic-line", false],
] as const)("a tie-in of kind %s counts as live: %s", (kind, live) => {
  expect(tieInOf({ tieIns: [aTieIn("t", { kind })] }).live).toBe(live);
});

test("an entry is on record, not seen, only where a run looked all around its place", () => {
  const entries = [anEntry("e", { label: "Shop 22", distance: 8_000 }), HOUSE_20];
  const found = entryOf({ ...AGREEING, entries });
  expect(found).toMatchObject({ standing: "on-record-not-seen", decided: false, tieInId: null });
  expect(found.sentence).toBe(
    "Card 1184 shows Shop 22 at 80.0 ft; the camera saw the pipe from 78.6 to 81.4 ft and no branch of its own there.",
  );
});

test("an entry is on record, not inspected, where part of its place was under water", () => {
  const entries = [anEntry("e", { label: "Shop 22", distance: 8_000 })];
  const gaps = [aGap("run", { fromCounter: 8_100, toCounter: 8_700 })];
  const found = entryOf({ entries, gaps });
  expect(found.standing).toBe("on-record-not-inspected");
  expect(found.sentence).toBe(
    "Card 1184 shows Shop 22 at 80.0 ft; the pipe from 81.0 to 87.0 ft was under water, so it may be there, unseen.",
  );
});

test("an entry is on record, not inspected, where no run went", () => {
  const runs = [aRun("run", { toCounter: 5_000 })];
  const found = entryOf({ entries: [anEntry("e", { distance: 8_000 })], runs });
  expect(found.standing).toBe("on-record-not-inspected");
  expect(found.sentence).toContain("was reached by no run");
});

test("an entry without a distance can't be said to be missing", () => {
  const found = entryOf({ entries: [anEntry("e", { label: "House 14", distance: null })] });
  expect(found).toMatchObject({ standing: "on-record-not-inspected", station: null });
  expect(found.sentence).toBe(
    "House 14 has no distance on the record, so no run is known to have covered it.",
  );
});

test("an entry that a person explained is decided and keeps its standing", () => {
  const explained = { explanation: "Never built", explainedBy: "Ruth Lindqvist" };
  const found = entryOf({ entries: [anEntry("e", { distance: 8_000, ...explained })] });
  expect(found).toMatchObject({ standing: "on-record-not-seen", decided: true });
  expect(found.sentence).toMatch(/Explained by Ruth Lindqvist: Never built\.$/);
});

test("a proposal gives the tie-in its property only while it stands clear", () => {
  expect(tieInOf({})).toMatchObject({ propertyId: "14", decided: false });
  const likely = [anEntry("e", { distance: 3_300, propertyId: "14" })];
  expect(tieInOf({ entries: likely })).toMatchObject({
    standing: "on-record-seen-elsewhere",
    propertyId: null,
  });
});
