import type { Drain, Floor, TestStop } from "../facts/test-day.ts";

export const FLOOR_WORDS: Readonly<Record<Floor, string>> = {
  outside: "outside",
  basement: "basement",
  "first-floor": "first floor",
  "upper-floor": "upper floor",
};

export const DRAIN_WORDS: Readonly<Record<Drain, string>> = {
  "floor-drain": "floor drain",
  "laundry-sink": "laundry sink",
  toilet: "toilet",
  "kitchen-sink": "kitchen sink",
  "bathroom-sink": "bathroom sink",
  "tub-or-shower": "tub or shower",
  "yard-drain": "yard drain",
  downspout: "downspout",
  sump: "sump",
};

/** `basement floor drain, first floor toilet`: the drains of a stop, in the order of dosing. */
export function drainWords({ drains, fixture }: Pick<TestStop, "drains" | "fixture">): string {
  const named = drains.map(({ floor, drain }) => `${FLOOR_WORDS[floor]} ${DRAIN_WORDS[drain]}`);
  return [...named, ...(fixture === "" ? [] : [fixture])].join(", ");
}

/** `as the label says, then 5 gallons of water`: what goes into each drain. */
export function dosedWords({
  dose,
  flushGallons,
}: Pick<TestStop, "dose" | "flushGallons">): string {
  const water =
    flushGallons === null
      ? ""
      : `then ${flushGallons} ${flushGallons === 1 ? "gallon" : "gallons"} of water`;
  return [dose, water].filter((part) => part !== "").join(", ");
}
