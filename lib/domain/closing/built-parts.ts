import type { BuiltKind, BuiltPiece } from "../facts/built.ts";
import type { Fitting, Material } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem, ScopeKind } from "../facts/scope.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { sayWhere } from "../length/stretch.ts";
import { tallyOf } from "../reconnection/tally.ts";
import { counterTolerance } from "../run/convert.ts";
import { forCount } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { isOnPipe, kindsOf } from "../split/work-deeds.ts";
import type { Day } from "../time/day.ts";
import { unbuiltWork } from "./as-built.ts";

/** Something that was built, where, and on whose word. */
export interface BuiltPart {
  /** Of the measurement; `branch-T1` where it stands in the tally or in the word on a branch. */
  readonly id: string;
  readonly kind: BuiltKind;
  readonly itemId: string | null;
  readonly tieInId: string | null;
  /** Feet from the main connection, the lower end first; `from` null: a branch whose place is not known. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  readonly material: Material;
  readonly diameter: number | null;
  readonly fitting: Fitting;
  readonly depthFrom: Cft | null;
  readonly depthTo: Cft | null;
  readonly slope: number | null;
  readonly by: string;
  readonly on: Day;
  /** Where the second video shows it. */
  readonly runId: string | null;
  readonly second: number | null;
  readonly note: string;
  /** Where the second video, or what is on file of the branch, puts it elsewhere; empty where nothing does. */
  readonly differs: string;
}

/** What was built, and what of it nobody can draw yet, with why. */
export interface AsBuilt {
  readonly parts: readonly BuiltPart[];
  readonly open: readonly string[];
}

type Found = Pick<Report, "tieIns" | "stations">;

/**
 * What was built, from the main upstream: measurements that somebody put a name and a day to, of work
 * that is recorded as done; branches that were seen open in the second video; branches whose capping
 * or joining is recorded as done, at the place where they lie. What is only priced is not built.
 */
export function asBuiltOf(file: LineFile, report: Found): AsBuilt {
  const measured = file.builtPieces.map((piece) => ({ piece, lacks: lackOf(piece, file) }));
  const pieces = measured.flatMap(({ piece, lacks }) =>
    lacks === null ? [fromPiece(piece, { file, report })] : [],
  );
  const parts = [
    ...pieces,
    ...openedParts(file, report, pieces),
    ...cappedParts(file, report, pieces),
  ];
  return {
    parts: parts.toSorted(
      (a, b) => (a.from ?? Number.MAX_SAFE_INTEGER) - (b.from ?? Number.MAX_SAFE_INTEGER),
    ),
    open: [
      ...unbuiltWork(file).map(({ title }) => notBuilt(title)),
      ...unplaced(file, parts),
      ...measured.flatMap(({ piece, lacks }) =>
        lacks === null ? [] : [`${pieceName(piece, report)}: ${lacks}`],
      ),
    ],
  };
}

/** What the as-built shows, in one sentence. */
export function asBuiltSentence({ parts, open }: AsBuilt): string {
  if (parts.length === 0) return "Nothing is recorded as built";
  const branches = new Set(parts.flatMap(({ tieInId }) => tieInId ?? [])).size;
  const pieces = parts.filter(({ tieInId }) => tieInId === null).length;
  const drawn = sayList([
    ...(pieces === 0 ? [] : [forCount(pieces, "1 piece of pipe", `${pieces} pieces of pipe`)]),
    ...(branches === 0 ? [] : [forCount(branches, "1 branch", `${branches} branches`)]),
  ]);
  const left =
    open.length === 0
      ? ""
      : `; ${forCount(open.length, "1 item is", `${open.length} items are`)} not drawn yet`;
  return `${drawn} recorded as built${left}`;
}

/** Said of work that nobody recorded as done. */
export function notBuilt(title: string): string {
  return `“${title}” is not recorded as done.`;
}

/** Whether the work that a measurement belongs to is recorded as done. */
function isDone({ built }: Pick<LineFile, "built">, itemId: string | null): boolean {
  return itemId === null || built.some((word) => word.itemId === itemId || word.itemId === null);
}

/** Why a measurement does not count; null: it does. */
function lackOf(piece: BuiltPiece, file: LineFile): string | null {
  if (piece.measuredBy.trim() === "") return "no one is named who measured it.";
  if (piece.measuredOn === null) return "the day on which it was measured is not entered.";
  if (piece.from === null && piece.tieInId === null) return "its station is not entered.";
  if (!isDone(file, piece.itemId)) {
    const title = file.scope.find(({ id }) => id === piece.itemId)?.title ?? "its work";
    return notBuilt(title);
  }
  return null;
}

function pieceName(piece: BuiltPiece, { tieIns }: Found): string {
  const label = tieIns.find(({ tieIn }) => tieIn.id === piece.tieInId)?.tieIn.label;
  const what =
    label === undefined ? BUILT_WORDS[piece.kind] : `${label} ${BUILT_WORDS[piece.kind]}`;
  const where = piece.from === null ? "" : ` ${sayWhere(ordered(piece.from, piece.to))}`;
  const words = `${what}${where}`;
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}

