import {
  day,
  decimal,
  feet,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  timeOfDay,
  usually,
  words,
  yesNo,
} from "./field.ts";

const TEST_KINDS = ["dye", "trace", "smoke", "flow", "excavation", "statement"] as const;
export type TestKind = (typeof TEST_KINDS)[number];

export const TEST_RESULTS = ["positive", "not-seen", "inconclusive"] as const;
export type TestResult = (typeof TEST_RESULTS)[number];

const CONTROL_RESULTS = ["not-run", "negative", "positive"] as const;
export type ControlResult = (typeof CONTROL_RESULTS)[number];

/** Evidence on whose a tie-in is: one attempt at one address. */
export type TieInTest = RowOf<typeof TIE_IN_TEST>;

export const TIE_IN_TEST = row({
  one: "test",
  saved: "field",
  fields: {
    tieInId: ref("tieIns"),
    propertyId: maybe(ref("properties")),
    unitId: maybe(ref("units")),
    kind: oneOf(TEST_KINDS),
    performedOn: day,
    fixture: words,
    colour: words,
    quantity: words,
    /** Clock time `09:40`, local; empty where not noted. */
    startedAt: timeOfDay,
    firstSeenAt: timeOfDay,
    seenAt: maybe(feet),
    waitMinutes: maybe(decimal(100_000)),
    /** File and time in it where the test can be seen. */
    filmed: words,
    dosedBy: words,
    watchedBy: words,
    otherWaterBarred: yesNo,
    controlPropertyId: maybe(ref("properties")),
    controlResult: usually(oneOf(CONTROL_RESULTS), "not-run"),
    result: oneOf(TEST_RESULTS),
    note: words,
  },
});

/** trade ladder: 0 unknown … 6 exposed by excavation or accepted in writing. */
export type EvidenceLevel = 0 | 1 | 2 | 3 | 4 | 5 | 6;
