import fc from "fast-check";
import { expect, test } from "vitest";
import { boundOf, fieldsOf, match } from "#lib/domain/reconcile/field.ts";
import { AS_WRITTEN, PLAIN } from "#lib/domain/reconcile/fit.ts";
import type { RecordMark, SeenMark } from "#lib/domain/reconcile/likeness.ts";

// The search lays out only fits whose bound is high enough: it may never pass over a better one.

const PLACE = fc.record({
  station: fc.integer({ min: 0, max: 6_000 }),
  side: fc.constantFrom("left", "right", "unknown"),
  uncertainty: fc.integer({ min: 0, max: 200 }),
});
const SEEN = { diameter: null, material: "unknown", fitting: "unknown", propertyId: null } as const;
const ENTRIES = fc
  .array(fc.record({ place: PLACE, recordId: fc.constantFrom("card", "plat") }), { maxLength: 8 })
  .map((list) =>
    list.map(({ place, recordId }, at): RecordMark => {
      return { ...SEEN, ...place, recordId, entryId: `e${at}`, explained: false };
    }),
  );
const TIE_INS = fc
  .array(PLACE, { maxLength: 8 })
  .map((list) =>
    list.map((place, at): SeenMark => ({ ...SEEN, ...place, tieInId: `t${at}`, label: "" })),
  );
const FIT = fc
  .record({ shift: fc.integer({ min: -300, max: 300 }), scale: fc.constantFrom(0, 20_000) })
  .map((move) => ({ ...PLAIN, ...move }));
const REFUSED = fc.constantFrom("e0 t0", "e1 t2", "");

test("no fit explains or gains more than its bound, and it has none only where that is too little", () => {
  let withPairs = 0;
  fc.assert(
    fc.property(
      fc.record({ entries: ENTRIES, tieIns: TIE_INS, fit: FIT, refused: REFUSED }),
      fc.integer({ min: 0, max: 8 }),
      fc.double({ min: -1, max: 6, noNaN: true }),
      ({ entries, tieIns, fit, refused }, least, over) => {
        const mayPair = (entryId: string, tieInId: string) => `${entryId} ${tieInId}` !== refused;
        const fields = fieldsOf({ entries, tieIns, mayPair }, AS_WRITTEN);
        const found = fields.map((field) => match(field, fit));
        const pairs = found.flatMap((each) => each.pairs);
        const gain = found.reduce((sum, each) => sum + each.gain, 0);
        const bound = boundOf(fields, fit);
        expect(bound?.explained).toBeGreaterThanOrEqual(pairs.length);
        expect(bound?.gain).toBeGreaterThanOrEqual(gain - 1e-9);
        const enough = (bound?.explained ?? 0) >= least;
        expect(boundOf(fields, fit, { least })).toEqual(enough ? bound : null);
        const gains = (bound?.gain ?? 0) > over;
        expect(boundOf(fields, fit, { over })).toEqual(gains ? bound : null);
        withPairs += pairs.length;
      },
    ),
  );
  expect(withPairs).toBeGreaterThan(0);
});
