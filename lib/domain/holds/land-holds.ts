import type { RaisedHold } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report } from "../findings/report.ts";
import { type Stretch, sayWhere } from "../length/stretch.ts";
import { unsaidLand } from "../line/whose-land.ts";
import { scopeToCome, workInForce } from "../sharing/scope-in-force.ts";
import { isDug, isOnPipe, stretchOf } from "../split/work-deeds.ts";

type LandFile = Pick<
  LineFile,
  "line" | "land" | "crossings" | "scope" | "options" | "changeOrders"
>;
type LandFacts = Pick<Report, "tieIns" | "extent">;

/**
 * Holds on digging where nobody said whose land lies over the pipe: whose consent or which permit it
 * takes is then not known. Work in force stops the submission too.
 */
export function landCauses(file: LandFile, facts: LandFacts): RaisedHold[] {
  const inForce = new Set(workInForce(file).map(({ id }) => id));
  return scopeToCome(file)
    .filter((item) => isDug(item, file))
    .flatMap((item) =>
      landUnsaid(file, facts, item).map((stretch): RaisedHold => {
        const where = sayWhere(stretch);
        return {
          cause: "land-unknown",
          subjectId: `${item.id}:${stretch === null ? "anywhere" : `${stretch.from}-${stretch.to}`}`,
          subjectLabel: `land over “${item.title}” ${where}`,
          sentence: `The land over the pipe ${where}, where “${item.title}” digs, is not entered, so the consent or permit it takes is unknown.`,
          closes:
            "Enter whose land it is and what shows it, under “Who is on it?”, “Lots and land”",
          stretch,
          ...(inForce.has(item.id) ? {} : { stops: ["digging"] as const }),
        };
      }),
    );
}

/**
 * Where one piece of work is done below land of which nobody said whose it is; null among them: the
 * place is not known. Work on a branch lies on the lot of its property, once that is known.
 */
export function landUnsaid(
  file: LandFile,
  { tieIns, extent }: LandFacts,
  item: ScopeItem,
): (Stretch | null)[] {
  if (!isOnPipe(item, file) || isOnKnownLot(item, tieIns)) return [];
  const stretch = stretchOf(item, { tieIns });
  if (stretch !== null) return unsaidLand(file, stretch);
  return extent === 0 ? [null] : unsaidLand(file, { from: 0, to: extent });
}

function isOnKnownLot(item: ScopeItem, tieIns: LandFacts["tieIns"]): boolean {
  if (item.place !== "branch") return false;
  const finding = tieIns.find(({ tieIn }) => tieIn.id === item.tieInId);
  return finding !== undefined && finding.propertyId !== null;
}
