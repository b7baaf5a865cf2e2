import { err, ok, type Result } from "../../result.ts";
import { fixtureTableTitle, unitsOfOne } from "../capacity/fixture-units.ts";
import { FIXTURE_WORDS } from "../capacity/words.ts";
import type { FixtureCount } from "../facts/capacity.ts";
import { FIXTURES } from "../facts/fixtures.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { TieInFinding } from "../findings/report.ts";
import { sayList } from "../say/say-list.ts";
import { propertyLabel } from "../sharing/sharers.ts";

/** The weight of one property by its plumbing fixtures. */
interface FixtureWeight {
  readonly propertyId: string;
  readonly label: string;
  readonly weight: number;
  /** `1 bathroom group × 5 + 2 kitchen sinks × 2 = 9`. */
  readonly words: string;
}

export interface FixtureWeights {
  /** The code's table that the units come from. */
  readonly table: string;
  readonly weights: readonly FixtureWeight[];
}

type WeightFile = Pick<LineFile, "line" | "properties" | "fixtures">;

/**
 * Proposes each property's weight for the rule by weights: the drainage fixture units of what is
 * counted there, by the table of the line's plumbing code. Codes mean these units as a measure of
 * load (IPC 709); no recorded agreement was found that shares repairs by them, so it is an option
 * that the owners may agree on, no more. Refuses in words while a code, a count or a row is missing.
 */
export function fixtureWeights(
  file: WeightFile,
  tieIns: readonly TieInFinding[],
): Result<FixtureWeights, string> {
  const code = file.line.plumbingCode;
  if (file.fixtures.length === 0) return err("No plumbing fixtures counted yet.");
  if (code === null) return err("Select the plumbing code whose table gives the units.");
  const live = new Set(tieIns.flatMap((each) => (each.live ? (each.propertyId ?? []) : [])));
  const counted = new Set(file.fixtures.map(({ propertyId }) => propertyId));
  const missing = file.properties.filter(({ id }) => live.has(id) && !counted.has(id));
  if (missing.length > 0)
    return err(`Count the fixtures of ${sayList(missing.map(propertyLabel))} too.`);
  const rowless = FIXTURES.filter(
    (fixture) =>
      unitsOfOne(code, fixture) === null &&
      file.fixtures.some((each) => each.fixture === fixture && each.count > 0),
  );
  if (rowless.length > 0)
    return err(
      `${fixtureTableTitle(code)} has no row for ${sayList(rowless.map((fixture) => FIXTURE_WORDS[fixture]))}: count what is in it one by one.`,
    );
  return ok({
    table: fixtureTableTitle(code),
    weights: file.properties
      .filter(({ id }) => counted.has(id))
      .map((property) => {
        const own = file.fixtures.filter(({ propertyId }) => propertyId === property.id);
        return {
          propertyId: property.id,
          label: propertyLabel(property),
          ...weightOf(own, (each) => unitsOfOne(code, each) ?? 0),
        };
      }),
  });
}

type Fixture = FixtureCount["fixture"];

function weightOf(
  rows: readonly FixtureCount[],
  unitsOf: (fixture: Fixture) => number,
): Pick<FixtureWeight, "weight" | "words"> {
  const parts = FIXTURES.flatMap((fixture) => {
    const count = rows
      .filter((row) => row.fixture === fixture)
      .reduce((sum, row) => sum + row.count, 0);
    return count === 0 ? [] : [{ fixture, count, units: unitsOf(fixture) }];
  });
  const weight = parts.reduce((sum, { count, units }) => sum + count * units, 0);
  const words = parts.map(
    ({ fixture, count, units }) =>
      `${count} ${FIXTURE_WORDS[fixture]}${count === 1 ? "" : "s"} × ${units}`,
  );
  return {
    weight,
    words: words.length === 0 ? "nothing counted: 0" : `${words.join(" + ")} = ${weight}`,
  };
}
