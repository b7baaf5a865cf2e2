export const UNIT_STYLES = ["numbers", "letters"] as const;
export type UnitStyle = (typeof UNIT_STYLES)[number];

/** More than this is typed by mistake. */
export const MOST_UNITS = 200;

/**
 * Names for the units that a property lacks until it has `count`: `Unit 1`, `Unit 2` … or `Unit A`,
 * `Unit B` …, leaving out names that are there. Letters go on with `AA` after `Z`.
 */
export function missingUnitNames(
  count: number,
  existing: readonly string[],
  style: UnitStyle,
): string[] {
  const taken = new Set(existing.map((name) => name.trim().toLowerCase()));
  const names: string[] = [];
  for (let number = 1; taken.size + names.length < count; number += 1) {
    const name = `Unit ${style === "numbers" ? number : lettersOf(number)}`;
    if (!taken.has(name.toLowerCase())) names.push(name);
  }
  return names;
}

function lettersOf(number: number): string {
  const before = Math.floor((number - 1) / 26);
  const letter = String.fromCharCode(65 + ((number - 1) % 26));
  return before === 0 ? letter : `${lettersOf(before)}${letter}`;
}
