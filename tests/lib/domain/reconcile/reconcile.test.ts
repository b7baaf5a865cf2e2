import fc from "fast-check";
import { expect, test } from "vitest";
import type { Pairing } from "#lib/domain/facts/pairing.ts";
import { bandOf, type RecordMark, type SeenMark } from "#lib/domain/reconcile/likeness.ts";
import type { Reconciliation } from "#lib/domain/reconcile/reconcile.ts";
import { effort } from "#tests/support/effort.ts";
import { aPairing } from "#tests/support/file.ts";
import {
  anEntryMark as entry,
  reconciled as reconciledWith,
  aSeenMark as seen,
} from "#tests/support/marks.ts";

function reconciled(
  entries: readonly RecordMark[],
  tieIns: readonly SeenMark[],
  pairings: readonly Pairing[] = [],
): Reconciliation {
  return reconciledWith(entries, tieIns, { pairings });
}

function pairsOf({ proposals }: Reconciliation): string[] {
  return proposals.map(({ entryId, tieInId, band }) => `${entryId}=${tieInId} ${band}`).sort();
}

const STATIONS = [1_800, 3_400, 5_200, 6_800, 9_100];

function shifted(shift: number): { entries: RecordMark[]; tieIns: SeenMark[] } {
  return {
    entries: STATIONS.map((station, index) => entry(`e${index}`, station)),
    tieIns: STATIONS.map((station, index) => seen(`t${index}`, station + shift)),
  };
}

test("reconcile() takes the record as written where it agrees", () => {
  const { entries, tieIns } = shifted(30);
  const found = reconciled(entries, tieIns);
  expect(found.alignment).toMatchObject({ shift: 0, scale: 0, explained: 5, of: 5 });
  expect(found.alignment?.sentence).toBe(
    "The card matches the camera with no shift; 5 of 5 entries are within tolerance.",
  );
  expect(pairsOf(found)).toEqual([
    "e0=t0 same",
    "e1=t1 same",
    "e2=t2 same",
    "e3=t3 same",
    "e4=t4 same",
  ]);
});

test("reconcile() finds another zero point and says so: the card reads 2.4 ft long throughout", () => {
  const { entries, tieIns } = shifted(-240);
  const found = reconciled(entries, tieIns);
  expect(found.alignment).toMatchObject({ shift: -240, scale: 0, explained: 5 });
  expect(found.alignment?.sentence).toBe(
    "The card reads 2.4 ft long throughout, probably a different zero point; with that corrected, 5 of 5 entries are within tolerance, none without it.",
  );
  expect(found.proposals.map(({ distance, rawDistance }) => [distance, rawDistance])).toEqual(
    STATIONS.map(() => [0, -240]),
  );
  expect(found.stations.get("e0")).toBe(1_560);
});

test("reconcile() finds a card that reads short, more so the farther upstream", () => {
  const entries = STATIONS.map((station, index) => entry(`e${index}`, station));
  const tieIns = STATIONS.map((station, index) => seen(`t${index}`, Math.round(station * 1.035)));
  const found = reconciled(entries, tieIns);
  expect(found.alignment?.scale).toBeGreaterThan(30_000);
  expect(found.alignment?.scale).toBeLessThan(40_000);
  expect(found.alignment?.sentence).toMatch(
    /^The card reads 3\.\d% short over its length, probably a counter or scale error;/,
  );
  expect(found.proposals.every(({ band }) => band === "same")).toBe(true);
});

test("reconcile() knows the trade's example: card 58, seen at 60.5, so 2.5 ft further up", () => {
  const found = reconciled([entry("card 58", 5_800)], [seen("tie-in", 6_050)]);
  expect(found.alignment?.shift).toBe(0);
  expect(found.proposals).toHaveLength(1);
  expect(found.proposals[0]).toMatchObject({ distance: 250, rawDistance: 250, band: "likely" });
  expect(found.proposals[0]?.reasons[0]).toBe("2.5 ft difference; beyond the 1.4 ft tolerance.");
});

test("reconcile() calls for no shift on two entries, however well one would fit, but tells of it", () => {
  const found = reconciled(
    [entry("e0", 1_800), entry("e1", 3_400)],
    [seen("t0", 2_500), seen("t1", 4_100)],
  );
  expect(found.alignment).toMatchObject({ shift: 0, explained: 0 });
  expect(found.alignment?.sentence).toContain(
    "Shifting the record 7.0 ft upstream would match 2, too few to rule out chance.",
  );
  expect(pairsOf(found)).toEqual(["e0=t0 conflict", "e1=t1 conflict"]);
  expect([...found.doubtful]).toEqual([
    ["t0", { why: "zero", otherId: "e0" }],
    ["t1", { why: "zero", otherId: "e1" }],
  ]);
});

