import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Side } from "#lib/domain/facts/line.ts";
import type { Reconciliation } from "#lib/domain/reconcile/reconcile.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { knownLine, numbers, type Oddity } from "#tests/bench/truth.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";
import { anAlignment, anEntryMark, aSeenMark, reconciled } from "#tests/support/marks.ts";

const SEEN = [2_200, 3_500, 6_100, 9_400, 12_750];
const SIDES: readonly Side[] = ["left", "right", "right", "left", "right"];
const OTHER: Partial<Record<Side, Side>> = { left: "right", right: "left" };

const TIE_INS = SEEN.map((at, i) => aSeenMark(`t${i}`, at, { side: SIDES[i] ?? "left" }));

/** The same five connections as a card has them. */
function card(distanceOf: (station: number) => number, { mirrored = false } = {}) {
  return SEEN.map((at, i) => {
    const side = SIDES[i] ?? "left";
    return anEntryMark(`e${i}`, distanceOf(at), { side: mirrored ? (OTHER[side] ?? side) : side });
  });
}

function firmOf({ proposals, doubtful, nearTies }: Reconciliation): string[] {
  const told = new Set([...proposals.map(({ tieInId }) => tieInId), ...doubtful.keys()]);
  return TIE_INS.map(({ tieInId }) => tieInId).filter((id) => !told.has(id) && !nearTies.has(id));
}

const TRUE_PAIRS = ["e0=t0", "e1=t1", "e2=t2", "e3=t3", "e4=t4"];

function pairsOf(pairs: readonly { entryId: string; tieInId: string }[]): string[] {
  return pairs.map(({ entryId, tieInId }) => `${entryId}=${tieInId}`).sort();
}

describe("a card with every side mirrored", () => {
  test("is read so, with the shift that it has, and each pair is asked", () => {
    const found = reconciled(
      card((at) => at - 600, { mirrored: true }),
      TIE_INS,
    );
    expect(found.alignment).toMatchObject({ shift: 600, explained: 5 });
    expect(pairsOf(found.proposals)).toEqual(TRUE_PAIRS);
    expect(found.proposals.map(({ band }) => band)).toEqual(Array(5).fill("likely"));
    expect(found.proposals[0]?.reasons).toContain(
      "The side differs: right on the record, left seen.",
    );
    expect(found.alignment?.sentence).toBe(
      "The card reads 6.0 ft short throughout, probably a different zero point; with that corrected, 5 of 5 entries are within tolerance, none without it. 5 of 5 pairs lie on opposite sides: the sides on record may be as seen looking downstream.",
    );
  });

  test("tells two branches on opposite sides, half a foot apart, from one another", () => {
    const seen = [...TIE_INS, aSeenMark("t5", 9_450, { side: "right" })];
    const entries = [
      ...card((at) => at, { mirrored: true }),
      anEntryMark("e5", 9_450, { side: "left" }),
    ];
    expect(pairsOf(reconciled(entries, seen).proposals)).toEqual([...TRUE_PAIRS, "e5=t5"]);
  });

  test("keeps its sides the other way round once a person accepts the shift", () => {
    const entries = card((at) => at - 600, { mirrored: true });
    const found = reconciled(entries, TIE_INS, { alignments: [anAlignment(600)] });
    expect(found.alignment?.explained).toBe(5);
    expect(pairsOf(found.proposals)).toEqual(TRUE_PAIRS);
  });
});

describe("a card in meters", () => {
  const entries = card((at) => Math.round(at / 3.28084));

  test("is suspected and said, offered first, and nothing is firm while it explains more", () => {
    const found = reconciled(entries, TIE_INS);
    expect(found.alignment?.sentence).toContain(
      "The card may be in meters: read that way, 5 of 5 entries are within tolerance",
    );
    expect(found.alternatives[0]?.sentence).toMatch(/^If the card is in meters, 5 of 5 entries/);
    expect(pairsOf(found.alternatives[0]?.pairs ?? [])).toEqual(TRUE_PAIRS);
    expect(firmOf(found)).toEqual([]);
    const unsure = found.proposals.filter(
      ({ entryId, tieInId }) => entryId.slice(1) !== tieInId.slice(1),
    );
    expect(unsure.filter(({ nearTie }) => !nearTie)).toEqual([]);
  });

  test("stands as a person accepted it, in words", () => {
    const [way] = reconciled(entries, TIE_INS).alternatives;
    const accepted = anAlignment(way?.shift ?? 0, { scale: way?.scale ?? 0 });
    const found = reconciled(entries, TIE_INS, { alignments: [accepted] });
    expect(pairsOf(found.proposals)).toEqual(TRUE_PAIRS);
    expect(found.alignment?.sentence).toBe(
      "Accepted by Dana Okafor: the card is in meters; with that corrected, 5 of 5 entries are within tolerance, none without it.",
    );
    expect(found.doubtful.size).toBe(0);
  });
});

