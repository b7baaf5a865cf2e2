import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Reconciliation } from "#lib/domain/reconcile/reconcile.ts";
import { aPairing } from "#tests/support/file.ts";
import { anAlignment, anEntryMark, aSeenMark, reconciled } from "#tests/support/marks.ts";

const EVEN = [1_000, 1_800, 2_600, 3_400, 4_200];

/** A card as regular as a comb, and the same comb 8 ft farther upstream: it fits in two places. */
function comb(shift = 800) {
  return {
    entries: EVEN.map((station, at) => anEntryMark(`e${at}`, station)),
    tieIns: EVEN.map((station, at) => aSeenMark(`t${at}`, station + shift)),
  };
}

function shifted(shift: number) {
  const stations = [1_800, 3_400, 5_200, 6_800, 9_100];
  return {
    entries: stations.map((station, at) => anEntryMark(`e${at}`, station)),
    tieIns: stations.map((station, at) => aSeenMark(`t${at}`, station + shift)),
  };
}

function pairsOf(way: Reconciliation["alternatives"][number]): string[] {
  return way.pairs.map(({ entryId, tieInId }) => `${entryId}=${tieInId}`);
}

describe("alternatives", () => {
  test("another zero that explains as many is told, with what it would change", () => {
    const { entries, tieIns } = comb();
    const [way, ...others] = reconciled(entries, tieIns).alternatives;
    expect(way).toMatchObject({ shift: 800, scale: 0, explained: 5 });
    expect(pairsOf(way ?? expect.fail())).toEqual(["e0=t0", "e1=t1", "e2=t2", "e3=t3", "e4=t4"]);
    expect(way?.sentence).toBe(
      "With the card’s zero 8.0 ft farther upstream, 5 of 5 entries match; t0 would be e0, not e1; t1 would be e1, not e2; t2 would be e2, not e3; and 2 more would change.",
    );
    expect(others.length).toBeLessThanOrEqual(3);
  });

  test("two branches as near to an entry are two ways under one zero", () => {
    const found = reconciled(
      [anEntryMark("House 14", 4_000)],
      [aSeenMark("T1", 3_950), aSeenMark("T2", 4_060)],
    );
    expect(found.alternatives).toHaveLength(1);
    expect(found.alternatives[0]).toMatchObject({ shift: 0, explained: 1 });
    expect(found.alternatives[0]?.sentence).toBe(
      "With the same zero, 1 of 1 entry matches; T1 would have no entry; and T2 would be House 14.",
    );
  });

  test("what stands clear has no other way", () => {
    const { entries, tieIns } = shifted(240);
    expect(reconciled(entries, tieIns).alternatives).toEqual([]);
  });

  test("a pair that a person accepted is in every way, and one that was refused in none", () => {
    const { entries, tieIns } = comb();
    const accepted = reconciled(entries, tieIns, { pairings: [aPairing("e0", "t0")] });
    for (const way of accepted.alternatives) expect(pairsOf(way)).toContain("e0=t0");
    const refused = reconciled(entries, tieIns, {
      pairings: [aPairing("e0", "t0", { state: "refused" })],
    });
    for (const way of refused.alternatives) expect(pairsOf(way)).not.toContain("e0=t0");
  });

  test("an accepted way becomes what stands, and the old one an alternative", () => {
    const { entries, tieIns } = comb();
    const found = reconciled(entries, tieIns, { alignments: [anAlignment(800)] });
    expect(found.alignment).toMatchObject({ shift: 800, explained: 5 });
    expect(found.proposals.map(({ entryId, tieInId }) => `${entryId}=${tieInId}`)).toEqual([
      "e0=t0",
      "e1=t1",
      "e2=t2",
      "e3=t3",
      "e4=t4",
    ]);
    expect(found.proposals.every(({ nearTie }) => !nearTie)).toBe(true);
    expect(found.alternatives[0]).toMatchObject({ shift: 0 });
    expect(found.alternatives[0]?.sentence).toMatch(/^Taking the card as recorded, 4 of 5/);
  });

  test("no two ways have the same pairs or key, none is what stands, and four are the most", () => {
    const mark = fc.record({
      station: fc.integer({ min: 0, max: 400 }).map((tenths) => tenths * 10),
      side: fc.constantFrom("left" as const, "right" as const),
    });
    const marks = fc.array(mark, { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(marks, marks, (a, b) => {
        const entries = a.map(({ station, side }, at) => anEntryMark(`e${at}`, station, { side }));
        const tieIns = b.map(({ station, side }, at) => aSeenMark(`t${at}`, station, { side }));
        const { alternatives, proposals } = reconciled(entries, tieIns);
        const now = proposals
          .filter(({ band }) => band !== "conflict")
          .map(({ entryId, tieInId }) => `${entryId}=${tieInId}`)
          .sort()
          .join(" ");
        const ways = alternatives.map((way) => pairsOf(way).sort().join(" "));
        expect(new Set([now, ...ways]).size).toBe(ways.length + 1);
        expect(new Set(alternatives.map(({ key }) => key)).size).toBe(alternatives.length);
        expect(alternatives.length).toBeLessThanOrEqual(4);
        for (const { pairs, sentence } of alternatives) {
          expect(new Set(pairs.map(({ tieInId }) => tieInId)).size).toBe(pairs.length);
          expect(new Set(pairs.map(({ entryId }) => entryId)).size).toBe(pairs.length);
          expect(sentence).toMatch(/^[A-Z].*\.$/);
        }
      }),
    );
  });

  test.each([
    [
      [3_020, 3_000],
      [3_510, 3_350],
    ],
    [
      [3_260, 3_510],
      [3_110, 3_000],
    ],
    [
      [3_010, 3_000],
      [3_360, 3_510],
    ],
    [
      [3_000, 3_010],
      [3_510, 3_360],
    ],
  ])("entries at %j and tie-ins at %j pair the same under the other zero: no near-tie", (a, b) => {
    const { alternatives, proposals } = reconciled(
      a.map((at, index) => anEntryMark(`e${index}`, at)),
      b.map((at, index) => aSeenMark(`t${index}`, at)),
    );
    expect(alternatives).toEqual([]);
    expect(proposals).toHaveLength(2);
    expect(proposals.filter(({ nearTie }) => nearTie)).toEqual([]);
    expect(proposals.flatMap(({ reasons }) => reasons).join(" ")).not.toContain("a person has to");
  });

  test("wherever a proposal is a near-tie, there is another way to look at, and it pairs otherwise", () => {
    const station = fc.integer({ min: 0, max: 60 }).map((tenths) => 3_000 + tenths * 10);
    fc.assert(
      fc.property(
        fc.array(station, { minLength: 1, maxLength: 2 }),
        fc.array(station, { minLength: 1, maxLength: 3 }),
        (a, b) => {
          const entries = a.map((at, index) => anEntryMark(`e${index}`, at));
          const tieIns = b.map((at, index) => aSeenMark(`t${index}`, at));
          const { alternatives, proposals } = reconciled(entries, tieIns);
          const tied = proposals.filter(({ nearTie, band }) => nearTie && band !== "conflict");
          fc.pre(tied.length > 0);
          for (const { entryId, tieInId } of tied)
            expect(
              alternatives.some((way) => !pairsOf(way).includes(`${entryId}=${tieInId}`)),
            ).toBe(true);
        },
      ),
    );
  });
});

describe("a person’s word on the alignment", () => {
  test("an accepted shift is fixed for all records, a record’s own for it alone", () => {
    const { entries, tieIns } = shifted(0);
    const permit = entries.map((each, at) =>
      anEntryMark(`p${at}`, each.station - 310, { recordId: "permit" }),
    );
    const all = reconciled([...entries, ...permit], tieIns, { alignments: [anAlignment(0)] });
    expect(all.alignment).toMatchObject({ shift: 0, own: [], explained: 5, of: 10 });
    const own = reconciled([...entries, ...permit], tieIns, {
      alignments: [anAlignment(0), anAlignment(310, { recordId: "permit" })],
    });
    expect(own.alignment?.own).toMatchObject([
      { recordId: "permit", shift: 310, explained: 5, of: 5, decision: { shift: 310 } },
    ]);
    expect(own.alignment?.explained).toBe(10);
  });

  test("a refused shift, or one within 2.5 ft of it, is not proposed again", () => {
    const { entries, tieIns } = shifted(400);
    const refused = anAlignment(400, { state: "refused" });
    const found = reconciled(entries, tieIns, { alignments: [refused] });
    expect(found.alignment).toMatchObject({ shift: 0, scale: 0, decision: null });
    const near = anAlignment(600, { state: "refused" });
    expect(reconciled(entries, tieIns, { alignments: [near] }).alignment?.shift).toBe(0);
    const far = anAlignment(-400, { state: "refused" });
    expect(reconciled(entries, tieIns, { alignments: [far] }).alignment?.shift).toBe(400);
  });

  test("an accepted shift stands however badly it fits, and what the search finds is told beside it", () => {
    const { entries, tieIns } = shifted(700);
    const found = reconciled(entries, tieIns, { alignments: [anAlignment(0)] });
    expect(found.alignment).toMatchObject({
      shift: 0,
      explained: 0,
      proposed: { shift: 700, explained: 5 },
    });
    expect(found.doubtful.size).toBe(0);
    expect(found.alternatives[0]).toMatchObject({ shift: 700, explained: 5 });
    expect(found.alignment?.sentence).toMatch(
      /^Accepted by Dana Okafor: the card is taken as recorded; none of 5 entries is within/,
    );
  });
});