test("reconcile() names what rivals a pair: never another entry that is 30 ft away", () => {
  const found = reconciled(
    [entry("e0", 1_800), entry("e1", 4_800)],
    [seen("t0", 2_400), seen("t1", 5_400)],
  );
  expect(pairsOf(found)).toEqual(["e0=t0 conflict", "e1=t1 conflict"]);
  expect(found.proposals.flatMap(({ reasons }) => reasons).join(" ")).not.toContain("nearly as");
  const two = reconciled([entry("e0", 3_950), entry("e1", 4_060)], [seen("t", 4_000)]);
  expect(two.proposals[0]?.reasons).toContain(
    "The record’s e1 is nearly as good a match: needs human review.",
  );
});

test("reconcile() does not take a single far-off entry for a shift: it is a real difference", () => {
  const { entries, tieIns } = shifted(0);
  const found = reconciled(entries, tieIns.with(2, seen("t2", 5_500)));
  expect(found.alignment?.shift).toBe(0);
  expect(pairsOf(found)).toContain("e2=t2 likely");
});

test("reconcile() prefers one sure pair and one left over to two pairs that are only likely", () => {
  const found = reconciled(
    [entry("a", 1_000), entry("b", 1_400)],
    [seen("s", 600), seen("t", 1_010)],
  );
  expect(pairsOf(found)[0]).toBe("a=t same");
  expect(pairsOf(found)).not.toContain("a=s likely");
});

test("reconcile() pairs by side where distance does not tell two branches apart", () => {
  const found = reconciled(
    [entry("l", 4_000, { side: "left" }), entry("r", 4_050, { side: "right" })],
    [seen("tr", 4_000, { side: "right" }), seen("tl", 4_050, { side: "left" })],
  );
  expect(pairsOf(found)).toEqual(["l=tl same", "r=tr same"]);
});

test("reconcile() takes a branch at the crown for either side, but one on the same side before it", () => {
  const crown = seen("crown", 4_000, { side: "crown" });
  expect(pairsOf(reconciled([entry("e", 4_000)], [crown]))).toEqual(["e=crown same"]);
  expect(pairsOf(reconciled([entry("e", 4_000)], [crown, seen("left", 4_010)]))).toEqual([
    "e=left same",
  ]);
});

test("reconcile() asks where only the side differs, and says so", () => {
  const found = reconciled([entry("e", 4_000)], [seen("t", 4_000, { side: "right" })]);
  expect(pairsOf(found)).toEqual(["e=t likely"]);
  expect(found.proposals[0]?.reasons).toContain(
    "The side differs: left on the record, right seen.",
  );
});

test("reconcile() says that a card may be drawn looking downstream, where every side is the other way round", () => {
  const { entries, tieIns } = shifted(0);
  const mirrored = entries.map((each) => ({ ...each, side: "right" as const }));
  expect(reconciled(mirrored, tieIns).alignment?.sentence).toContain(
    "5 of 5 pairs lie on opposite sides: the sides on record may be as seen looking downstream.",
  );
  const one = entries.with(0, entry("e0", 1_800, { side: "right" }));
  expect(reconciled(one, tieIns).alignment?.sentence).not.toContain("downstream");
});

test("reconcile() uses size and material to choose between two near branches", () => {
  const found = reconciled(
    [entry("e", 4_000, { diameter: 6, material: "pvc" })],
    [seen("near", 4_010), seen("like", 4_060, { diameter: 6, material: "pvc" })],
  );
  expect(pairsOf(found)).toEqual(["e=like same"]);
});

test("reconcile() never pairs what is known to be two properties'", () => {
  const found = reconciled(
    [entry("e", 4_000, { propertyId: "12" })],
    [seen("t", 4_000, { propertyId: "14" })],
  );
  expect(found.proposals).toEqual([]);
});

test("reconcile() proposes the tie-in that is settled to be the entry's property, however far off", () => {
  const found = reconciled(
    [entry("e", 4_000, { propertyId: "12" })],
    [seen("t", 6_500, { propertyId: "12" })],
  );
  expect(pairsOf(found)).toEqual(["e=t conflict"]);
});

test("reconcile() proposes nothing beyond 10 ft that only its place speaks for", () => {
  expect(reconciled([entry("e", 4_000)], [seen("t", 5_010)]).proposals).toEqual([]);
});

test("reconcile() shows a near-tie: two branches on one side, as near to the entry", () => {
  const found = reconciled([entry("e", 4_000)], [seen("a", 3_950), seen("b", 4_060)]);
  expect(found.proposals).toHaveLength(1);
  expect(found.proposals[0]?.nearTie).toBe(true);
  expect(found.proposals[0]?.reasons).toContain(
    "b at 40.6 ft is nearly as good a match: needs human review.",
  );
  const clear = reconciled([entry("e", 4_000)], [seen("a", 4_000), seen("b", 4_200)]);
  expect(clear.proposals[0]?.nearTie).toBe(false);
});