describe("a card measured from the other end", () => {
  const entries = card((at) => 16_300 - at);

  test("is suspected and said, with its zero, and nothing is firm while it explains more", () => {
    const found = reconciled(entries, TIE_INS);
    expect(found.alignment?.sentence).toContain(
      "The card may be measured from the house end, its zero at 163.0 ft: read that way, 5 of 5 entries",
    );
    expect(found.alternatives[0]?.sentence).toMatch(
      /^If the card is measured from the house end, its zero at 163\.0 ft, 5 of 5 entries match/,
    );
    expect(pairsOf(found.alternatives[0]?.pairs ?? [])).toEqual(TRUE_PAIRS);
    expect(firmOf(found)).toEqual([]);
  });

  test("of one record among several is told of that record alone", () => {
    const permit = card((at) => at).map((each) => ({
      ...each,
      entryId: `p${each.entryId.slice(1)}`,
      recordId: "permit",
    }));
    const { alignment, alternatives } = reconciled([...entries, ...permit], TIE_INS);
    expect(alignment?.sentence).toContain("Card 1184 may be measured from the house end");
    expect(alternatives[0]).toMatchObject({ recordId: "card", scale: -2_000_000 });
  });

  test("in meters too is found", () => {
    const both = card((at) => Math.round((16_300 - at) / 3.28084));
    expect(reconciled(both, TIE_INS).alternatives[0]?.sentence).toMatch(
      /^If the card is in meters and is measured from the house end/,
    );
  });

  test("that agrees in every entry as it is written gives no cause to look", () => {
    const regular = [1_100, 2_200, 3_300, 4_400];
    const found = reconciled(
      regular.map((at, i) => anEntryMark(`e${i}`, at)),
      regular.map((at, i) => aSeenMark(`t${i}`, at)),
    );
    expect(found.alignment?.sentence).not.toContain("house end");
  });
});

describe("what agrees is only what lies there", () => {
  test("a card that fits nowhere is not said to agree", () => {
    const found = reconciled(
      [anEntryMark("e0", 3_000), anEntryMark("e1", 7_000)],
      [aSeenMark("t0", 5_000)],
    );
    expect(found.alignment?.sentence).toBe(
      "As recorded, the card does not match the camera, and no other zero explains enough; none of 2 entries is within tolerance.",
    );
  });

  test("a card that fits in part is said to agree in part", () => {
    const found = reconciled(
      [anEntryMark("e0", 3_000), anEntryMark("e1", 7_000), anEntryMark("e2", 12_000)],
      [aSeenMark("t0", 3_000), aSeenMark("t1", 9_500), aSeenMark("t2", 15_000)],
    );
    expect(found.alignment?.sentence).toMatch(
      /^As recorded, the card matches the camera only in part, and no other zero explains enough; 1 of 3 entries is within/,
    );
  });

  test("a shift that explains more than the record as written is not called chance", () => {
    const row = Array.from({ length: 7 }, (_, i) => 1_100 * (i + 1));
    const found = reconciled(
      row.map((at, i) => anEntryMark(`e${i}`, at)),
      row.map((at, i) => aSeenMark(`t${i}`, at + 1_100)),
    );
    expect(found.alignment?.sentence).toContain(
      "Shifting the record 11.0 ft upstream would match 7: confirm one known point",
    );
    expect(found.alignment?.sentence).not.toContain("chance");
  });
});

test("two branches 1.7 ft apart on different sides are likely one: to be asked", () => {
  const found = reconciled(
    [anEntryMark("e0", 4_000, { side: "left" }), anEntryMark("e1", 9_000)],
    [aSeenMark("t0", 4_170, { side: "right" }), aSeenMark("t1", 9_000)],
  );
  expect(found.proposals[0]).toMatchObject({ entryId: "e0", tieInId: "t0", band: "likely" });
  const same = reconciled(
    [anEntryMark("e0", 4_000, { side: "left" })],
    [aSeenMark("t0", 4_170, { side: "right" }), aSeenMark("t1", 4_000)],
  );
  expect(pairsOf(same.proposals)).toEqual(["e0=t1"]);
});

