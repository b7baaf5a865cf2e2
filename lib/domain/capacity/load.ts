import { FIXTURES } from "../facts/fixtures.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { PlumbingCode } from "../facts/plumbing-code.ts";
import type { Load } from "../findings/capacity.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import type { TieInFinding } from "../findings/report.ts";
import { servedBy } from "../line/served-by.ts";
import { propertyLabel, sharersOf } from "../sharing/sharers.ts";
import { unitsOfOne } from "./fixture-units.ts";
import { FIXTURE_WORDS } from "./words.ts";

type LoadFile = Pick<LineFile, "properties" | "units" | "fixtures">;

/** Who may flow where, and what is counted of each; worked out once for a line. */
interface LoadBench {
  readonly labels: ReadonlyMap<string, string>;
  readonly units: ReadonlyMap<string, CountedUnits>;
  /** Lowest station at which each property's flow enters the trunk. */
  readonly lowest: ReadonlyMap<string, number>;
  readonly tieInLabels: ReadonlyMap<string, string>;
  readonly unplaced: readonly string[];
}

interface CountedUnits {
  readonly units: number;
  /** Fixtures for which the table has no row, in words. */
  readonly rowless: readonly string[];
}

/** Units of each property whose fixtures are counted, by the code's table. */
function countedUnits(
  fixtures: LoadFile["fixtures"],
  code: PlumbingCode,
): ReadonlyMap<string, CountedUnits> {
  const counted = new Map<string, CountedUnits>();
  for (const { propertyId, fixture, count } of fixtures) {
    const before = counted.get(propertyId) ?? { units: 0, rowless: [] };
    const one = unitsOfOne(code, fixture);
    counted.set(
      propertyId,
      one === null && count > 0
        ? { ...before, rowless: [...new Set([...before.rowless, FIXTURE_WORDS[fixture]])] }
        : { ...before, units: before.units + (one ?? 0) * count },
    );
  }
  return counted;
}

export function loadBench(
  file: LoadFile,
  { tieIns, code }: { readonly tieIns: readonly TieInFinding[]; readonly code: PlumbingCode },
): LoadBench {
  const sharers = sharersOf(file, tieIns);
  const labels = new Map(file.properties.map((each) => [each.id, propertyLabel(each)]));
  const tieInLabels = new Map(tieIns.map(({ tieIn }) => [tieIn.id, tieIn.label]));
  const { unplacedTieIns } = servedBy(tieIns, 0);
  return {
    labels,
    units: countedUnits(file.fixtures, code),
    lowest: new Map(
      sharers.flatMap(({ propertyId, stations, unplaced }) => {
        const lowest = unplaced.length > 0 ? -1 : stations[0];
        return propertyId === null || lowest === undefined ? [] : [[propertyId, lowest]];
      }),
    ),
    tieInLabels,
    unplaced: unplacedTieIns.map((id) => `${tieInLabels.get(id) ?? "a tie-in"} (no station yet)`),
  };
}

/**
 * The fixture units that pass a reach. Nobody's fixtures are guessed: who is not counted is named,
 * and the load is then a lower bound.
 */
export function loadOf(
  reach: Pick<ReachFinding, "to" | "servedBy" | "unknownTieIns">,
  { labels, units, lowest, tieInLabels, unplaced }: LoadBench,
): Load {
  const nameOf = (id: string) => labels.get(id) ?? "a property";
  const parts = reach.servedBy.flatMap((propertyId) => {
    const counted = units.get(propertyId);
    if (counted === undefined) return [];
    const partly = (lowest.get(propertyId) ?? 0) < reach.to;
    return [{ propertyId, label: nameOf(propertyId), units: counted.units, partly }];
  });
  const uncounted = [
    ...reach.servedBy.filter((id) => !units.has(id)).map(nameOf),
    ...reach.servedBy.flatMap((id) => rowlessWords(nameOf(id), units.get(id))),
    ...reach.unknownTieIns.map((id) => `${tieInLabels.get(id) ?? "a tie-in"} (owner unknown)`),
    ...unplaced,
  ];
  const sum = (rows: typeof parts) => rows.reduce((total, row) => total + row.units, 0);
  return {
    least: sum(parts.filter(({ partly }) => !partly)),
    most: uncounted.length > 0 ? null : sum(parts),
    parts,
    uncounted,
  };
}

function rowlessWords(label: string, counted: CountedUnits | undefined): string[] {
  return (counted?.rowless ?? []).map((word) => `each ${word} of ${label}`);
}

/** What of all fixtures on the line the code's table has no row for, in words. */
export function rowlessFixtures(
  fixtures: LoadFile["fixtures"],
  code: PlumbingCode,
): readonly string[] {
  return FIXTURES.filter(
    (fixture) =>
      unitsOfOne(code, fixture) === null &&
      fixtures.some((row) => row.fixture === fixture && row.count > 0),
  ).map((fixture) => FIXTURE_WORDS[fixture]);
}

/** `27 fixture units`, `at least 27 fixture units`, `20 to 27 fixture units`. */
export function loadWords({ least, most }: Pick<Load, "least" | "most">): string {
  if (most === null) return `at least ${least} fixture units`;
  return most === least ? `${most} fixture units` : `${least} to ${most} fixture units`;
}