/** What was done, as it stands in a table or after a branch’s name. */
export const BUILT_WORDS: Record<BuiltKind, string> = {
  replaced: "replaced",
  lined: "lined",
  burst: "replaced by bursting",
  repaired: "repaired",
  reconnected: "reconnected",
  capped: "capped",
  cleanout: "cleanout added",
  other: "other work",
};

function ordered(from: Cft, to: Cft | null): { from: Cft; to: Cft } {
  return { from: Math.min(from, to ?? from), to: Math.max(from, to ?? from) };
}

interface Known {
  readonly file: LineFile;
  readonly report: Found;
}

function fromPiece(piece: BuiltPiece, known: Known): BuiltPart {
  const finding = branchOf(piece.tieInId, known.report);
  const place = piece.from === null ? null : ordered(piece.from, piece.to);
  const turned = piece.from !== null && piece.to !== null && piece.to < piece.from;
  const from = place?.from ?? finding?.station ?? null;
  const to = piece.to === null ? null : (place?.to ?? null);
  const { id, kind, itemId, tieInId, material, diameter, fitting, slope, note } = piece;
  return {
    ...{ id, kind, itemId, tieInId, material, diameter, fitting, slope, note },
    from,
    to,
    depthFrom: turned ? piece.depthTo : piece.depthFrom,
    depthTo: turned ? piece.depthFrom : piece.depthTo,
    by: piece.measuredBy.trim(),
    on: piece.measuredOn ?? "",
    runId: piece.runId,
    second: piece.runSecond,
    differs: piece.from === null ? "" : differenceOf({ ...piece, from, to }, finding, known),
  };
}

function branchOf(tieInId: string | null, { tieIns }: Found): TieInFinding | undefined {
  return tieIns.find(({ tieIn }) => tieIn.id === tieInId);
}

/**
 * Where the place as measured is not the one that the second video shows, or that the branch has on
 * file. Two readings of one place may be off as far as a counter may (run/convert.ts), both ways.
 */
function differenceOf(
  piece: Pick<BuiltPiece, "runId" | "tieInId" | "material"> & {
    readonly from: Cft | null;
    readonly to: Cft | null;
  },
  finding: TieInFinding | undefined,
  known: Known,
): string {
  const { from, to } = piece;
  if (from === null) return "";
  if (finding !== undefined) return branchDifference(from, { piece, finding }, known);
  if (piece.runId === null || to === null) return "";
  const seen = pipeEnds(piece.runId, known);
  if (seen.length === 0) return "";
  const name = runName(piece.runId, known.file);
  const lost = [from, to].filter((end) => !seen.some((at) => isNear(at, end)));
  return lost.length === 0
    ? ""
    : `${name} shows no change of pipe near ${lost.map(formatFeet).join(" or ")}: its changes are at ${seen.map(formatFeet).join(", ")}.`;
}

function branchDifference(
  from: Cft,
  { piece, finding }: { piece: Pick<BuiltPiece, "runId">; finding: TieInFinding },
  { file }: Known,
): string {
  const seen = finding.sightings.find(({ runId }) => runId === piece.runId)?.station ?? null;
  const { label } = finding.tieIn;
  if (seen !== null && piece.runId !== null)
    return isNear(seen, from)
      ? ""
      : `${runName(piece.runId, file)} shows ${label} at ${formatFeet(seen)}.`;
  const { station } = finding;
  if (station === null || isNear(station, from, finding.uncertainty ?? 0)) return "";
  return `${label} is at ${formatFeet(station)} on file.`;
}

function isNear(one: Cft, other: Cft, off: Cft = 0): boolean {
  return Math.abs(one - other) <= 2 * Math.max(counterTolerance(other), off);
}

/** Stations at which a run’s log has another pipe begin. */
function pipeEnds(runId: string, { file, report }: Known): Cft[] {
  const logged = file.observations.filter(
    (seen) => seen.runId === runId && seen.kind === "material",
  );
  return logged
    .flatMap(({ id }) => {
      const found = report.stations.find(({ observationId }) => observationId === id);
      return [found?.station, found?.toStation].filter((at) => at != null);
    })
    .toSorted((a, b) => a - b);
}

function runName(runId: string, { runs }: Pick<LineFile, "runs">): string {
  return runs.find(({ id }) => id === runId)?.name || "The second video";
}

const PLAIN = {
  to: null,
  material: "unknown",
  diameter: null,
  fitting: "unknown",
  depthFrom: null,
  depthTo: null,
  slope: null,
  note: "",
  differs: "",
} as const;