test("reconcile() flags evenly spaced branches that another shift explains nearly as well", () => {
  const even = [1_000, 1_800, 2_600, 3_400, 4_200];
  const entries = even.map((station, index) => entry(`e${index}`, station));
  const tieIns = even.map((station, index) => seen(`t${index}`, station + 800));
  const found = reconciled(entries, tieIns);
  expect(found.alignment?.shift).toBe(0);
  expect(found.alignment?.sentence).toContain("Shifting the record 8.0 ft upstream");
  expect(found.proposals.every(({ nearTie }) => nearTie)).toBe(true);
  expect([...found.doubtful]).toEqual([["t4", { why: "zero", otherId: "e4" }]]);
});

test("reconcile() fixes what a person accepted and never proposes what a person refused", () => {
  const entries = [entry("a", 4_000), entry("b", 4_300)];
  const tieIns = [seen("s", 4_000), seen("t", 4_300)];
  const crossed = [aPairing("a", "t")];
  expect(pairsOf(reconciled(entries, tieIns, crossed))).toEqual(["b=s likely"]);
  const refused = [aPairing("a", "s", { state: "refused" })];
  expect(pairsOf(reconciled(entries, tieIns, refused))).not.toContain("a=s same");
});

test("reconcile() lets accepted pairings speak for a shift like any other", () => {
  const { entries, tieIns } = shifted(230);
  const pairings = entries.slice(0, 3).map((each, index) => aPairing(each.entryId, `t${index}`));
  const found = reconciled(entries, tieIns, pairings);
  expect(found.alignment).toMatchObject({ shift: 230, explained: 5 });
  expect(pairsOf(found)).toEqual(["e3=t3 same", "e4=t4 same"]);
});

test("reconcile() takes one branch on two papers for one connection", () => {
  const { entries, tieIns } = shifted(0);
  const again = entry("again", 5_230, { recordId: "permit" });
  const found = reconciled([...entries, again], tieIns);
  expect(pairsOf(found)).toContain("again=t2 same");
  expect(pairsOf(found)).toContain("e2=t2 same");
  expect(found.alignment).toMatchObject({ explained: 6, of: 6 });
});

test("reconcile() still proposes the second paper's entry once the first paper's is accepted", () => {
  const { entries, tieIns } = shifted(230);
  const again = entries.map((each, index) =>
    entry(`p${index}`, each.station, { recordId: "permit" }),
  );
  const pairings = entries.map((each, index) => aPairing(each.entryId, `t${index}`));
  const found = reconciled([...entries, ...again], tieIns, pairings);
  expect(found.alignment).toMatchObject({ shift: 230, explained: 10, of: 10 });
  expect(pairsOf(found)).toEqual([
    "p0=t0 same",
    "p1=t1 same",
    "p2=t2 same",
    "p3=t3 same",
    "p4=t4 same",
  ]);
});

test("reconcile() reads a record by itself where that explains two entries more", () => {
  const { entries, tieIns } = shifted(0);
  const own = entries.map((each, index) =>
    entry(`p${index}`, each.station - 310, { recordId: "permit" }),
  );
  const found = reconciled([...entries, ...own], tieIns);
  expect(found.proposals.filter(({ band }) => band === "same")).toHaveLength(10);
  expect(found.alignment?.sentence).toContain(
    "Permit 94-0377 is aligned on its own: it reads 3.1 ft short throughout, probably a different zero point.",
  );
});

test("reconcile() has nothing to say where one side is empty", () => {
  expect(reconciled([], [seen("t", 100)])).toMatchObject({ alignment: null, proposals: [] });
  expect(reconciled([entry("e", 100)], []).stations.get("e")).toBe(100);
});

test.each([
  [0, "same"],
  [140, "same"],
  [150, "likely"],
  [500, "likely"],
  [510, "conflict"],
] as const)("bandOf() puts %s hundredths off a tolerance of 140 into %s", (off, band) => {
  expect(bandOf(off, 140, true)).toBe(band);
});

test("bandOf() never calls two sides the same, and lets a wide tolerance reach beyond 5 ft", () => {
  expect(bandOf(0, 140, false)).toBe("likely");
  expect(bandOf(600, 700, true)).toBe("same");
});

/**
 * Lines drawn at random are sometimes as regular as a comb, and a comb fits itself in many places:
 * a fixed seed keeps these two checks the same everywhere.
 */
const SEED = 19_580_412;

