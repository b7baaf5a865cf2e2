import type { HoldStop } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem, ScopeKind } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { Stretch } from "../length/stretch.ts";
import { placementOf } from "../sharing/placing.ts";
import { type ScopeFile, workInForce } from "../sharing/scope-in-force.ts";
import { type Deed, placeOfTieIn } from "../stops/stopped-by.ts";

/** Words in a title that allow a kind of work. Only read where nobody said the kind. */
const KIND_WORDS: readonly (readonly [ScopeKind, RegExp])[] = [
  ["burst", /\bburst/i],
  ["line", /^(re-?)?line\b|\b(re-?)?(liner|lined|lining)\b|\breline\b|\bcured[- ]in[- ]place\b/i],
  ["spot-repair", /\bspot\b/i],
  [
    "dig-and-replace",
    /\b(dig|digs|digging|dug|excavat\w*|trench\w*|open[- ]cut|replac\w*|re-?lay|new pipe)\b/i,
  ],
  ["cap", /\b(cap|caps|capped|capping|plug|plugs|plugged|disconnect\w*|cut off|abandon\w*)\b/i],
  [
    "clear",
    /\b(root|roots|cut|cuts|cutting|cutter|auger\w*|snak\w*|rodding|clear|clears|clearing|descal\w*|milling)\b/i,
  ],
  ["clean", /\b(jet|jets|jetting|hydro-?jet\w*|flush\w*|clean|cleaning)\b/i],
  ["reconnect", /\b(reconnect\w*|reinstat\w*|reopen\w*|open each)\b/i],
  ["test", /\b(camera|video|dye|smoke|test|tests|testing|locate|locating)\b/i],
  ["restore", /\b(restor\w*|pav(e|ing|ement)|asphalt|landscap\w*|turf|seed|surface)\b/i],
  ["permit-fee", /\b(permit|permits|fee|fees|inspection|inspections|traffic control|bond)\b/i],
  ["other", /\b(mobili[sz]ation|overhead|travel|survey|report|drawing|drawings)\b/i],
];

const OPTION_KINDS: Readonly<Record<string, readonly ScopeKind[]>> = {
  "spot-repair": ["spot-repair"],
  lining: ["line"],
  bursting: ["burst"],
  "full-replacement": ["dig-and-replace", "burst"],
  "separate-lines": ["dig-and-replace"],
};

type OptionFile = Pick<LineFile, "options">;
type KindOf = Pick<ScopeItem, "kind" | "title" | "work" | "optionId">;

/**
 * What an item may be: its kind as somebody said it; else every kind that its title names; else what
 * its option is of; else all that a repair, a replacement or a clearing may come to.
 */
export function kindsOf(item: KindOf, { options }: OptionFile): readonly ScopeKind[] {
  if (item.kind !== "unknown") return [item.kind];
  const named = KIND_WORDS.filter(([, words]) => words.test(item.title)).map(([kind]) => kind);
  if (named.length > 0) return named;
  const option = options.find(({ id }) => id === item.optionId);
  const byOption = OPTION_KINDS[option?.kind ?? ""];
  if (byOption !== undefined) return byOption;
  return item.work === "clearing" ? ["clear"] : ["dig-and-replace", "line", "burst"];
}

/** What each kind does to the pipe or the ground: one of the things that holds stop. */
const STOPS: Record<Exclude<ScopeKind, "unknown" | "reconnect">, readonly HoldStop[]> = {
  "dig-and-replace": ["digging", "closing-branches"],
  "spot-repair": ["digging"],
  line: ["lining", "closing-branches"],
  /** Pits at both ends and at each live branch. */
  burst: ["bursting", "digging", "closing-branches"],
  cap: ["capping", "digging"],
  clear: ["clearing"],
  clean: ["jetting"],
  test: [],
  restore: [],
  "permit-fee": [],
  other: [],
};

interface Site extends OptionFile {
  readonly tieIns: readonly TieInFinding[];
}

/** A deed of one piece of work. */
export interface WorkDeed extends Deed {
  readonly item: ScopeItem;
}

/** What one piece of work does and where; several deeds where its kind is not said. */
export function deedsOf(item: ScopeItem, site: Site): WorkDeed[] {
  const stretch = stretchOf(item, site);
  const stops = new Set(kindsOf(item, site).flatMap((kind) => stopsOf(kind, item, site)));
  return [...stops].map((stop) => ({ stop, stretch, item }));
}

/** What all of these pieces of work do. */
export function deedsOfAll(items: readonly ScopeItem[], site: Site): WorkDeed[] {
  return items.flatMap((item) => deedsOf(item, site));
}

/**
 * What is done once work begins: the work in force, or that of every option while none is chosen.
 * Where nothing is priced, nobody knows what is done: it counts as digging anywhere.
 */
export function deedsOfWork(file: ScopeFile, tieIns: readonly TieInFinding[]): Deed[] {
  const items = workInForce(file);
  return items.length === 0
    ? [{ stop: "digging", stretch: null }]
    : deedsOfAll(items, { options: file.options, tieIns });
}

/** What can’t be undone in the pipe, once it is done the wrong way. */
const METHODS: readonly HoldStop[] = ["clearing", "jetting", "capping", "lining", "bursting"];

/**
 * Of deeds that somebody decides on, those that are asked about now: how the pipe is mended, and
 * the digging too once work has begun. Before that, digging waits for its permit step.
 */
export function decidedDeeds<D extends Deed>(deeds: readonly D[], hasBegun: boolean): D[] {
  return deeds.filter(({ stop }) => hasBegun || METHODS.includes(stop));
}

/** True where the item does something to the pipe or the ground. */
export function isOnPipe(item: ScopeItem, file: OptionFile): boolean {
  return kindsOf(item, file).some((kind) => stopsOf(kind, item, file).length > 0);
}

/** True where something of the item may be dug. */
export function isDug(item: ScopeItem, file: OptionFile): boolean {
  return kindsOf(item, file).some((kind) => stopsOf(kind, item, file).includes("digging"));
}

/** A branch is opened again from inside a liner, and dug up to join a new pipe. */
function stopsOf(kind: ScopeKind, { optionId }: ScopeItem, { options }: OptionFile) {
  if (kind === "unknown") return [];
  if (kind !== "reconnect") return STOPS[kind];
  const lines = options.some((option) => option.id === optionId && option.kind === "lining");
  return lines ? (["lining"] as const) : (["digging"] as const);
}

/** Where an item is done; null: over the whole line, or its place is not said. */
export function stretchOf(item: ScopeItem, { tieIns }: Pick<Site, "tieIns">): Stretch | null {
  if (item.place === "branch") {
    const finding = tieIns.find(({ tieIn }) => tieIn.id === item.tieInId);
    return finding === undefined ? null : placeOfTieIn(finding, tieIns);
  }
  const placement = placementOf(item, { tieIns: new Map(), behind: new Map() });
  return placement.kind === "trunk" ? { from: placement.from, to: placement.to } : null;
}
