import { type PlumbingCode, SLOPE_NAMES, type SlopeName } from "../facts/plumbing-code.ts";
import { BUILDING_SEWER_LOADS, type LoadRow } from "./drain-tables.ts";
import { meetsSlope, SLOPES, type Slope } from "./slope.ts";

export interface DrainLimit {
  /** Largest load in drainage fixture units. */
  readonly most: number;
  /** The column used: the steepest that the pipe's slope reaches. */
  readonly column: SlopeName;
}

/**
 * What a pipe of a diameter (inches) and slope may carry by the code's table. Between two columns
 * the flatter one holds. Null where the table has no such pipe or the slope reaches no column.
 */
export function drainLimit(
  code: PlumbingCode,
  { diameter, slope }: { readonly diameter: number; readonly slope: Slope },
): DrainLimit | null {
  const row = BUILDING_SEWER_LOADS[code].rows.find((each) => each.diameter === diameter);
  return row === undefined ? null : limitOf(row, slope);
}

export interface LoadCheck {
  /** Null: the table does not say. */
  readonly passes: boolean | null;
  readonly sentence: string;
}

/** Holds a load in fixture units against the code's table. */
export function checkLoad(
  code: PlumbingCode,
  pipe: { readonly diameter: number; readonly slope: Slope },
  load: number,
): LoadCheck {
  const { title } = BUILDING_SEWER_LOADS[code];
  const limit = drainLimit(code, pipe);
  if (limit === null) {
    return {
      passes: null,
      sentence: `${title} gives no load for a ${pipe.diameter} in pipe at this slope.`,
    };
  }
  const passes = load <= limit.most;
  const verb = passes ? "are within" : "are more than";
  return {
    passes,
    sentence: `${load} fixture units ${verb} the ${limit.most} that ${title} allows a ${pipe.diameter} in pipe at ${SLOPES[limit.column].words}.`,
  };
}

/** The smallest pipe of the code's table that may carry a load at a slope; null: none. */
export function smallestFor(code: PlumbingCode, slope: Slope, load: number): number | null {
  const row = BUILDING_SEWER_LOADS[code].rows.find(
    (each) => (limitOf(each, slope)?.most ?? -1) >= load,
  );
  return row?.diameter ?? null;
}

function limitOf(row: LoadRow, slope: Slope): DrainLimit | null {
  for (const column of SLOPE_NAMES) {
    const most = row.most[column];
    if (most !== undefined && meetsSlope(slope, SLOPES[column].slope)) return { most, column };
  }
  return null;
}
