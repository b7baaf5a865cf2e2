import type { LineFile } from "../facts/line-file.ts";
import type { Holder, ReachFinding } from "../findings/reach-finding.ts";
import type { CoverageSpan, Report } from "../findings/report.ts";
import { formatCents } from "../money/format-cents.ts";
import { loadBand, slopeBand } from "./capacity-band.ts";
import type { StripBand, StripTopic } from "./drawing.ts";
import { shortNames } from "./short-name.ts";
import { COVERAGE_LABELS, HOLDER_LABELS } from "./words.ts";

type Cell = StripBand["cells"][number];
type Hatch = Cell["hatch"];

/** Which bands stand under the pipe on which page. */
const BANDS: Record<StripTopic, readonly ((file: LineFile, report: Report) => StripBand)[]> = {
  all: [seenBand, servedBand, onSlope, onLoad, answersBand, costBand],
  who: [servedBand, crossedBand],
  record: [],
  camera: [seenBand, onSlope, onLoad],
  reconcile: [seenBand],
  responsibility: [answersBand, mendsBand],
  cost: [servedBand, costBand],
};

/** The words of a state of coverage and how it is hatched: the same for one run and for all. */
export function coverageCell({ from, to, state }: CoverageSpan): Cell {
  return {
    from,
    to,
    words: COVERAGE_LABELS[state],
    loud: false,
    hatch: COVERAGE_HATCHES[state],
  };
}

/** The bands of a topic; a band that would say nothing is left out. */
export function bandsOn(file: LineFile, report: Report, topic: StripTopic): StripBand[] {
  return BANDS[topic].map((band) => band(file, report)).filter((band) => band.cells.length > 0);
}

const COVERAGE_HATCHES: Record<CoverageSpan["state"], Hatch> = {
  seen: "none",
  "under-water": "dense",
  blocked: "cross",
  "not-in-view": "sparse",
  "not-recorded": "sparse",
  "not-inspected": "sparse",
};

function onSlope(_file: LineFile, report: Report): StripBand {
  return slopeBand(report);
}

function onLoad(_file: LineFile, report: Report): StripBand {
  return loadBand(report);
}

function seenBand(_file: LineFile, report: Report): StripBand {
  return { title: "Camera", cells: merged(report.coverage.map(coverageCell)) };
}

function servedBand(file: LineFile, report: Report): StripBand {
  const names = shortNames(file.properties);
  const cells = report.reaches
    .filter((reach) => reach.servedBy.length + reach.unknownTieIns.length > 0)
    .map((reach) => ({
      from: reach.from,
      to: reach.to,
      words: servedWords(reach, names),
      brief: servedCount(reach),
      loud: false,
      hatch: "none" as const,
      id: reachId(reach),
    }));
  return { title: "Flow of", cells: merged(cells) };
}

function servedWords(reach: ReachFinding, names: ReadonlyMap<string, string>): string {
  const known = reach.servedBy.map((id) => names.get(id) ?? "a property");
  const unknown = reach.unknownTieIns.length;
  if (unknown === 0) return known.join(", ");
  return known.length === 0 ? `${unknown} unknown` : `${known.join(", ")} + ${unknown} unknown`;
}

function servedCount({ servedBy, unknownTieIns }: ReachFinding): string {
  const unknown = unknownTieIns.length;
  return unknown === 0 ? `${servedBy.length}` : `${servedBy.length} + ${unknown}?`;
}

/** How tables and drawing name a reach to each other. */
export function reachId({ from }: Pick<ReachFinding, "from">): string {
  return `reach:${from}`;
}

function crossedBand(file: LineFile, report: Report): StripBand {
  const names = shortNames(file.properties);
  const holds = unwaived(report, "easement-missing");
  const cells = file.crossings
    .toSorted((one, other) => one.from - other.from)
    .map((crossing) => ({
      from: crossing.from,
      to: crossing.to,
      words: `${names.get(crossing.propertyId) ?? "a lot"}, ${EASEMENTS[crossing.easement]}`,
      loud: holds.has(crossing.id),
      id: crossing.id,
      lot: true,
      hatch: crossing.easement === "recorded" ? ("none" as const) : ("sparse" as const),
    }));
  return { title: "Crosses lot", cells };
}

const EASEMENTS = {
  recorded: "easement recorded",
  none: "no easement",
  unknown: "easement unknown",
} as const;

function answersBand(_file: LineFile, report: Report): StripBand {
  return holderBand(report, { title: "Responsible", holderOf: (reach) => reach.holder });
}

function mendsBand(_file: LineFile, report: Report): StripBand {
  const differs = report.reaches.some((reach) => reach.mender !== reach.holder);
  if (!differs) return { title: "Repaired by", cells: [] };
  return holderBand(report, { title: "Repaired by", holderOf: (reach) => reach.mender });
}

const HOLDER_HATCHES: Record<Holder, Hatch> = {
  owners: "none",
  authority: "sparse",
  unclear: "cross",
};

function holderBand(
  report: Report,
  { title, holderOf }: { title: string; holderOf: (reach: ReachFinding) => Holder },
): StripBand {
  const held = report.holds.some(
    (hold) => hold.cause === "responsibility-unclear" && hold.waiver === null,
  );
  const cells = report.reaches.map((reach) => {
    const holder = holderOf(reach);
    return {
      from: reach.from,
      to: reach.to,
      words: HOLDER_LABELS[holder],
      loud: held && holder === "unclear",
      hatch: HOLDER_HATCHES[holder],
      id: reachId(reach),
    };
  });
  return { title, cells: merged(cells) };
}

function costBand(_file: LineFile, report: Report): StripBand {
  if (report.reaches.every((reach) => reach.cost === 0)) return { title: "Cost", cells: [] };
  const cells = report.reaches.map((reach) => ({
    from: reach.from,
    to: reach.to,
    words: reach.cost === 0 ? "no work" : formatCents(reach.cost),
    loud: false,
    hatch: "none" as const,
    id: reachId(reach),
  }));
  return { title: "Cost", cells: merged(cells, (cell) => cell.words === "no work") };
}

function unwaived(report: Report, cause: string): ReadonlySet<string> {
  const holds = report.holds.filter((hold) => hold.cause === cause && hold.waiver === null);
  return new Set(holds.map((hold) => hold.subjectId));
}

/** Neighboring cells that say the same become one; amounts do not, where `may` says so. */
export function merged(cells: readonly Cell[], may: (cell: Cell) => boolean = () => true): Cell[] {
  const out: Cell[] = [];
  for (const cell of cells) {
    const last = out.at(-1);
    const same =
      last !== undefined &&
      may(cell) &&
      last.to === cell.from &&
      last.words === cell.words &&
      last.hatch === cell.hatch &&
      last.loud === cell.loud;
    if (same) out[out.length - 1] = { ...last, to: cell.to };
    else out.push(cell);
  }
  return out;
}