/** Branches that the tally has as seen open after the work, where that video shows them. */
function openedParts(file: LineFile, report: Found, pieces: readonly BuiltPart[]): BuiltPart[] {
  const told = new Set(
    pieces.filter(({ kind }) => kind === "reconnected").map(({ tieInId }) => tieInId),
  );
  return tallyOf(file, scopeInForce(file), report.tieIns)
    .filter(({ state, tieInId }) => state === "open-again" && !told.has(tieInId))
    .flatMap(({ row, tieInId, finding, items }) => {
      if (row === null) return [];
      const seen = finding.sightings.find(({ runId }) => runId === row.openedRunId);
      const run = file.runs.find(({ id }) => id === row.openedRunId);
      return [
        {
          ...PLAIN,
          id: `branch-${tieInId}`,
          kind: "reconnected",
          itemId: items[0]?.id ?? null,
          tieInId,
          from: seen?.station ?? finding.station,
          by: row.openedBy.trim(),
          on: row.openedOn ?? run?.ranOn ?? "",
          runId: row.openedRunId,
          second: row.openedSecond,
        } satisfies BuiltPart,
      ];
    });
}

const BRANCH_KINDS: Partial<Record<ScopeKind, BuiltKind>> = {
  cap: "capped",
  reconnect: "reconnected",
};

/** Work on one branch that is recorded as done: it is where the branch is. */
function cappedParts(file: LineFile, report: Found, pieces: readonly BuiltPart[]): BuiltPart[] {
  return scopeInForce(file).flatMap((item) => {
    const [only, ...others] = kindsOf(item, file);
    const kind = only === undefined || others.length > 0 ? undefined : BRANCH_KINDS[only];
    const word = file.built.find(({ itemId }) => itemId === item.id);
    if (kind === undefined || word === undefined || item.place !== "branch") return [];
    if (pieces.some((each) => each.tieInId === item.tieInId && each.kind === kind)) return [];
    return [
      {
        ...PLAIN,
        id: `branch-${item.tieInId}-${kind}`,
        kind,
        itemId: item.id,
        tieInId: item.tieInId,
        from: branchOf(item.tieInId, report)?.station ?? null,
        by: word.by,
        on: word.on,
        runId: null,
        second: null,
        note: word.words,
      } satisfies BuiltPart,
    ];
  });
}

/** Work on the pipe that is done, and of which nobody measured where. */
function unplaced(file: LineFile, parts: readonly BuiltPart[]): string[] {
  const placed = new Set(parts.map(({ itemId }) => itemId));
  return scopeInForce(file)
    .filter((item) => changesPipe(item, file) && !placed.has(item.id))
    .filter((item) => file.built.some(({ itemId }) => itemId === item.id || itemId === null))
    .map(({ title }) => `“${title}” is recorded as done; where it lies was not measured.`);
}

/** Something of it stays in the ground: cutting and jetting leave the pipe as it was. */
function changesPipe(item: ScopeItem, file: LineFile): boolean {
  return isOnPipe(item, file) && !kindsOf(item, file).every((kind) => CLEARS.includes(kind));
}

const CLEARS: readonly ScopeKind[] = ["clear", "clean"];

const PIECE_KINDS: Partial<Record<ScopeKind, BuiltKind>> = {
  "dig-and-replace": "replaced",
  "spot-repair": "repaired",
  line: "lined",
  burst: "burst",
  cap: "capped",
  reconnect: "reconnected",
};

/**
 * A row to measure for each piece of work that is recorded as done and has none yet. Its place stays
 * empty: what was priced is not what was built.
 */
export function piecesToStart(file: LineFile, report: Found, newId: () => string): BuiltPiece[] {
  const placed = new Set(asBuiltOf(file, report).parts.map(({ itemId }) => itemId));
  const begun = new Set(file.builtPieces.map(({ itemId }) => itemId));
  return scopeInForce(file)
    .filter((item) => changesPipe(item, file) && isDone(file, item.id))
    .filter(({ id }) => !placed.has(id) && !begun.has(id))
    .map((item) => {
      const [only, ...others] = kindsOf(item, file);
      const word = file.built.findLast(({ itemId }) => itemId === item.id || itemId === null);
      return {
        id: newId(),
        kind: (only && others.length === 0 && PIECE_KINDS[only]) || "other",
        itemId: item.id,
        tieInId: item.place === "branch" ? item.tieInId : null,
        from: null,
        to: null,
        diameter: null,
        material: "unknown",
        fitting: "unknown",
        depthFrom: null,
        depthTo: null,
        slope: null,
        runId: secondVideo(file, word?.on ?? null),
        runSecond: null,
        measuredBy: "",
        measuredOn: null,
        note: "",
      };
    });
}

/** The newest run that was made on the day of the work or after it. */
function secondVideo({ runs }: Pick<LineFile, "runs">, done: Day | null): string | null {
  if (done === null) return null;
  const after = runs.filter(({ ranOn }) => ranOn >= done);
  return after.toSorted((a, b) => a.ranOn.localeCompare(b.ranOn)).at(-1)?.id ?? null;
}
