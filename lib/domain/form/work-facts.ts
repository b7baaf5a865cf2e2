import { SCOPE_KINDS, type ScopeItem } from "../facts/scope.ts";
import type { OPTION_KINDS } from "../facts/work-option.ts";
import { formatFeet } from "../length/station.ts";
import {
  commonStretch,
  joinedStretches,
  type Stretch,
  withoutStretches,
} from "../length/stretch.ts";
import { EN } from "../paper/words-en.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { optionInForce, scopeInForce, scopeTotal } from "../sharing/scope-in-force.ts";
import { deepestBetween, notedDepths, safeDepth } from "../split/depth.ts";
import { isDug, stretchOf } from "../split/work-deeds.ts";
import { SCOPE_KIND_WORDS } from "../split/work-kind-words.ts";
import { choice, type FormFact, type FormInput, many, one } from "./fact.ts";

const WORK = "Work";
const PIPE = "Pipe";

/** The work in force without what only costs: fees and permits. */
function workOf({ file }: FormInput): ScopeItem[] {
  return scopeInForce(file).filter(({ kind }) => kind !== "permit-fee");
}

function whereOf(item: ScopeItem, { file }: FormInput): string {
  if (item.place === "point" && item.from !== null) return `at ${formatFeet(item.from)}`;
  if (item.place === "stretch" && item.from !== null && item.to !== null)
    return EN.stretch(item.from, item.to);
  if (item.place === "branch") {
    const label = file.tieIns.find(({ id }) => id === item.tieInId)?.label;
    return label === undefined ? "" : `branch at ${label}`;
  }
  return "";
}

function described(item: ScopeItem, input: FormInput): string {
  const where = whereOf(item, input);
  return where === "" ? item.title : `${item.title}, ${where}`;
}

/** What somebody said is dug. */
function diggingOf(input: FormInput): ScopeItem[] {
  return workOf(input).filter((item) => item.kind !== "unknown" && isDug(item, input.file));
}

/** Whether somebody said of all work, and of some, what is done. */
function isAllSaid(input: FormInput): boolean {
  const work = workOf(input);
  return work.length > 0 && work.every(({ kind }) => kind !== "unknown");
}

/** Where something is dug; a place of no length counts as its point. */
function dugOf(input: FormInput): Stretch[] {
  return diggingOf(input).flatMap((item) => stretchOf(item, { tieIns: input.report.tieIns }) ?? []);
}

function landDug(input: FormInput): string[] {
  const dug = dugOf(input);
  return input.file.land
    .filter((land) => dug.some((stretch) => commonStretch(stretch, land) !== null))
    .map(({ kind }) => kind);
}

/** The deepest dug place as far as depths are noted, in hundredths of a foot; null: none is noted. */
function deepest(input: FormInput): number | null {
  const noted = notedDepths(input.file);
  const depths = dugOf(input).flatMap(({ from, to }) => {
    const place = deepestBetween(noted, from, to);
    return place === null ? [] : [safeDepth(place)];
  });
  return depths.length === 0 ? null : Math.max(...depths);
}

interface Placed {
  readonly item: ScopeItem;
  readonly input: FormInput;
}

const item = many<Placed>("Pieces of work", (input) =>
  workOf(input).map((each) => ({ item: each, input })),
);

const OPTION_WORDS: Readonly<Record<(typeof OPTION_KINDS)[number], string>> = {
  "spot-repair": "spot repair",
  lining: "lining",
  bursting: "pipe bursting",
  "full-replacement": "full replacement",
  "separate-lines": "separate lines",
  other: "other",
};

const YES_NO = { yes: "yes", no: "no" };

/** What is done, where, and at what value. */
export const WORK_FACTS: readonly FormFact[] = [
  one(WORK, ["work.description", "Description of the work"], (input) =>
    workOf(input)
      .map((each) => described(each, input))
      .join("; "),
  ),
  one(WORK, ["work.value", "Value of the work", "money"], ({ file }) =>
    scopeInForce(file).length === 0 ? null : scopeTotal(file),
  ),
  choice(WORK, ["work.kind", "Kinds of work", withoutUnknown()], (input) =>
    workOf(input).flatMap((each) => kindsSaid(each)),
  ),
  choice(WORK, ["work.option", "Way of doing the work", OPTION_WORDS], ({ file }) => {
    const option = file.options.find(({ id }) => id === optionInForce(file));
    return option === undefined ? [] : [option.kind];
  }),
  choice(WORK, ["work.dug", "Is anything dug?", YES_NO], (input) => {
    if (diggingOf(input).length > 0) return ["yes"];
    return isAllSaid(input) ? ["no"] : [];
  }),
  choice(WORK, ["work.in-street", "Is anything dug in the right-of-way?", YES_NO], (input) =>
    inStreet(input),
  ),
  one(WORK, ["work.depth", "Deepest place dug, in feet", "feet"], deepest),
  one(WORK, ["work.length", "Length of pipe worked on, in feet", "feet"], (input) => {
    const stretches = workOf(input).flatMap(({ place, from, to }) =>
      place === "stretch" && from !== null && to !== null ? [{ from, to }] : [],
    );
    return stretches.length === 0 ? null : coveredBy(stretches);
  }),
  item(["item.title", "Piece of work: what is done"], ({ item: each, input }) =>
    described(each, input),
  ),
  item(["item.value", "Piece of work: value", "money"], ({ item: each }) => itemAmount(each)),
  one(PIPE, ["pipe.length", "Length of the line, in feet", "feet"], ({ report }) => report.extent),
  one(PIPE, ["pipe.material", "Existing pipe: material"], ({ file }) =>
    file.line.material === "unknown" ? null : EN.material[file.line.material],
  ),
  one(
    PIPE,
    ["pipe.diameter", "Existing pipe: diameter in inches"],
    ({ file }) => file.line.diameter,
  ),
  one(
    PIPE,
    ["pipe.main-station", "Station of the connection on the public main", "feet"],
    (input) => input.file.line.mainStation,
  ),
  one(PIPE, ["pipe.tie-ins", "Number of tie-ins"], ({ report }) => report.tieIns.length),
];

function withoutUnknown(): Record<string, string> {
  return Object.fromEntries(
    SCOPE_KINDS.filter((kind) => kind !== "unknown").map((kind) => [kind, SCOPE_KIND_WORDS[kind]]),
  );
}

/** A box is checked only by what somebody said; what a title may mean checks nothing. */
function kindsSaid({ kind }: ScopeItem): string[] {
  return kind === "unknown" ? [] : [kind];
}

/** `yes` where a street lies over it; `no` only where the land over all that is dug is known. */
function inStreet(input: FormInput): string[] {
  if (landDug(input).includes("right-of-way")) return ["yes"];
  const placed = dugOf(input).length === diggingOf(input).length;
  const known = dugOf(input).every((stretch) => isCovered(stretch, input.file.land));
  return isAllSaid(input) && placed && known ? ["no"] : [];
}

function isCovered(stretch: Stretch, land: FormInput["file"]["land"]): boolean {
  const said = land.filter(({ kind }) => kind !== "unknown");
  return withoutStretches(stretch, said).length === 0;
}

function coveredBy(stretches: readonly Stretch[]): number {
  return joinedStretches(stretches).reduce((sum, { from, to }) => sum + to - from, 0);
}
