import type { LineFile } from "../facts/line-file.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { servedBy } from "../line/served-by.ts";
import { drainPlaces } from "../notices/audience.ts";
import { deedsOfWork } from "../split/work-deeds.ts";

type StopFile = Pick<
  LineFile,
  | "line"
  | "properties"
  | "roles"
  | "parties"
  | "tieIns"
  | "entries"
  | "scope"
  | "options"
  | "changeOrders"
>;
type StopFacts = Pick<Report, "tieIns" | "entries">;

/** Whose drains have to rest while the pipe is open. */
export interface MustStop {
  /** In the file's order; `surely` where a settled tie-in shows that their flow passes the work. */
  readonly places: readonly {
    readonly propertyId: string;
    readonly passes: "surely" | "perhaps";
  }[];
  /** On the line, but every tie-in of theirs is settled and joins below the work. */
  readonly below: readonly string[];
  /** The lowest place of the work, feet from the main; null: no place is known, so everybody stops. */
  readonly lowest: Cft | null;
}

/** So far below the work a branch still counts as at it, in hundredths of a foot; or as far as stations are uncertain. */
const LEAST: Cft = 100;

/**
 * Who must stop using drains: everybody whose flow passes the lowest place of the work in force, and
 * everybody of whom that is not known: a candidate, a branch that is not settled or not measured, a
 * recorded connection that was not found. Only whoever certainly joins below may go on.
 */
export function mustStop(file: StopFile, { tieIns, entries }: StopFacts): MustStop {
  const places = drainPlaces(file);
  const lowest = lowestOf(file, tieIns);
  const slack = Math.max(LEAST, ...tieIns.flatMap(({ uncertainty }) => uncertainty ?? 0));
  const passing = new Set(servedBy(tieIns, Math.max((lowest ?? 0) - slack, 0)).properties);
  const isBelow = (propertyId: string) => {
    const own = tieIns.filter((each) => each.live && each.propertyId === propertyId);
    const listed = file.entries.filter((entry) => entry.propertyId === propertyId);
    return (
      lowest !== null &&
      !passing.has(propertyId) &&
      own.length > 0 &&
      own.every((each) => each.decided && each.station !== null) &&
      listed.every(({ id }) =>
        entries.some(({ entryId, tieInId }) => entryId === id && tieInId !== null),
      )
    );
  };
  return {
    places: places
      .filter((propertyId) => !isBelow(propertyId))
      .map((propertyId) => ({
        propertyId,
        passes: passing.has(propertyId) ? "surely" : "perhaps",
      })),
    below: places.filter(isBelow),
    lowest,
  };
}

/** Where the work reaches lowest; null where some of it has no place. */
function lowestOf(file: StopFile, tieIns: readonly TieInFinding[]): Cft | null {
  const stretches = deedsOfWork(file, tieIns).map(({ stretch }) => stretch);
  if (stretches.length === 0 || stretches.includes(null)) return null;
  return Math.min(...stretches.flatMap((stretch) => stretch?.from ?? []));
}
