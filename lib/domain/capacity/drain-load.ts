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

function limitOf(row: LoadRow, slope: Slope): DrainLimit | null {
  for (const column of SLOPE_NAMES) {
    const most = row.most[column];
    if (most !== undefined && meetsSlope(slope, SLOPES[column].slope)) return { most, column };
  }
  return null;
}