/** A true line: branches with gaps of 4 to 25 ft; some only on record, some only in the pipe. */
const truth = fc.record({
  branches: fc.array(
    fc.record({
      gap: fc.integer({ min: 40, max: 250 }),
      side: fc.constantFrom("left" as const, "right" as const),
      noise: fc.integer({ min: -3, max: 3 }),
      fate: fc.constantFrom("both", "both", "both", "both", "record", "pipe"),
    }),
    { minLength: 6, maxLength: 14 },
  ),
  shift: fc.integer({ min: -80, max: 80 }),
  scale: fc.integer({ min: -40, max: 40 }),
});

type Truth = typeof truth extends fc.Arbitrary<infer T> ? T : never;

function lineOf({ branches, shift, scale }: Truth) {
  let at = 1_500;
  const entries: RecordMark[] = [];
  const tieIns: SeenMark[] = [];
  branches.forEach(({ gap, side, noise, fate }, index) => {
    at += gap * 10;
    const recorded = Math.round(((at - shift * 10) / (1 + scale / 1_000) + noise * 10) / 10) * 10;
    if (fate !== "pipe") entries.push(entry(`e${index}`, recorded, { side }));
    if (fate !== "record") tieIns.push(seen(`t${index}`, at, { side }));
  });
  const documented = branches.flatMap(({ fate }, index) => (fate === "both" ? [`t${index}`] : []));
  return { entries, tieIns, documented };
}

test("reconcile() never calls a branch undocumented for certain that the record shows, whatever the shift and scale", () => {
  fc.assert(
    fc.property(truth, (drawn) => {
      const { entries, tieIns, documented } = lineOf(drawn);
      fc.pre(documented.length >= 5);
      const found = reconciled(entries, tieIns);
      const claimed = new Set([
        ...found.proposals.map(({ tieInId }) => tieInId),
        ...found.doubtful.keys(),
      ]);
      expect(documented.filter((id) => !claimed.has(id))).toEqual([]);
    }),
    { numRuns: 300, seed: SEED },
  );
});

test("reconcile() explains at least as many entries as the truth does, but for the price of a shift", () => {
  fc.assert(
    fc.property(truth, (drawn) => {
      const { entries, tieIns, documented } = lineOf(drawn);
      fc.pre(documented.length >= 5 && documented.length >= entries.length / 2);
      const explained = reconciled(entries, tieIns).alignment?.explained ?? 0;
      expect(explained).toBeGreaterThanOrEqual(documented.length - 3);
    }),
    { numRuns: 300, seed: SEED },
  );
});

test("reconcile() finds no shift on a line that has none", () => {
  fc.assert(
    fc.property(truth, (drawn) => {
      const { entries, tieIns, documented } = lineOf({ ...drawn, shift: 0, scale: 0 });
      fc.pre(documented.length >= 3);
      expect(reconciled(entries, tieIns).alignment).toMatchObject({ shift: 0, scale: 0 });
    }),
  );
});

test("reconcile() proposes one to one within a record, within its bands, in any order of the rows", () => {
  const mark = fc.record({
    station: fc.integer({ min: 0, max: 1_200 }).map((tenths) => tenths * 10),
    side: fc.constantFrom("left" as const, "right" as const, "unknown" as const),
    diameter: fc.constantFrom(4, 6, null),
  });
  fc.assert(
    fc.property(fc.array(mark, { maxLength: 10 }), fc.array(mark, { maxLength: 10 }), (a, b) => {
      const entries = a.map(({ station, ...rest }, index) => entry(`e${index}`, station, rest));
      const tieIns = b.map(({ station, ...rest }, index) => seen(`t${index}`, station, rest));
      const found = reconciled(entries, tieIns);
      const { proposals, alignment } = found;
      expect(new Set(proposals.map(({ entryId }) => entryId)).size).toBe(proposals.length);
      expect(new Set(proposals.map(({ tieInId }) => tieInId)).size).toBe(proposals.length);
      for (const { distance, tolerance, band } of proposals) {
        if (band === "same") expect(Math.abs(distance)).toBeLessThanOrEqual(tolerance);
        if (band === "likely") expect(Math.abs(distance)).toBeLessThanOrEqual(500);
        if (band === "conflict") expect(Math.abs(distance)).toBeGreaterThan(500);
      }
      const again = reconciled(entries.toReversed(), tieIns.toReversed());
      expect(again.alignment).toEqual(alignment);
      expect(pairsOf(again)).toEqual(pairsOf(found));
    }),
  );
});

test("reconcile() answers for 120 entries and 120 branches without keeping anybody waiting", () => {
  const entries = Array.from({ length: 120 }, (_, index) =>
    entry(`e${index}`, 1_000 + index * 700 + (index % 5) * 60),
  );
  const tieIns = entries.map(({ station }, index) => seen(`t${index}`, station + 310));
  const before = effort();
  const found = reconciled(entries, tieIns);
  expect(effort() - before).toBeLessThan(10_000);
  expect(found.alignment).toMatchObject({ shift: 310, explained: 120 });
});
