import type { PointKind } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Holder, ReachFinding } from "../findings/reach-finding.ts";
import type { Report } from "../findings/report.ts";
import { saySpan } from "../length/span.ts";
import type { Cft } from "../length/station.ts";
import { sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { PRESSING, type Reply, replyWith } from "./reply.ts";

interface Stretch {
  readonly from: Cft;
  readonly to: Cft;
  readonly holder: Holder;
  readonly mender: Holder;
}

/** `Owners to the right-of-way line; unclear from 0 to 12 ft`. */
export function responsibilityAnswer(file: LineFile, report: Report): Reply {
  if (report.reaches.length === 0)
    return replyWith("Not known yet", [
      {
        closes: "Enter what the camera saw, so the line has sections",
        pressing: PRESSING.someTime,
      },
    ]);
  const stretches = stretchesOf(report.reaches);
  const known = stretches.filter(({ holder }) => holder !== "unclear");
  const unclear = stretches.filter(({ holder }) => holder === "unclear");
  const sentence = sayParts([
    ...known.map((stretch) => stretchWords(file, stretch, report.extent)),
    ...(unclear.length === 0 ? [] : [unclearWords(unclear, report.extent)]),
  ]);
  return replyWith(sentence, openings(file, unclear));
}

/** Neighboring reaches of one holder and mender, as one stretch. */
function stretchesOf(reaches: readonly ReachFinding[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (const { from, to, holder, mender } of reaches) {
    const last = stretches.at(-1);
    if (last !== undefined && last.holder === holder && last.mender === mender && last.to === from)
      stretches[stretches.length - 1] = { ...last, to };
    else stretches.push({ from, to, holder, mender });
  }
  return stretches;
}

const HOLDER_WORDS: Record<Holder, string> = {
  owners: "owners",
  authority: "the authority",
  unclear: "unclear",
};

function stretchWords(file: LineFile, stretch: Stretch, extent: Cft): string {
  const { holder, mender } = stretch;
  const words = `${HOLDER_WORDS[holder]} ${whereWords(file, stretch, extent)}`;
  return mender === holder ? words : `${words}, repaired by ${HOLDER_WORDS[mender]}`;
}

function whereWords(file: LineFile, { from, to, holder }: Stretch, extent: Cft): string {
  if (from <= 0 && to >= extent) return `for the whole line, ${saySpan(from, to)}`;
  if (holder === "owners" && from <= 0)
    return `from the main connection to ${placeWords(file, to)}`;
  const isUpper = holder === "owners" && to >= extent;
  if (isUpper && pointAt(file, from) !== null) return `to ${placeWords(file, from)}`;
  if (holder === "authority" && from <= 0) return `up to ${placeWords(file, to)}`;
  return `from ${saySpan(from, to)}`;
}

const POINT_WORDS: Record<PointKind, string> = {
  "right-of-way-line": "the right-of-way line",
  curb: "the curb",
  "property-line": "the property line",
  cleanout: "the cleanout",
  foundation: "the foundation",
  manhole: "the manhole",
  "easement-edge": "the edge of the easement",
};

function pointAt(file: LineFile, station: Cft): string | null {
  const point = file.points.find((each) => each.station === station);
  return point === undefined ? null : POINT_WORDS[point.kind];
}

function placeWords(file: LineFile, station: Cft): string {
  return pointAt(file, station) ?? `${station / 100} ft`;
}

function unclearWords(unclear: readonly Stretch[], extent: Cft): string {
  const [only] = unclear;
  if (only !== undefined && only.from <= 0 && only.to >= extent)
    return "unclear for the whole line";
  return `unclear from ${sayList(unclear.map(({ from, to }) => saySpan(from, to)))}`;
}

function openings(file: LineFile, unclear: readonly Stretch[]) {
  if (file.authority === null)
    return [{ closes: "Choose the authority whose rules apply here", pressing: PRESSING.stalls }];
  if (unclear.length === 0) return [];
  if (file.line.ruleId === null)
    return [
      {
        closes: `Choose which of ${file.authority.name}’s rules applies`,
        pressing: PRESSING.stalls,
      },
    ];
  const where = sayList(unclear.map(({ from, to }) => saySpan(from, to)));
  return [
    {
      closes: `Ask ${file.authority.name} in writing about ${where}, or enter a recorded agreement`,
      pressing: PRESSING.stalls,
    },
  ];
}
