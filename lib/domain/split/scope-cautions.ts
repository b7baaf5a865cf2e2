import { PROTECTED_FROM, trenchNeeds } from "../capacity/trench.ts";
import type { LineFile } from "../file/line-file.ts";
import type { TieInFinding } from "../file/report.ts";
import { formatFeet, plainFeet } from "../line/station.ts";
import { bearsDemand } from "../tiein/evidence.ts";
import { type DeepestPlace, deepestBetween, type NotedDepth, notedDepths } from "./depth.ts";
import { placementOf } from "./placing.ts";
import { sayList } from "./say-list.ts";
import type { ScopeItem } from "./scope.ts";
import { agreedScope, mustChooseOption, type ScopeFile, scopeInForce } from "./scope-in-force.ts";

/** One thing that a piece of work needs, with where that is written. */
interface ScopeNeed {
  readonly words: string;
  /** Empty where it follows from the file itself. */
  readonly citation: string;
  /** The work must not go on as it is. */
  readonly stops: boolean;
}

/** What the place of one piece of work asks for. Raised by the facts; nobody can take it off. */
export interface ScopeCaution {
  readonly itemId: string;
  readonly title: string;
  /** How deep it is there, and how that is known. */
  readonly depth: string;
  readonly needs: readonly ScopeNeed[];
}

type CautionFile = ScopeFile & Pick<LineFile, "points" | "levels">;

interface Site {
  readonly file: CautionFile;
  readonly tieIns: readonly TieInFinding[];
  readonly noted: readonly NotedDepth[];
}

/** While no option is chosen, the work of all of them: any may come. */
function pricedWork(file: CautionFile): ScopeItem[] {
  return mustChooseOption(file) ? agreedScope(file) : scopeInForce(file);
}

/** The cautions of every piece of work in force, in the order of the table; quiet items are left out. */
export function scopeCautions(file: CautionFile, tieIns: readonly TieInFinding[]): ScopeCaution[] {
  const site = { file, tieIns, noted: notedDepths(file) };
  return pricedWork(file).flatMap((item) => {
    const span = spanOf(item, site);
    const caution = span === null ? null : cautionOf(item, span, site);
    return caution === null ? [] : [caution];
  });
}

/** Pieces of work that need the very same, so that it is said once. */
interface CautionGroup {
  readonly works: readonly Pick<ScopeCaution, "itemId" | "title" | "depth">[];
  readonly needs: readonly ScopeNeed[];
}

/** Cautions with the same needs together, each group where its first piece of work stands. */
export function groupCautions(cautions: readonly ScopeCaution[]): CautionGroup[] {
  const groups = new Map<string, ScopeCaution[]>();
  for (const caution of cautions) {
    const key = caution.needs.map(({ words }) => words).join("\n");
    groups.set(key, [...(groups.get(key) ?? []), caution]);
  }
  return [...groups.values()].map((works) => ({ works, needs: works[0]?.needs ?? [] }));
}

/**
 * Whether a stretch is lined instead of dug: it belongs to an option of lining, or its title says so
 * (there is no kind of work of its own for it).
 */
export function isLining(
  item: Pick<ScopeItem, "place" | "title" | "work" | "optionId">,
  { options }: Pick<LineFile, "options">,
): boolean {
  if (item.place !== "stretch" || item.work === "clearing") return false;
  const option = options.find(({ id }) => id === item.optionId);
  return (
    option?.kind === "lining" ||
    /\b(re)?lin(e[rd]|ing)\b|\breline\b|\bcured[- ]in[- ]place\b/i.test(item.title)
  );
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where the work is; a branch is taken where it leaves the trunk, its deepest place. */
function spanOf(item: ScopeItem, { tieIns }: Site): Span | null {
  if (item.place === "branch") {
    const station = tieIns.find(({ tieIn }) => tieIn.id === item.tieInId)?.station ?? null;
    return station === null ? null : { from: station, to: station };
  }
  const placement = placementOf(item, { tieIns: new Map(), behind: new Map() });
  return placement.kind === "trunk" ? placement : null;
}

function cautionOf(item: ScopeItem, span: Span, site: Site): ScopeCaution | null {
  const { id: itemId, title } = item;
  if (isLining(item, site.file)) {
    const needs = underLiner(span, site);
    return needs.length === 0 ? null : { itemId, title, depth: "", needs };
  }
  if (item.work === "clearing") return null;
  const deepest = deepestBetween(site.noted, span.from, span.to);
  const needs = [...trenchWords(deepest), ...streetWords(span, site)];
  const depth = deepest === null ? "" : sayDeepest(deepest);
  return depth === "" && needs.length === 0 ? null : { itemId, title, depth, needs };
}

/** Said once where something is dug and no depth is noted on the whole line; null otherwise. */
export function depthUnknown(file: CautionFile): string | null {
  const digs = pricedWork(file).some(
    (item) => item.place !== "general" && item.work !== "clearing" && !isLining(item, file),
  );
  return digs && notedDepths(file).length === 0 ? UNKNOWN_DEPTH : null;
}

const UNKNOWN_DEPTH = `No depth is noted anywhere on the line. Note one at a cleanout, or locate the pipe, before this is priced: from ${formatFeet(PROTECTED_FROM)} on the walls of a trench need protection.`;

function sayDeepest({ station, depth, by }: DeepestPlace): string {
  const at = `${formatFeet(depth)} deep at ${formatFeet(station)}`;
  if (by === "noted") return `The pipe lies ${at}.`;
  return by === "between"
    ? `The pipe lies about ${at}, worked out between two noted depths.`
    : `By the nearest depth that is noted the pipe lies about ${at}; nothing is known beyond it.`;
}

function trenchWords(deepest: DeepestPlace | null): ScopeNeed[] {
  if (deepest === null) return [];
  return trenchNeeds(deepest.depth).map(({ words, citation }) => ({
    words,
    citation,
    stops: false,
  }));
}

/** Work below the edge of the street is in the right-of-way, whose permit is another one. */
function streetWords({ from }: Span, { file }: Site): ScopeNeed[] {
  const edge = file.points
    .filter(({ kind }) => kind === "right-of-way-line")
    .map(({ station }) => station);
  if (edge.length === 0 || from >= Math.min(...edge)) return [];
  return [
    {
      words: `It begins below the right-of-way line at ${formatFeet(Math.min(...edge))}: a permit to work in the right-of-way, traffic control and putting the street back.`,
      citation: "the authority’s rules on work in the right-of-way",
      stops: false,
    },
  ];
}

/** A liner closes every branch that it passes. */
function underLiner({ from, to }: Span, { tieIns }: Site): ScopeNeed[] {
  const under = tieIns.filter(
    ({ live, station }) => live && station !== null && from <= station && station <= to,
  );
  const unproven = under.filter(
    ({ standing, level, tieIn }) =>
      standing === "undocumented" && !bearsDemand(level, tieIn.ownerAccepted),
  );
  const reopened = under.filter((finding) => !unproven.includes(finding));
  const where = `between ${plainFeet(from)} and ${formatFeet(to)}`;
  return [
    ...unproven.map(({ tieIn, station }) => ({
      words: `Stop: ${tieIn.label} at ${formatFeet(station ?? 0)} is on no record and it is not proven whose it is. The liner would close it. Settle it first.`,
      citation: "",
      stops: true,
    })),
    ...(reopened.length === 0
      ? []
      : [
          {
            words: `The liner closes every branch ${where}: reopen ${sayList(reopened.map(({ tieIn, station }) => `${tieIn.label} at ${formatFeet(station ?? 0)}`))}, and price each.`,
            citation: "",
            stops: false,
          },
        ]),
  ];
}
