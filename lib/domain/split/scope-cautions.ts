import { PROTECTED_FROM, trenchDepth, trenchNeeds } from "../capacity/trench.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem, ScopeKind } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import type { Stretch } from "../length/stretch.ts";
import { sayList } from "../say/say-list.ts";
import { type ScopeFile, workInForce } from "../sharing/scope-in-force.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";
import {
  type DeepestPlace,
  deepestBetween,
  type NotedDepth,
  notedDepths,
  safeDepth,
} from "./depth.ts";
import { isDug, kindsOf, stretchOf } from "./work-deeds.ts";

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

type CautionFile = ScopeFile &
  Pick<LineFile, "points" | "levels" | "authority"> & {
    readonly line: Pick<LineFile["line"], "ruleId">;
  };

interface Site {
  readonly file: CautionFile;
  readonly tieIns: readonly TieInFinding[];
  readonly noted: readonly NotedDepth[];
}

/** The cautions of every piece of work in force, in the order of the table; quiet items are left out. */
export function scopeCautions(file: CautionFile, tieIns: readonly TieInFinding[]): ScopeCaution[] {
  const site = { file, tieIns, noted: notedDepths(file) };
  return workInForce(file).flatMap((item) => cautionOf(item, site) ?? []);
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

function spanOf(item: ScopeItem, site: Site): Stretch | null {
  if (item.place === "branch") {
    const station = site.tieIns.find(({ tieIn }) => tieIn.id === item.tieInId)?.station ?? null;
    return station === null ? null : { from: station, to: station };
  }
  return stretchOf(item, site);
}

function cautionOf(item: ScopeItem, site: Site): ScopeCaution | null {
  const { id: itemId, title } = item;
  const span = spanOf(item, site);
  const kinds = kindsOf(item, site.file);
  const digs = isDug(item, site.file) && span !== null;
  const deepest = digs ? deepestBetween(site.noted, span.from, span.to) : null;
  const needs = [
    ...kinds.flatMap((kind) => kindNeeds(kind, { item, span, site })),
    ...(digs ? trenchWords(deepest) : []),
    ...(digs ? streetWords(span, site) : []),
    ...connectionNeed(span, site),
    ...unsaidNeed(item, kinds),
  ];
  const depth = deepest === null ? "" : sayDeepest(deepest);
  return depth === "" && needs.length === 0 ? null : { itemId, title, depth, needs };
}

/** Said once where something is dug and no depth is noted on the whole line; null otherwise. */
export function depthUnknown(file: CautionFile): string | null {
  const digs = workInForce(file).some((item) => item.place !== "general" && isDug(item, file));
  return digs && notedDepths(file).length === 0 ? UNKNOWN_DEPTH : null;
}

const UNKNOWN_DEPTH = `No depth is recorded anywhere on the line. Record one at a cleanout, or locate the pipe, before pricing this: trenches ${formatFeet(PROTECTED_FROM)} or deeper need wall protection.`;

function sayDeepest(place: DeepestPlace): string {
  const at = `${formatFeet(safeDepth(place))} deep at ${formatFeet(place.station)}`;
  if (place.by === "noted") return `The pipe lies ${at}.`;
  return place.by === "between"
    ? `The pipe lies about ${at}, estimated between two recorded depths.`
    : `Using the nearest recorded depth, the pipe lies about ${at}; nothing is known beyond it.`;
}

function trenchWords(deepest: DeepestPlace | null): ScopeNeed[] {
  if (deepest === null) return [];
  return trenchNeeds(trenchDepth(safeDepth(deepest))).map(({ words, citation }) => ({
    words,
    citation,
    stops: false,
  }));
}

/** Where owners hold the pipe up to the main and no farther, the connection itself is not theirs. */
function connectionNeed(span: Stretch | null, { file: { authority, line } }: Site): ScopeNeed[] {
  const rule = authority?.rules.find(({ id }) => id === line.ruleId);
  if (span === null || span.from > 0 || rule?.pattern !== "owners-to-main") return [];
  return [
    {
      words: `It reaches the connection at the main, which is the authority’s by “${rule.title}”, not the owners’: ask ${authority?.name || "the authority"} who works on it and who pays before the owners are asked for it.`,
      citation: rule.citation,
      stops: false,
    },
  ];
}

/** Work below the edge of the street is in the right-of-way, whose permit is another one. */
function streetWords({ from }: Stretch, { file }: Site): ScopeNeed[] {
  const edge = file.points
    .filter(({ kind }) => kind === "right-of-way-line")
    .map(({ station }) => station);
  if (edge.length === 0 || from >= Math.min(...edge)) return [];
  return [
    {
      words: `It begins below the right-of-way line at ${formatFeet(Math.min(...edge))}: a permit to work in the right-of-way, traffic control and street restoration.`,
      citation: "the authority’s rules on work in the right-of-way",
      stops: false,
    },
  ];
}

interface Asked {
  readonly item: ScopeItem;
  readonly span: Stretch | null;
  readonly site: Site;
}

/** What one kind of work asks for by what lies at its place: trade practice, no citation. */
function kindNeeds(kind: ScopeKind, asked: Asked): ScopeNeed[] {
  switch (kind) {
    case "line":
      return closedBranches(asked, {
        unproven: "The liner would seal it. Resolve it first.",
        all: "The liner seals every branch",
        joins: "reinstate",
      });
    case "burst":
      return [
        ...closedBranches(asked, {
          unproven: "Bursting would cut it off. Resolve it first.",
          all: "Bursting cuts off every branch",
          joins: "dig up and reconnect",
        }),
        need(
          "Bursting also breaks what crosses or lies close to the pipe: every utility there is located and uncovered first.",
        ),
      ];
    case "dig-and-replace":
    case "spot-repair":
      return joinedBranches(asked);
    case "clear":
      return [
        need(
          "Before anything is cut: look at both sides of the blockage with a camera, and call the gas company. A gas line may have been bored through the pipe.",
        ),
      ];
    case "clean":
      return [
        need(
          "Jet without a cutter or a chain; where something was seen to cross the pipe, not at all.",
        ),
      ];
    case "cap":
      return [
        need("Cap nothing that is not proven inactive: someone’s sewage may have nowhere to go."),
      ];
    default:
      return [];
  }
}

function need(words: string): ScopeNeed {
  return { words, citation: "", stops: false };
}

/** Where nobody said what is done, all that it may be is held and cautioned against. */
function unsaidNeed(item: ScopeItem, kinds: readonly ScopeKind[]): ScopeNeed[] {
  if (item.kind !== "unknown" || kinds.length < 2) return [];
  return [
    need(
      "The work type is not set. Until it is, under “Work type” in the scope of work, the strictest type it could be applies.",
    ),
  ];
}

interface ClosingWords {
  readonly unproven: string;
  readonly all: string;
  readonly joins: string;
}

function liveBranches({ span, site: { tieIns } }: Asked): readonly TieInFinding[] {
  return tieIns.filter(({ live, station, tieIn }) => {
    if (!live || tieIn.parentId !== null) return false;
    return span === null || (station !== null && span.from <= station && station <= span.to);
  });
}

/** A liner closes, and a burst cuts off, every branch that it passes. */
function closedBranches(asked: Asked, { unproven, all, joins }: ClosingWords): ScopeNeed[] {
  const under = liveBranches(asked);
  const reopened = under.filter((finding) => !isOwnerOpen(finding));
  return [
    ...under.filter(isOwnerOpen).map((finding) => ({
      words: `Stop: ${sayBranch(finding)} is not on record and its owner is not proven. ${unproven}`,
      citation: "",
      stops: true,
    })),
    ...(reopened.length === 0
      ? []
      : [
          need(
            `${all}${asked.span === null ? "" : ` ${betweenWords(asked.span)}`}: ${joins} ${sayList(reopened.map(sayBranch))}, and price each.`,
          ),
        ]),
  ];
}

/** In an open trench the branches are there to be seen, and must not be left off. */
function joinedBranches(asked: Asked): ScopeNeed[] {
  const under = liveBranches(asked);
  if (under.length === 0) return [];
  return [
    need(
      `Active branches connect here: keep each one running, and connect ${sayList(under.map(sayBranch))} to the new pipe.`,
    ),
  ];
}

function betweenWords({ from, to }: Stretch): string {
  return `between ${plainFeet(from)} and ${formatFeet(to)}`;
}

function sayBranch({ tieIn, station }: TieInFinding): string {
  return station === null ? tieIn.label : `${tieIn.label} at ${formatFeet(station)}`;
}
