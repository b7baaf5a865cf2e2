import type { Fee, FeePer } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import { formatFeet } from "../length/station.ts";
import { formatCents } from "../money/format-cents.ts";
import { heldInspections, reinspections } from "../permit/inspections.ts";
import { mustChooseOption, scopeInForce } from "../sharing/scope-in-force.ts";
import { isDug, isOnPipe } from "../split/work-deeds.ts";
import { type CutMeasure, cutMeasures, SURFACE_WORDS } from "./surface-area.ts";
import { valuationOf } from "./valuation.ts";

export type CountedFile = Pick<LineFile, "authority" | "inspections" | "properties"> &
  Parameters<typeof valuationOf>[0] &
  Parameters<typeof cutMeasures>[0] &
  Parameters<typeof isDug>[1];

/** How many of what a fee is counted by, in hundredths; or what is not entered yet. */
export type FeeCount =
  | { readonly hundredths: number; readonly words: string }
  | { readonly hundredths: null; readonly lacks: string };

/**
 * What a fee is charged for, from the facts as they are now. Hundredths, since hours may be parts of one
 * and the cost of the work is in cents. `connections` are the live tie-ins. Hours that nobody entered
 * cost nothing yet; one inspection is expected where none is scheduled.
 */
export function countFor(
  fee: Fee,
  file: CountedFile,
  { permit, connections }: { readonly permit: Permit; readonly connections: number },
): FeeCount {
  const { per } = fee;
  if (per === "cost") return costOf(fee, file, permit);
  if (per === "square-foot") return surfaceOf(fee, file);
  const held = heldInspections(file, permit);
  const served = file.properties.filter(({ stake }) => stake === "connected");
  const counts: Record<Piece, number> = {
    permit: 100,
    deposit: 100,
    connection: 100 * connections,
    structure: 100 * served.length,
    inspection: 100 * Math.max(1, held.length),
    reinspection: 100 * reinspections(file, permit).length,
    hour: held.reduce((sum, { hours }) => sum + (hours ?? 0), 0),
  };
  return { hundredths: counts[per], words: pieceWords(per, counts[per]) };
}

type Piece = Exclude<FeePer, "cost" | "square-foot">;

const ONES: Record<Piece, string> = {
  permit: "permit",
  deposit: "deposit",
  connection: "connection",
  structure: "property served",
  inspection: "inspection",
  reinspection: "reinspection",
  hour: "hour",
};

function pieceWords(per: Piece, count: number): string {
  const many = per === "structure" ? "properties served" : `${ONES[per]}s`;
  return count === 100 ? `1 ${ONES[per]}` : `${count / 100} ${many}`;
}

function costOf({ step }: Fee, file: CountedFile, { kind }: Permit): FeeCount {
  if (step === null)
    return none("the schedule does not say for how many dollars of cost the amount is");
  const valuation = valuationOf(file, kind);
  if (valuation.amount === null) return none(valuation.lacks);
  const by = valuation.by === "application" ? "valuation" : "priced work";
  return { hundredths: valuation.amount, words: `${by} ${formatCents(valuation.amount)}` };
}

/** Square feet of the surfaces that the fee is for. A surface nobody named may be one of them. */
function surfaceOf({ surface }: Fee, file: CountedFile): FeeCount {
  const of = surface === null ? "surface" : SURFACE_WORDS[surface];
  if (file.surfaceCuts.length === 0)
    return digsNothing(file)
      ? { hundredths: 0, words: "nothing is dug" }
      : none("no surface to cut is entered under Application");
  const cuts = cutMeasures(file).filter(
    ({ cut }) => surface === null || cut.surface === surface || cut.surface === "not-set",
  );
  const open = cuts.flatMap((cut) => lackOf(cut) ?? []);
  if (open.length > 0) return none(open.join("; "));
  const total = cuts.reduce((sum, { squareFeet }) => sum + (squareFeet ?? 0), 0);
  return { hundredths: 100 * total, words: `${total} sq ft of ${of} cut` };
}

/** Why the size of a cut is not known; the restoration does not bear on it. */
function lackOf({ cut, squareFeet, lacks }: CutMeasure): string | null {
  if (squareFeet !== null && cut.surface !== "not-set") return null;
  const lacking = lacks.filter((each) => each !== "restoration").join(", ");
  return `the cut at ${formatFeet(Math.min(cut.from, cut.to))} lacks: ${lacking}`;
}

/** True only where work on the pipe is entered, its option is chosen, and no piece of it can dig. */
function digsNothing(file: CountedFile): boolean {
  if (mustChooseOption(file)) return false;
  const work = scopeInForce(file);
  return work.some((item) => isOnPipe(item, file)) && !work.some((item) => isDug(item, file));
}

function none(lacks: string): FeeCount {
  return { hundredths: null, lacks };
}