test("a shift is judged by the entries that lie where a run looked", () => {
  const stations = [1_800, 3_400, 5_200, 6_800];
  const beyond = [12_000, 13_500, 15_000, 16_700, 18_100, 19_900];
  const file = aFile({
    line: { upperEnd: 21_000 },
    records: [aRecord("card")],
    entries: [...stations, ...beyond].map((at, i) => anEntry(`e${i}`, { distance: at })),
    runs: [aRun("run", { toCounter: 9_000 })],
    anchors: [anAnchor("run")],
    tieIns: [...stations, 4_500].map((_, i) => aTieIn(`t${i}`)),
    observations: [...stations, 4_500].map((at, i) =>
      anObservation(`o${i}`, { counter: at + 450, tieInId: `t${i}` }),
    ),
  });
  const { alignment, tieIns, entries } = reportOn(file, "2026-11-25");
  expect(alignment).toMatchObject({ shift: 450, explained: 4 });
  expect(alignment?.sentence).toContain(", and 6 are where no run looked.");
  expect(tieIns[4]).toMatchObject({ standing: "undocumented", decided: true });
  expect(entries.slice(4).map(({ standing }) => standing)).toEqual(
    Array(6).fill("on-record-not-inspected"),
  );
});

test("an entry that a person explained is not said to lie where no run looked", () => {
  const entries = [1_000, 2_500, 4_000].map((at, i) =>
    anEntryMark(`e${i}`, at, { explained: i === 2 }),
  );
  const found = reconciled(entries, [aSeenMark("t0", 1_000), aSeenMark("t1", 2_500)]);
  expect(found.alignment?.sentence).toBe(
    "The card matches the camera with no shift; 2 of 3 entries are within tolerance, 1 is explained.",
  );
});

test("a pair that agrees alone, where hardly anything else does, is asked and not taken for the same", () => {
  const stations = [1_000, 2_500, 4_000, 6_000, 7_500];
  const entries = stations.map((at, i) => anEntryMark(`e${i}`, at));
  const alone = reconciled(entries, [
    aSeenMark("t0", 1_010),
    aSeenMark("t1", 3_300),
    aSeenMark("t2", 9_000),
  ]);
  const [pair] = alone.proposals.filter(({ entryId }) => entryId === "e0");
  expect(pair).toMatchObject({ tieInId: "t0", band: "likely" });
  expect(pair?.reasons.at(-1)).toContain("Too little else of the record matches");
  const most = reconciled(entries, [
    aSeenMark("t0", 1_010),
    aSeenMark("t1", 2_500),
    aSeenMark("t2", 4_000),
  ]);
  expect(most.proposals.map(({ band }) => band)).toEqual(["same", "same", "same"]);
});

test.each<Oddity>(["none", "mirrored", "meters", "reversed", "doubled"])(
  "nothing firm is false on made-up lines whose card is odd: %s",
  (oddity) => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 31 }), (seed) => {
        const hardness = { shift: 300, scale: 0, noise: 50, wrongSides: 5, oddity };
        const { file, undocumented, built } = knownLine(numbers(seed), hardness);
        const { tieIns, entries, proposals } = reportOn(file, "2026-11-25");
        const outright = tieIns.filter((each) => each.standing === "undocumented" && each.decided);
        const missed = entries.filter(({ standing }) => standing === "on-record-not-seen");
        expect(outright.filter(({ tieIn }) => !undocumented.has(tieIn.id))).toEqual([]);
        expect(missed.filter(({ entryId }) => built.has(entryId))).toEqual([]);
        const sure = proposals.filter(({ band, nearTie }) => band === "same" && !nearTie);
        const wrong = sure.filter(
          ({ entryId, tieInId }) => entryId.replace(/^e| again$/g, "") !== tieInId.slice(1),
        );
        expect(wrong.map(({ entryId, tieInId }) => `${entryId}=${tieInId}`)).toEqual([]);
      }),
      { numRuns: 60, seed: 20_261_125 },
    );
  },
);
