import {
  day,
  late,
  maybe,
  oneOf,
  type RowOf,
  ref,
  refs,
  row,
  several,
  timeOfDay,
  usually,
  type ValuesOf,
  whole,
  words,
} from "./field.ts";
import { TEST_RESULTS } from "./test.ts";

export const FLOORS = ["outside", "basement", "first-floor", "upper-floor"] as const;
export type Floor = (typeof FLOORS)[number];

/** Drains that dye is put into. */
export const DRAINS = [
  "floor-drain",
  "laundry-sink",
  "toilet",
  "kitchen-sink",
  "bathroom-sink",
  "tub-or-shower",
  "yard-drain",
  "downspout",
  "sump",
] as const;
export type Drain = (typeof DRAINS)[number];

/** One drain on one floor; each floor that has drains is tested. */
export type FloorDrain = ValuesOf<typeof FLOOR_DRAIN>;

const FLOOR_DRAIN = {
  floor: oneOf(FLOORS),
  drain: oneOf(DRAINS),
};

/** One dosing, at one address or into an access of the pipe itself. */
export type TestStop = ValuesOf<typeof TEST_STOP>;

const TEST_STOP = {
  /** Null: the pipe itself is dosed, at `pointId`. */
  propertyId: maybe(ref("properties")),
  unitId: maybe(ref("units")),
  /** The cleanout or manhole that is dosed to see that dye passes the camera; null for an address. */
  pointId: maybe(ref("points", "access of the pipe")),
  /** The tie-ins that are watched: all in view of the one place where the camera lies. */
  tieInIds: refs("tieIns"),
  /** The drains that are dosed, floor by floor. */
  drains: several(FLOOR_DRAIN),
  /** Another drain, in words. */
  fixture: words,
  colour: words,
  /** How much dye, in words. */
  dose: words,
  /** Water that is run after it at each drain, in gallons; null: not said. */
  flushGallons: maybe(whole(1_000)),
  /** Local clock time, `09:40`. */
  startsAt: timeOfDay,
  waitMinutes: usually(whole(1_440), 0),
  /** Minutes of clear water afterwards, until no color is left for the next dosing. */
  rinseMinutes: usually(whole(1_440), 0),
  /** Of a dosing of the pipe itself: whether dye was seen to pass the camera; null: not yet told. */
  passed: maybe(oneOf(TEST_RESULTS)),
};

/** The plan of one day of dye tests: one address after another, one color at a time. */
export type TestDay = RowOf<typeof TEST_DAY>;

export const TEST_DAY = row({
  one: "test day",
  most: 200,
  fields: {
    on: day,
    /** An address whose tie-in is known: dye from there shows that the watcher would see it. */
    controlPropertyId: maybe(ref("properties")),
    stops: several(TEST_STOP),
    /** The day on which whoever runs the sewer or the plant was told of the dye; null: not told. */
    plantToldOn: maybe(day),
    /** Who was told, by whom. */
    plantTold: late(words),
    note: words,
    plannedBy: words,
    plannedOn: day,
  },
});
