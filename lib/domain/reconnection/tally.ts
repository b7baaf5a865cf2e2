import type { LineFile } from "../facts/line-file.ts";
import type { Reconnection } from "../facts/reconnection.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { type Stretch, touches } from "../length/stretch.ts";
import { counterTolerance } from "../run/convert.ts";
import { convertersOf } from "../run/observe.ts";
import { forCount } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { kindsOf, stretchOf } from "../split/work-deeds.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";

/** Where a branch lies by one end of access. */
export interface Measured {
  readonly station: Cft;
  /** How far off it may be. */
  readonly uncertainty: Cft;
  /** What it rests on: `Run 2`, or `measured 20.4 ft from the way in at 0.0 ft`. */
  readonly by: string;
}

/** A branch that work closes or cuts off, and how far it is from being safe. */
export interface TallyRow {
  readonly tieInId: string;
  readonly label: string;
  readonly finding: TieInFinding;
  /** The pieces of work that close it. */
  readonly items: readonly ScopeItem[];
  readonly lower: Measured | null;
  readonly upper: Measured | null;
  /** Upper minus lower. */
  readonly difference: Cft | null;
  /** What two readings of one place may differ by. */
  readonly allowed: Cft;
  readonly state: TallyState;
  /** The tally’s own row; null while nobody entered one. */
  readonly row: Reconnection | null;
  readonly sentence: string;
}

/**
 * `unproven`: whose it is is open; `unmeasured`: not from both ends; `apart`: both ends differ by more
 * than readings may; `ready`: may be closed; `open-again`: seen open in the video after the work.
 */
export type TallyState = "unproven" | "unmeasured" | "apart" | "ready" | "open-again";

type TallyFile = Pick<LineFile, "reconnections" | "runs" | "anchors" | "observations" | "options">;

/**
 * Every live branch that one of these pieces of work closes or cuts off (a liner, bursting, open
 * replacement), from the main upstream, with its station from both ends of access: as somebody
 * measured it for the tally, else as runs of the camera read it whose footage begins below and above it.
 * Branches without a place come last: any of the work may close them.
 */
export function tallyOf(
  file: TallyFile,
  items: readonly ScopeItem[],
  tieIns: readonly TieInFinding[],
  readings: Readings = readingsOf(file),
): TallyRow[] {
  const closing = items.filter((item) => closesBranches(item, file));
  return tieIns
    .filter(({ live, tieIn }) => live && tieIn.parentId === null)
    .toSorted(
      (a, b) => (a.station ?? Number.MAX_SAFE_INTEGER) - (b.station ?? Number.MAX_SAFE_INTEGER),
    )
    .flatMap((finding) => {
      const over = closing.filter((item) => reaches(stretchOf(item, { tieIns }), finding));
      return over.length === 0 ? [] : [tallyRow(file, finding, { items: over, readings })];
    });
}

/** A liner, bursting or a new pipe: over more than the joint of one branch. */
function closesBranches(item: ScopeItem, file: TallyFile): boolean {
  if (item.place === "branch") return false;
  return kindsOf(item, file).some(
    (kind) => kind === "line" || kind === "burst" || kind === "dig-and-replace",
  );
}

function reaches(work: Stretch | null, { station, uncertainty }: TieInFinding): boolean {
  if (work === null || station === null) return true;
  const off = uncertainty ?? 0;
  return touches(work, { from: station - off, to: station + off });
}

function tallyRow(
  file: TallyFile,
  finding: TieInFinding,
  { items, readings }: { readonly items: readonly ScopeItem[]; readonly readings: Readings },
): TallyRow {
  const { tieIn } = finding;
  const row = file.reconnections.find(({ tieInId }) => tieInId === tieIn.id) ?? null;
  const seen = seenFrom(readings, finding);
  const lower = measuredBelow(row) ?? seen.lower;
  const upper = measuredAbove(row) ?? seen.upper;
  const difference = lower === null || upper === null ? null : upper.station - lower.station;
  const allowed = Math.max(lower?.uncertainty ?? 100, upper?.uncertainty ?? 100);
  const facts = { tieInId: tieIn.id, label: tieIn.label, finding, items, lower, upper, difference };
  const state = stateOf(finding, { row, difference, allowed });
  const common = { ...facts, allowed, state, row };
  return { ...common, sentence: sentenceOf(common) };
}

function stateOf(
  finding: TieInFinding,
  facts: Pick<TallyRow, "row" | "difference" | "allowed">,
): TallyState {
  const { row, difference, allowed } = facts;
  if (row !== null && isSeenOpen(row)) return "open-again";
  if (isOwnerOpen(finding)) return "unproven";
  if (difference === null) return "unmeasured";
  return Math.abs(difference) > allowed ? "apart" : "ready";
}

/** Somebody saw it open in a run after the work, and said at which second of its video. */
function isSeenOpen({ openedRunId, openedSecond, openedBy }: Reconnection): boolean {
  return openedRunId !== null && openedSecond !== null && openedBy.trim() !== "";
}

function measuredBelow(row: Reconnection | null): Measured | null {
  if (row === null || row.lowerAccess === null || row.fromLower === null) return null;
  const { lowerAccess, fromLower } = row;
  return {
    station: lowerAccess + fromLower,
    uncertainty: counterTolerance(fromLower),
    by: `measured ${formatFeet(fromLower)} up from the access at ${formatFeet(lowerAccess)}`,
  };
}

