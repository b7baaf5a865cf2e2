import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { FixedPoint, Spot, Tie, TieSide } from "../facts/plan.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { compassOf } from "./compass.ts";
import { type CourseFile, courseOf, spotAt } from "./course.ts";
import { cornersOver, type Triangle, triangleOf } from "./triangle.ts";

/** A tie with what it comes to. */
export interface TieFinding {
  readonly tieId: string;
  /** What is held by it: `T3`, `the cleanout`, `26.0 ft`. */
  readonly subject: string;
  readonly station: Cft | null;
  /** As it prints: `18.4 ft from the hydrant and 31.0 ft from the SE corner of the house`. */
  readonly words: string;
  /** `unchecked`: nobody knows how far apart the fixed points are. */
  readonly state: Triangle["state"] | "unchecked";
  /** Where it puts the point; null where fixed points, side or triangle leave it open. */
  readonly spot: Spot | null;
  /** How far that lies from where bearing and footage put it. */
  readonly off: Cft | null;
  /** What is so, and what to do where something is wrong. */
  readonly sentence: string;
}

/** A tie-in with where it is, as far as a tie needs it. */
interface PlacedTieIn {
  readonly tieIn: Pick<TieIn, "id" | "label" | "parentId">;
  readonly station: Cft | null;
}

type TieFile = CourseFile & Pick<LineFile, "ties" | "fixedPoints" | "points">;

/** Beyond this a place by ties and the place by bearing and footage do not agree: 3 ft. */
const AGREES = 300;

/** From here on a tape that is off by a foot moves the place by more than two: the tapes meet too flat. */
const LOOSE = 2;

/** Every tie of the file, checked: does the triangle close, on which side, and where does it put the point. */
export function tieFindings(file: TieFile, tieIns: readonly PlacedTieIn[]): TieFinding[] {
  return file.ties.map((tie) => tieFinding(tie, { file, tieIns }));
}

interface Known {
  readonly file: TieFile;
  readonly tieIns: readonly PlacedTieIn[];
}

function tieFinding(tie: Tie, known: Known): TieFinding {
  const { file } = known;
  const [one, other] = [tie.fromId, tie.otherId].map((id) =>
    file.fixedPoints.find((each) => each.id === id),
  );
  const { subject, station } = subjectOf(tie, known);
  const names = [one?.name ?? "a point", other?.name ?? "a point"] as const;
  const words = `${formatFeet(tie.fromDistance)} from ${names[0]} and ${formatFeet(tie.otherDistance)} from ${names[1]}`;
  const ends = one && other ? spotsOf(one, other) : null;
  const planned = ends === null ? null : distance(...ends);
  const apart = tie.apart ?? planned;
  const open = { tieId: tie.id, subject, station, words, spot: null, off: null };
  if (apart === null)
    return {
      ...open,
      state: "unchecked",
      sentence: `Not checked: tape how far ${names[0]} is from ${names[1]}, or give both a place on the plan.`,
    };
  const triangle = triangleOf(tie.fromDistance, tie.otherDistance, apart);
  if (triangle.state !== "closes")
    return { ...open, state: triangle.state, sentence: openWords(triangle, { tie, apart, names }) };
  const byLine = lineSpot(file, station);
  const spot = ends === null ? null : placed(cornersOver(triangle, ends), tie.side, byLine);
  const said = [
    `The triangle closes over ${formatFeet(Math.round(apart))}${tie.apart === null ? " of the plan" : ""}.`,
    ...planWords(tie, planned),
    ...(triangle.loose > LOOSE
      ? ["The two tapes meet at a flat angle, so the place is loose: take another fixed point."]
      : []),
    ...(ends !== null && spot === null
      ? ["Say on which side of the two fixed points it lies."]
      : []),
    ...offWords(spot, byLine),
  ];
  const off = spot === null || byLine === null ? null : Math.round(distance(spot, byLine));
  return { ...open, state: "closes", spot, off, sentence: said.join(" ") };
}

/** Where tape and plan contradict each other on the two fixed points. */
function planWords({ apart }: Tie, planned: number | null): string[] {
  if (apart === null || planned === null || Math.abs(apart - planned) <= AGREES) return [];
  return [
    `On the plan the two fixed points are ${formatFeet(tenth(planned))} apart: one of them is drawn at the wrong place, or the tape was misread.`,
  ];
}

