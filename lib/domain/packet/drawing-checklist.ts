import type { DrawingMark } from "../facts/application.ts";
import type { Authority } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { DrawingItem, DrawingItemKind } from "../facts/permit-rule.ts";
import type { ShapeKind } from "../facts/plan.ts";
import type { Report } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { heading, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { courseOf } from "../plan/course.ts";
import { sayList } from "../say/say-list.ts";
import { notedDepths } from "../split/depth.ts";
import { planTiling } from "../strip/draw-plan.ts";
import { allowedScales, MOST_SHEETS, PLAN_FRAME, scaleWords } from "../strip/plan-scale.ts";

/** One item of the authority’s drawing checklist, and whether the drawing shows it. */
export interface DrawingCheck {
  readonly item: DrawingItem;
  readonly state: "shown" | "missing" | "does-not-apply";
  /** Who says so. */
  readonly by: "program" | "person" | "nobody";
  readonly sentence: string;
}

export const DRAWING_WORDS: Readonly<Record<DrawingItemKind, string>> = {
  "north-arrow": "north arrow",
  scale: "scale",
  streets: "streets",
  "lot-lines": "lot lines",
  buildings: "buildings",
  easements: "easements",
  ties: "ties from fixed points",
  inverts: "inverts",
  depths: "depths",
  cleanouts: "cleanouts",
  "pipe-size-and-material": "pipe size and material",
  connections: "connections with stations",
  "flow-direction": "direction of flow (by a person)",
  other: "other (by a person)",
};

interface Drawn {
  readonly file: LineFile;
  readonly report: Report;
}

/** What the program finds on its own drawing. */
interface Found {
  readonly shown: boolean;
  readonly words: string;
}

/** What the authority looks for on the drawing: its list, and the scale where it allows only some. */
export function drawingItemsOf(authority: Authority | null): readonly DrawingItem[] {
  const { drawingItems = [], scales = [] } = authority ?? {};
  const [scale] = scales;
  if (scale === undefined || drawingItems.some(({ item }) => item === "scale")) return drawingItems;
  const { authorityId, citation, asOf } = scale;
  return [
    ...drawingItems,
    { id: "allowed-scale", item: "scale", title: "Scale", authorityId, citation, asOf },
  ];
}

/** What is shown on the drawing, item by item; where the program can’t tell, a person says so by name. */
export function drawingChecklist(drawn: Drawn): DrawingCheck[] {
  return drawingItemsOf(drawn.file.authority).map((item) => {
    const mark = drawn.file.drawingMarks.findLast(({ itemId }) => itemId === item.id);
    const found = FINDS[item.item]?.(drawn) ?? null;
    if (found?.shown === true) return byProgram(item, found.words);
    if (mark !== undefined && mark.state !== "not-shown") return byPerson(item, mark);
    const words = found?.words ?? "A person has to look at the drawing and say so.";
    const said = mark === undefined ? "" : ` ${markWords(mark)}`;
    return { item, state: "missing", by: "nobody", sentence: `${words}${said}` };
  });
}

function byProgram(item: DrawingItem, sentence: string): DrawingCheck {
  return { item, state: "shown", by: "program", sentence };
}

function byPerson(item: DrawingItem, mark: DrawingMark): DrawingCheck {
  const state = mark.state === "shown" ? "shown" : "does-not-apply";
  return { item, state, by: "person", sentence: markWords(mark) };
}

const STATE_WORDS = {
  shown: "Shown",
  "not-shown": "Not shown",
  "does-not-apply": "Does not apply",
} as const;

/** `Shown, per Dana Okafor, November 25, 2026: on the attached survey.` */
function markWords({ state, by, on, note }: DrawingMark): string {
  const words = `${STATE_WORDS[state]}, per ${by}, ${EN.day(on)}`;
  return note.trim() === "" ? `${words}.` : `${words}: ${note.trim().replace(/[.]$/, "")}.`;
}

function given(shown: boolean, yes: string, no: string): Found {
  return { shown, words: shown ? yes : no };
}

const NO_PLAN = "There is no plan view: the line’s bearing is not entered.";

/** Only what the plan view draws; without a bearing there is none. */
function onPlan({ file }: Drawn, found: Found): Found {
  return courseOf(file) === null ? { shown: false, words: NO_PLAN } : found;
}

function shapes(kind: ShapeKind, words: string) {
  return (drawn: Drawn): Found =>
    onPlan(
      drawn,
      given(
        drawn.file.planShapes.some((shape) => shape.kind === kind),
        `The plan view shows ${words}.`,
        `No ${words} are drawn on the plan view.`,
      ),
    );
}

/** Along the pipe every scale can be kept, sheet after sheet; in plan what it takes may be too much. */
function scaleFound({ file, report }: Drawn): Found {
  if (file.line.upperEnd === null)
    return { shown: false, words: "The upper end of the line is not entered." };
  const allowed = allowedScales(file.authority);
  if (allowed.length === 0) return { shown: true, words: "The drawing is to scale." };
  const plan = planTiling(file, report, { frame: PLAN_FRAME, allowed });
  const asked = `The authority allows ${scaleWords(allowed)}`;
  return given(
    plan === null || plan.isAllowed,
    plan === null
      ? `${asked}; the drawing keeps to that.`
      : `${asked}; the plan view is drawn at 1 in = ${plan.feetPerInch} ft.`,
    `${asked}, and the plan view would take more than ${MOST_SHEETS} sheets at that. It is drawn at 1 in = ${plan?.feetPerInch} ft, which is not allowed.`,
  );
}

const FINDS: Partial<Record<DrawingItemKind, (drawn: Drawn) => Found>> = {
  "north-arrow": ({ file }) =>
    given(courseOf(file) !== null, "The plan view is drawn north up, with an arrow.", NO_PLAN),
  scale: scaleFound,
  streets: shapes("street-edge", "street edges"),
  "lot-lines": shapes("lot-line", "lot lines"),
  buildings: shapes("building", "buildings"),
  easements: shapes("easement", "easements"),
  ties: ({ report }) => {
    const good = report.ties.filter(({ spot }) => spot !== null).length;
    return given(
      report.ties.length > 0 && good === report.ties.length,
      "Points are tied to fixed points, and every tie closes.",
      report.ties.length === 0
        ? "No point is tied to fixed points."
        : "A tie does not close or its side is not entered.",
    );
  },
  inverts: ({ file }) =>
    given(
      file.levels.filter(({ invert }) => invert !== null).length > 1,
      "Inverts are on file for more than one station.",
      "Inverts are not on file for two stations.",
    ),
  depths: ({ file }) =>
    given(notedDepths(file).length > 0, "Depths are noted.", "No depth is noted."),
  cleanouts: ({ file, report }) =>
    given(
      file.points.some(({ kind }) => kind === "cleanout") ||
        file.tieIns.some(({ kind }) => kind === "cleanout-riser"),
      "Cleanouts are drawn where they are.",
      noCleanoutWords(file, report),
    ),
  "pipe-size-and-material": ({ file }) =>
    given(
      file.line.material !== "unknown" && file.line.diameter !== null,
      "Size and material at the main are on the drawing.",
      "The pipe’s size or material is not entered.",
    ),
  connections: ({ report }) =>
    given(
      report.tieIns.length > 0 && report.tieIns.every(({ station }) => station !== null),
      "Every tie-in is drawn with its station.",
      report.tieIns.length === 0
        ? "No tie-in was seen yet."
        : "A tie-in has no station: its run is relative only.",
    ),
};

/** What stops the drawing from being whole, in sentences; empty: nothing. */
export function drawingWants(drawn: Drawn): string[] {
  return drawingChecklist(drawn)
    .filter(({ state }) => state === "missing")
    .map(({ item, sentence }) => `${item.title}: ${sentence}`);
}

/**
 * What the authority looks for on the drawing: what the drawing shows by itself in one row, what a person
 * said or nobody knows in words.
 */
export function shownBlocks(drawn: Drawn): LetterBlock[] {
  const checks = drawingChecklist(drawn);
  if (checks.length === 0) return [];
  const titled = (state: DrawingCheck["state"]) =>
    checks
      .filter((check) => check.state === state)
      .map(({ item, by, sentence }) =>
        by === "program" ? item.title : `${item.title} (${sentence.replace(/[.]$/, "")})`,
      );
  const rows = (["shown", "missing", "does-not-apply"] as const)
    .map((state) => [SHOWN_WORDS[state], titled(state).join("; ")])
    .filter(([, items]) => items !== "");
  return [heading("Drawing checklist"), ...table(["", ""], rows)];
}

const SHOWN_WORDS = { shown: "Shown", missing: "MISSING", "does-not-apply": "Not applicable" };

/** What a log has seen is on no drawing until it stands among the landmarks. */
function noCleanoutWords({ observations }: LineFile, { stations }: Report): string {
  const seen = stations.flatMap(({ observationId, station }) => {
    const observation = observations.find(({ id }) => id === observationId);
    return observation?.kind === "cleanout" && station !== null ? [formatFeet(station)] : [];
  });
  if (seen.length === 0) return "No cleanout is entered. If there is none, say so.";
  return `No cleanout is entered, but the camera saw one at ${sayList(seen)}: enter it as a landmark.`;
}