function measuredAbove(row: Reconnection | null): Measured | null {
  if (row === null || row.upperAccess === null || row.fromUpper === null) return null;
  const { upperAccess, fromUpper } = row;
  return {
    station: upperAccess - fromUpper,
    uncertainty: counterTolerance(fromUpper),
    by: `measured ${formatFeet(fromUpper)} down from the access at ${formatFeet(upperAccess)}`,
  };
}

/** What the runs' counters tell: how each run is converted, and which observations were read off it. */
export interface Readings {
  readonly runs: ReturnType<typeof convertersOf>;
  readonly read: ReadonlySet<string>;
}

/** The readings of a file, to be worked out once for many pieces of work. */
export function readingsOf(file: Pick<LineFile, "runs" | "anchors" | "observations">): Readings {
  const read = file.observations.filter(({ reading }) => reading === "read").map(({ id }) => id);
  return { runs: convertersOf(file), read: new Set(read) };
}

/** What runs of the camera read, by the end at which their footage begins; the newest of each. */
function seenFrom(
  { runs, read }: Readings,
  { sightings }: TieInFinding,
): { readonly lower: Measured | null; readonly upper: Measured | null } {
  const placed = sightings.flatMap(({ observationId, runId, station, uncertainty }) => {
    const on = runs.get(runId);
    if (on === undefined || station === null || !read.has(observationId)) return [];
    const by = on.run.name || "a run";
    const measured = { station, uncertainty: uncertainty ?? 0, by };
    return [{ measured, isFromBelow: on.converter.way === 1, ranOn: on.run.ranOn }];
  });
  const newest = (isFromBelow: boolean) =>
    placed
      .filter((each) => each.isFromBelow === isFromBelow)
      .toSorted((a, b) => a.ranOn.localeCompare(b.ranOn))
      .at(-1)?.measured ?? null;
  return { lower: newest(true), upper: newest(false) };
}

function sentenceOf(facts: Omit<TallyRow, "sentence">): string {
  const { label, finding, lower, upper, difference, allowed, state } = facts;
  const name = label.trim() || "A branch";
  const at = finding.station === null ? "at no known station" : `at ${formatFeet(finding.station)}`;
  switch (state) {
    case "unproven":
      return `${name} ${at} is active and its owner is not proven.`;
    case "unmeasured": {
      const missing = [
        ...(lower === null ? ["from the lower end"] : []),
        ...(upper === null ? ["from the upper end"] : []),
      ].join(" and ");
      return `${name} ${at} is active and not measured ${missing}.`;
    }
    case "apart":
      return `${name} lies at ${formatFeet(lower?.station ?? 0)} by the lower end and at ${formatFeet(upper?.station ?? 0)} by the upper end: ${formatFeet(Math.abs(difference ?? 0))} apart, more than the ${formatFeet(allowed)} that readings may differ by.`;
    case "ready":
      return `${name} lies at ${formatFeet(lower?.station ?? 0)} by the lower end and at ${formatFeet(upper?.station ?? 0)} by the upper end, ${formatFeet(Math.abs(difference ?? 0))} apart.`;
    case "open-again":
      return `${name} ${at} was seen open again after the work.`;
  }
}

/** Where the tally stands, in one sentence. */
export function tallySentence(tally: readonly TallyRow[]): string {
  if (tally.length === 0) return "No active branch is under work that would close it";
  const open = tally.filter(({ state }) => state !== "ready" && state !== "open-again");
  const again = tally.filter(({ state }) => state === "open-again");
  const all = forCount(tally.length, "1 active branch is", `${tally.length} active branches are`);
  if (open.length > 0) {
    const names = sayList(open.map(({ label }) => label));
    return `${all} closed by the work; ${names} ${forCount(open.length, "holds", "hold")} it until proven and measured from both ends`;
  }
  if (again.length === tally.length) return `${all} seen open again after the work`;
  const wait = tally.length - again.length;
  return `${all} measured from both ends; ${forCount(wait, "1 is", `${wait} are`)} not yet seen open after the work`;
}

/** New rows for branches that are not in the tally yet, with the ways in that the file knows. */
export function rowsToStart(
  tally: readonly TallyRow[],
  { line, points }: Pick<LineFile, "line" | "points">,
  newId: () => string,
): Reconnection[] {
  const ways = points.filter(({ kind }) => kind === "cleanout" || kind === "manhole");
  return tally
    .filter(({ row }) => row === null)
    .map(({ tieInId, finding }) => {
      const at = finding.station;
      const above = ways.map(({ station }) => station).filter((each) => at !== null && each > at);
      const below = ways.map(({ station }) => station).filter((each) => at !== null && each < at);
      return {
        id: newId(),
        tieInId,
        lowerAccess: below.length === 0 ? 0 : Math.max(...below),
        fromLower: null,
        upperAccess: above.length === 0 ? line.upperEnd : Math.min(...above),
        fromUpper: null,
        measuredBy: "",
        measuredOn: null,
        openedRunId: null,
        openedSecond: null,
        openedBy: "",
        openedOn: null,
        note: "",
      };
    });
}
