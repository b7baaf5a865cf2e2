import type { Capacity, LoadVerdict, SlopeFinding, SlopeVerdict } from "../findings/capacity.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import { percentOf } from "./words.ts";

/** The answer on slope and load: the first sentence, and what is said beneath it. */
export function capacityAnswer({ slopes, reaches }: Capacity): {
  readonly head: string;
  readonly rest: readonly string[];
} {
  const loads = reaches.flatMap(({ load }) =>
    load === null || load.verdict === "nothing-counted" ? [] : [load.verdict],
  );
  const told = [...slopeAnswer(slopes), loadAnswer(loads)].filter((words) => words !== "");
  const [head = "Neither slope nor load is known yet.", ...rest] = told;
  return { head, rest };
}

const SLOPE_ORDER: readonly (readonly [SlopeVerdict, string])[] = [
  ["falls-back", "slopes the wrong way"],
  ["too-flat", "too flat"],
  ["average-only", "average only because of standing water"],
  ["cannot-be-told", "can’t be determined within the uncertainty"],
  ["meets", "steep enough"],
  ["nothing-to-test", "measured, with no minimum chosen"],
];

/** The stretches by their verdict, and the flattest by its place, where there are several. */
function slopeAnswer(slopes: readonly SlopeFinding[]): readonly string[] {
  const verdicts = slopes.map(({ verdict }) => verdict);
  const said = counted("Slope", verdicts, SLOPE_ORDER);
  const [flattest] = slopes.toSorted((a, b) => a.slope - b.slope);
  if (flattest === undefined || slopes.length < 2) return [said];
  const { from, to, slope, water } = flattest;
  const average = water.length === 0 ? "" : " on average";
  return [
    said,
    `The flattest section is ${percentOf(slope)}${average}, from ${plainFeet(from)} to ${formatFeet(to)}.`,
  ];
}

const LOAD_ORDER: readonly (readonly [LoadVerdict, string])[] = [
  ["too-much", "over the code limit"],
  ["no-row", "not in the code table"],
  ["cannot-be-told", "can’t be determined yet"],
  ["within", "within the code limit"],
];

function loadAnswer(verdicts: readonly LoadVerdict[]): string {
  return counted("Load", verdicts, LOAD_ORDER);
}

/** `Slope: 1 stretch too flat, 2 steep enough.` */
function counted<T extends string>(
  title: string,
  verdicts: readonly T[],
  order: readonly (readonly [T, string])[],
): string {
  const parts = order.flatMap(([verdict, words]) => {
    const count = verdicts.filter((each) => each === verdict).length;
    return count === 0 ? [] : [{ count, words }];
  });
  const [only] = parts;
  if (only === undefined) return "";
  if (parts.length === 1) return `${title}: ${only.words}${everywhere(only.count)}.`;
  const said = parts.map(({ count, words }, at) =>
    at === 0 ? `${count} ${count === 1 ? "section" : "sections"} ${words}` : `${count} ${words}`,
  );
  return `${title}: ${said.join(", ")}.`;
}

function everywhere(count: number): string {
  return count === 1 ? "" : ` on all ${count} sections`;
}