function subjectOf(tie: Tie, { file, tieIns }: Known): { subject: string; station: Cft | null } {
  const finding = tieIns.find(({ tieIn }) => tieIn.id === tie.tieInId);
  if (finding !== undefined) {
    const { tieIn, station } = finding;
    return { subject: tieIn.label, station: tieIn.parentId === null ? station : null };
  }
  const point = file.points.find(({ id }) => id === tie.pointId);
  if (point !== undefined)
    return {
      subject: `${pointName(point.kind)} at ${formatFeet(point.station)}`,
      station: point.station,
    };
  if (tie.station === 0) return { subject: "main connection", station: 0 };
  return {
    subject: tie.station === null ? "a point" : formatFeet(tie.station),
    station: tie.station,
  };
}

/** A point on the line as a drawing calls it. */
export function pointName(kind: LineFile["points"][number]["kind"]): string {
  return POINT_NAMES[kind];
}

const POINT_NAMES: Record<LineFile["points"][number]["kind"], string> = {
  "right-of-way-line": "right-of-way line",
  curb: "curb",
  "property-line": "property line",
  cleanout: "cleanout",
  foundation: "foundation",
  manhole: "manhole",
  "easement-edge": "easement edge",
};

function spotsOf(one: FixedPoint, other: FixedPoint): readonly [Spot, Spot] | null {
  const [from, to] = [spotOf(one), spotOf(other)];
  return from === null || to === null || distance(from, to) === 0 ? null : [from, to];
}

/** Where a fixed point stands; null where nobody entered it. */
export function spotOf({ east, north }: FixedPoint): Spot | null {
  return east === null || north === null ? null : { east, north };
}

function lineSpot(file: TieFile, station: Cft | null): Spot | null {
  const course = courseOf(file);
  return course === null || station === null ? null : spotAt(course, station);
}

/** The corner on the side that was said; else the one that lies nearer to the line. */
function placed(
  corners: Record<Exclude<TieSide, "unknown">, Spot>,
  side: TieSide,
  byLine: Spot | null,
): Spot | null {
  if (side !== "unknown") return whole(corners[side]);
  if (byLine === null) return null;
  const isLeft = distance(corners.left, byLine) <= distance(corners.right, byLine);
  return whole(isLeft ? corners.left : corners.right);
}

function openWords(
  triangle: Exclude<Triangle, { readonly state: "closes" }>,
  taped: { readonly tie: Tie; readonly apart: number; readonly names: readonly [string, string] },
): string {
  const { tie, apart } = taped;
  const [from, to] = taped.names;
  if (triangle.state === "same-place")
    return `${from} and ${to} are the same place: two different fixed points are needed.`;
  const tapes = `${formatFeet(tie.fromDistance)} and ${formatFeet(tie.otherDistance)}`;
  const base = `${formatFeet(tenth(apart))} between ${from} and ${to}`;
  return triangle.state === "short"
    ? `The triangle does not close: ${tapes} together are ${formatFeet(tenth(triangle.by))} too short for the ${base}. Tape again.`
    : `The triangle does not close: ${tapes} differ by ${formatFeet(tenth(triangle.by))} more than the ${base}. Tape again.`;
}

/** Whether ties and footage agree, with the way in which they do not. */
function offWords(spot: Spot | null, byLine: Spot | null): string[] {
  if (spot === null || byLine === null) return [];
  const off = distance(spot, byLine);
  if (off <= AGREES)
    return [`It is ${formatFeet(tenth(off))} from where bearing and footage put it.`];
  const [east, north] = [spot.east - byLine.east, spot.north - byLine.north];
  const way = compassOf((Math.atan2(east, north) * 180) / Math.PI);
  return [
    `It is ${formatFeet(tenth(off))} ${way} of where bearing and footage put it: check side, bends, bearing and the tapes.`,
  ];
}

function distance(one: Spot, other: Spot): number {
  return Math.hypot(other.east - one.east, other.north - one.north);
}

function tenth(length: number): Cft {
  return Math.round(length / 10) * 10 + 0;
}

function whole({ east, north }: Spot): Spot {
  return { east: Math.round(east) + 0, north: Math.round(north) + 0 };
}
