import type { Spot } from "../facts/plan.ts";
import type { TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { formatBearing, sideBearing } from "../plan/compass.ts";
import { bearingAt, type Course, courseOf, offset, pathBetween, spotAt } from "../plan/course.ts";
import { cornersOf } from "../plan/outline.ts";
import { pointName, spotOf } from "../plan/ties.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";
import {
  type Bounds,
  cellsOf,
  clip,
  cutsOf,
  labelIn,
  type PlanCell,
  sizeOf,
} from "./plan-cells.ts";
import { groundPart } from "./plan-ground.ts";
import { type Label, placeLabels } from "./plan-labels.ts";
import { cross, diamond, dot, northArrow, ring, scaleBar, triangle } from "./plan-marks.ts";
import { type Frame, type Tiling, tilingOf } from "./plan-scale.ts";
import {
  between,
  type Drawn,
  ends,
  LABEL,
  middleOf,
  NAME,
  type PlanFacts,
  type PlanFile,
  type Sheet,
} from "./plan-sheet.ts";
import { planSentence } from "./plan-words.ts";
import type { Point, Shape } from "./strip-shape.ts";

/** What has to stand under every plan view. */
export const PLAN_NOTE =
  "Not a survey: drawn from a bearing, footage, tapes and traced shapes. Branches are drawn by the side on which they join; their course is not known.";

/** The plan view, laid out in points of 1/72 in: the same on the screen and on paper. */
export interface PlanView {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
  /** Feet to an inch at full size. */
  readonly feetPerInch: number;
  /** No: the authority allows other scales, and none of them fits. */
  readonly isAllowed: boolean;
  /** Which of how many sheets. */
  readonly sheet: number;
  readonly of: number;
  /** The whole drawing in one sentence. */
  readonly sentence: string;
}

/** How far a branch is drawn: its way is known, its course is not. */
const STUB: Cft = 800;

/**
 * Streets, lot lines and buildings, the line by its bearing and bends, its tie-ins, points, ties and the
 * work in force, north up, to the largest usual scale at which all of it fits the frame. Null while no
 * bearing is entered: then nobody knows how the line lies.
 */
export function drawPlan(file: PlanFile, facts: PlanFacts, frame: Frame): PlanView | null {
  return drawPlans(file, facts, { frame, allowed: [] })[0] ?? null;
}

/** The room of a sheet, and feet to an inch of the scales that may be taken; none: every usual one. */
interface Paper {
  readonly frame: Frame;
  readonly allowed: readonly number[];
}

/** To what scale it is drawn, and on how many sheets. Null while no bearing is entered. */
export function planTiling(file: PlanFile, facts: PlanFacts, paper: Paper): Tiling | null {
  const course = courseOf(file);
  return course === null
    ? null
    : tilingOf(sizeOf(boundsOf(file, facts, course)), paper.frame, paper.allowed);
}

/**
 * The same to a scale that the authority allows: where that takes several sheets, they are cut at match
 * lines and numbered from the northwest; a sheet on which none of the line is gets left out.
 */
export function drawPlans(file: PlanFile, facts: PlanFacts, { frame, allowed }: Paper): PlanView[] {
  const course = courseOf(file);
  if (course === null) return [];
  const bounds = boundsOf(file, facts, course);
  const tiling = tilingOf(sizeOf(bounds), frame, allowed);
  const drawn = cellsOf(bounds, frame, tiling).map((cell) => ({
    cell,
    ...drawCell(file, facts, { course, cell, frame }),
  }));
  const shown = drawn.filter(({ hasLine }) => hasLine);
  const { feetPerInch, isAllowed } = tiling;
  return shown.map(({ cell, shapes, labels, taken }, at) => {
    const { width } = frame;
    const { height } = cell;
    const cuts = cutsOf(
      cell,
      shown.map((other) => other.cell),
    );
    return {
      width,
      height,
      shapes: [
        ...shapes,
        ...cuts.shapes,
        ...placeLabels(labels, { width, height }, [
          { left: width - 40, right: width, top: 0, bottom: 46 },
          { left: 0, right: 170, top: height - 24, bottom: height },
          ...cuts.boxes,
          ...taken,
        ]),
        ...northArrow(width),
        ...scaleBar({ height, feetPerInch }),
      ],
      feetPerInch,
      isAllowed,
      sheet: at + 1,
      of: shown.length,
      sentence: planSentence(file, facts),
    };
  });
}

function boundsOf(file: PlanFile, facts: PlanFacts, course: Course): Bounds {
  const spots = everySpot(file, facts, course);
  const [west, east] = ends(spots.map((spot) => spot.east));
  const [south, north] = ends(spots.map((spot) => spot.north));
  return { west, east, south, north };
}

/** What of the drawing stands on one sheet, its labels not placed yet. */
function drawCell(
  file: PlanFile,
  facts: PlanFacts,
  { course, cell, frame }: { course: Course; cell: PlanCell; frame: Frame },
) {
  const sheet: Sheet = { course, width: frame.width, height: cell.height, to: cell.to };
  const ofLine = [
    workPart(file, facts, sheet),
    tiePart(file, facts, sheet),
    trunkPart(file, facts, sheet),
    pointPart(file, sheet),
    tieInPart(facts, sheet),
  ];
  const parts = [groundPart(file, sheet), ...ofLine];
  return {
    hasLine: ofLine.some(({ shapes }) =>
      shapes.some((shape) => clip(shape, cell.window).length > 0),
    ),
    shapes: parts.flatMap((part) => part.shapes).flatMap((shape) => clip(shape, cell.window)),
    // What matters most chooses its place first.
    labels: parts
      .toReversed()
      .flatMap((part) => part.labels)
      .flatMap((label) => labelIn(label, cell.window)),
    taken: [...mainBoxes(sheet), ...trunkBoxes(facts, sheet), ...stubBoxes(facts, sheet)],
  };
}

function everySpot(file: PlanFile, { tieIns, ties, extent }: PlanFacts, course: Course): Spot[] {
  return [
    ...pathBetween(course, 0, Math.max(extent, 1_000)),
    ...file.planShapes.flatMap(({ outline }) => cornersOf(outline)),
    ...file.fixedPoints.flatMap((point) => spotOf(point) ?? []),
    ...ties.flatMap(({ spot }) => spot ?? []),
    ...tieIns.flatMap((finding) => stubOf(course, finding)),
  ];
}

/** A branch's joint and where its stub ends; only the joint where its side is not known. */
function stubOf(course: Course, { station, side, tieIn }: TieInFinding): Spot[] {
  if (station === null || tieIn.parentId !== null) return [];
  const joint = spotAt(course, station);
  const facing = sideBearing(bearingAt(course, station), side);
  return facing === null ? [joint] : [joint, offset(joint, facing, STUB)];
}

function trunkPart({ bends, line }: PlanFile, { extent }: PlanFacts, sheet: Sheet): Drawn {
  const { course, to } = sheet;
  const end = Math.max(extent, 1_000);
  const path = pathBetween(course, 0, end).map(to);
  const main = to({ east: 0, north: 0 });
  const bearing = course[0]?.bearing ?? 0;
  const across = mainAcross(course).map(to);
  const shown = bends.filter(({ station }) => station > 0 && station < end);
  return {
    shapes: [
      { kind: "line", points: across, width: 4, tone: "soft", dash: false },
      { kind: "line", points: path, width: 2.2, tone: "ink", dash: false },
      ...shown.map(({ station }) => dot(to(spotAt(course, station)), 2.2, "ink")),
    ],
    labels: [
      { at: main, text: "public main", size: LABEL, strong: true, toward: awayFrom(path) },
      ...shown.map(
        ({ station, degrees, turn }): Label => ({
          at: to(spotAt(course, station)),
          text: `bend ${degrees}° ${turn}, ${formatFeet(station)}`,
          size: NAME,
          tone: "soft",
          toward: [0, 1],
        }),
      ),
      {
        at: middleOf(path.slice(0, 2)),
        text: `${formatBearing(bearing)}${line.bearingFrom.trim() === "" ? "" : ` (${line.bearingFrom.trim()})`}`,
        size: NAME,
        tone: "soft",
        toward: [0, 1],
      },
    ],
  };
}

/** How the public main is drawn: 6 ft to either side, square to the line. */
function mainAcross(course: Course): Spot[] {
  const bearing = course[0]?.bearing ?? 0;
  return [bearing - 90, bearing + 90].map((way) => offset({ east: 0, north: 0 }, way, 600));
}

/** Words at the main stand on the far side of the line. */
function awayFrom([first, second]: readonly Point[]): Point {
  return first !== undefined && second !== undefined && second[0] > first[0] ? [-1, 0] : [1, 0];
}

function workPart(file: PlanFile, _facts: PlanFacts, { course, to }: Sheet): Drawn {
  const work = (file.work ?? scopeInForce(file)).flatMap(({ title, place, from, to: end }) =>
    from === null || (place !== "stretch" && place !== "point")
      ? []
      : [{ title, from, end: end ?? from }],
  );
  return {
    shapes: work.flatMap(({ from, end }): Shape[] =>
      from === end
        ? [ring(to(spotAt(course, from)), 6)]
        : [
            {
              kind: "line",
              points: pathBetween(course, from, end).map(to),
              width: 8,
              tone: "faint",
              dash: false,
            },
          ],
    ),
    labels: work.map(
      ({ title, from, end }): Label => ({
        at: to(spotAt(course, (from + end) / 2)),
        text: `${title}, ${from === end ? formatFeet(from) : `${plainFeet(from)} to ${formatFeet(end)}`}`,
        size: NAME,
        toward: [0, 1],
      }),
    ),
  };
}

function pointPart({ points }: PlanFile, { course, to }: Sheet): Drawn {
  return {
    shapes: points.map(({ station }) => {
      const spot = spotAt(course, station);
      const bearing = bearingAt(course, station);
      const cut = [bearing - 90, bearing + 90].map((way) => to(offset(spot, way, 200)));
      return { kind: "line", points: cut, width: 1, tone: "ink", dash: false };
    }),
    labels: points.map((point) => ({
      at: to(spotAt(course, point.station)),
      text: `${pointName(point.kind)} ${formatFeet(point.station)}`,
      size: NAME,
      tone: "soft",
      toward: [0, 1],
    })),
  };
}

function tieInPart({ tieIns }: PlanFacts, { course, to }: Sheet): Drawn {
  const placed = tieIns.flatMap((finding) => {
    const stub = stubOf(course, finding).map(to);
    const [joint] = stub;
    return joint === undefined ? [] : [{ finding, stub, joint, end: stub.at(-1) ?? joint }];
  });
  return {
    shapes: placed.flatMap(({ finding, stub, joint }): Shape[] => {
      const loud = isOwnerOpen(finding);
      const tone = loud ? "loud" : "ink";
      return [
        ...(stub.length < 2
          ? []
          : [{ kind: "line" as const, points: stub, width: 1.2, tone, dash: true } as const]),
        loud ? diamond(joint, 4.5) : dot(joint, 3, "ink"),
      ];
    }),
    labels: placed.map(({ finding, joint, end }): Label => {
      const loud = isOwnerOpen(finding);
      const toward: Point = [
        Math.sign(Math.round(end[0] - joint[0])),
        Math.sign(Math.round(end[1] - joint[1])),
      ];
      return {
        at: end,
        text: `${finding.tieIn.label} ${formatFeet(finding.station ?? 0)}${loud ? " undocumented" : ""}`,
        size: LABEL,
        strong: true,
        tone: loud ? "loud" : "ink",
        toward: toward[0] === 0 && toward[1] === 0 ? [1, 0] : toward,
      };
    }),
  };
}

/** Fixed points, and the tapes from them to what they hold. */
function tiePart(file: PlanFile, { ties }: PlanFacts, { course, to }: Sheet): Drawn {
  const fixed = file.fixedPoints.flatMap((point) => {
    const spot = spotOf(point);
    return spot === null ? [] : [{ point, at: to(spot) }];
  });
  const tapes = file.ties.flatMap((tie, index) => {
    const finding = ties[index];
    const held =
      finding?.spot ?? (finding?.station == null ? null : spotAt(course, finding.station));
    if (held === null || finding?.state !== "closes") return [];
    return [
      [tie.fromId, tie.fromDistance] as const,
      [tie.otherId, tie.otherDistance] as const,
    ].flatMap(([id, length]) => {
      const from = fixed.find(({ point }) => point.id === id);
      return from === undefined ? [] : [{ from: from.at, held: to(held), length }];
    });
  });
  return {
    shapes: [
      ...tapes.map(
        ({ from, held }): Shape => ({
          kind: "line",
          points: [from, held],
          width: 0.5,
          tone: "soft",
          dash: true,
        }),
      ),
      ...ties.flatMap(({ spot }) => (spot === null ? [] : cross(to(spot), 3))),
      ...fixed.map(({ at }) => triangle(at, 4)),
    ],
    labels: [
      ...fixed.map(
        ({ point, at }): Label => ({ at, text: point.name, size: NAME, toward: [1, 0] }),
      ),
      ...tapes.map(
        ({ from, held, length }): Label => ({
          at: middleOf([from, held]),
          or: [0.35, 0.65, 0.25, 0.75].map((part) => between(from, held, part)),
          text: formatFeet(length),
          size: NAME,
          tone: "soft",
          toward: null,
        }),
      ),
    ],
  };
}

/** Boxes along the trunk that no words may cover. */
function trunkBoxes({ extent }: PlanFacts, { course, to }: Sheet) {
  const end = Math.max(extent, 1_000);
  const steps = Math.ceil(end / 100);
  return Array.from({ length: steps + 1 }, (_, step) => {
    const [x, y] = to(spotAt(course, Math.min(end, step * 100)));
    return { left: x - 2.5, right: x + 2.5, top: y - 2.5, bottom: y + 2.5 };
  });
}

/** Along the public main, where the line leaves it. */
function mainBoxes({ course, to }: Sheet) {
  const [one, other] = mainAcross(course).map(to);
  if (one === undefined || other === undefined) return [];
  return [0, 0.2, 0.4, 0.6, 0.8, 1].map((part) => {
    const [x, y] = between(one, other, part);
    return { left: x - 4, right: x + 4, top: y - 4, bottom: y + 4 };
  });
}

/** And along the stubs of branches. */
function stubBoxes({ tieIns }: PlanFacts, { course, to }: Sheet) {
  return tieIns.flatMap((finding) => {
    const [joint, end] = stubOf(course, finding).map(to);
    if (joint === undefined || end === undefined) return [];
    return [0.2, 0.4, 0.6, 0.8].map((part) => {
      const [x, y] = between(joint, end, part);
      return { left: x - 2, right: x + 2, top: y - 2, bottom: y + 2 };
    });
  });
}
