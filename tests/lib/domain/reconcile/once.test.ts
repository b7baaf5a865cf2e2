import fc from "fast-check";
import { expect, test } from "vitest";
import type { AlignmentDecision } from "#lib/domain/facts/alignment-decision.ts";
import type { Pairing } from "#lib/domain/facts/pairing.ts";
import { type ComparedOnce, reconcileOnce } from "#lib/domain/reconcile/once.ts";
import { type Reconciliation, reconcile } from "#lib/domain/reconcile/reconcile.ts";

const UNSAID = {
  diameter: null,
  material: "unknown",
  fitting: "unknown",
  propertyId: null,
} as const;
const place = fc.record({
  station: fc.integer({ min: 0, max: 60 }).map((step) => step * 100),
  side: fc.constantFrom("left" as const, "right" as const, "unknown" as const),
  uncertainty: fc.constantFrom(0, 50),
});
const places = fc.array(place, { maxLength: 4 });

const DECIDED = { reason: "Seen", decidedBy: "Dana Okafor", decidedOn: "2026-11-20" } as const;
const REFUSED: Pairing = {
  ...{ id: "p1", entryId: "e0", tieInId: "t0", state: "refused", distance: null },
  ...DECIDED,
};
const SHIFTED: AlignmentDecision = {
  ...{ id: "a1", recordId: null, shift: 200, scale: 0, state: "accepted" },
  ...DECIDED,
};

/** Questions so alike that only one thing of them differs now and then. */
const question: fc.Arbitrary<ComparedOnce> = fc
  .record({
    entries: places,
    tieIns: places,
    refused: fc.boolean(),
    shifted: fc.boolean(),
    named: fc.constantFrom("House 14", "House 16"),
    fromUpper: fc.boolean(),
    seenTo: fc.constantFrom(0, 3_000, 6_000),
  })
  .map(({ entries, tieIns, refused, shifted, named, fromUpper, seenTo }) => ({
    entries: entries.map((each, at) => ({
      ...{ entryId: `e${at}`, recordId: "card", explained: false, ...UNSAID, ...each },
    })),
    tieIns: tieIns.map((each, at) => ({ tieInId: `t${at}`, label: "", ...UNSAID, ...each })),
    pairings: refused ? [REFUSED] : [],
    alignments: shifted ? [SHIFTED] : [],
    recordNames: new Map([["card", "Side sewer card"]]),
    entryNames: new Map([["e0", named]]),
    fromUpperEnd: new Set(fromUpper ? ["card"] : []),
    seen: seenTo === 0 ? [] : [{ from: 0, to: seenTo }],
  }));

function anew({ seen, ...given }: ComparedOnce): Reconciliation {
  const looked = (station: number) => seen.some(({ from, to }) => from <= station && station <= to);
  return reconcile({ ...given, looked });
}

test("a question asked before has the answer that it would have anew, however alike the others are", () => {
  let paired = 0;
  fc.assert(
    fc.property(fc.array(question, { minLength: 1, maxLength: 6 }), (asked) => {
      for (const each of [...asked, ...asked.toReversed()]) {
        const answer = reconcileOnce(each);
        expect(answer).toEqual(anew(each));
        paired += answer.proposals.length;
      }
    }),
  );
  expect(paired).toBeGreaterThan(0);
});

test("each thing that is compared makes another question", () => {
  const [given] = fc.sample(
    question.filter(({ entries, tieIns }) => entries.length > 2 && tieIns.length > 2),
    { numRuns: 1, seed: 11 },
  );
  if (given === undefined) throw new Error("no question was drawn");
  const first = reconcileOnce(given);
  expect(reconcileOnce({ ...given })).toBe(first);
  const others: Partial<ComparedOnce>[] = [
    { entries: given.entries.slice(1) },
    { entries: given.entries.map((each) => ({ ...each, explained: true })) },
    { tieIns: given.tieIns.map((each) => ({ ...each, station: each.station + 1 })) },
    { pairings: [{ ...REFUSED, entryId: "e1" }] },
    { alignments: [{ ...SHIFTED, shift: 100 }] },
    { recordNames: new Map([["card", "Plat"]]) },
    { entryNames: new Map([["e0", "House 18"]]) },
    { fromUpperEnd: new Set(["plat"]) },
    { seen: [{ from: 0, to: 100 }] },
  ];
  for (const other of others) expect(reconcileOnce({ ...given, ...other })).not.toBe(first);
});
