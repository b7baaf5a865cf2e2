import {
  EVERY_EXCAVATION,
  type SafetyRule,
  slopedTopWidth,
  trenchDepth,
  trenchNeeds,
} from "../capacity/trench.ts";
import type { Hold } from "../facts/hold.ts";
import type { Material } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem, ScopeKind } from "../facts/scope.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import type { Report } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { commonStretch, joinedStretches, type Stretch, sayWhere } from "../length/stretch.ts";
import { sayAny, sayList } from "../say/say-list.ts";
import { agreedScope, mustChooseOption, scopeInForce } from "../sharing/scope-in-force.ts";
import { type DeepestPlace, deepestBetween, notedDepths, safeDepth } from "../split/depth.ts";
import { isDug, kindsOf, stretchOf } from "../split/work-deeds.ts";
import { STOP_WORDS } from "../stops/stop-words.ts";
import { GASES, manholeRules, SEWAGE } from "./rules.ts";

/** What one hazard of the job asks for. Raised by the facts; nobody can take it off. */
export interface SafetyPart {
  readonly key: "trench" | "crossing" | "flow" | "manhole" | "gas" | "pipe" | "sewage";
  readonly title: string;
  /** What on file raises it; empty where it is there on every job. */
  readonly why: string;
  readonly rules: readonly SafetyRule[];
}

type SafetyFile = Pick<
  LineFile,
  "line" | "options" | "changeOrders" | "scope" | "points" | "levels"
>;
type Found = Pick<Report, "tieIns" | "reaches" | "extent" | "holds">;

/** Of a dig whose depth nobody noted: all that a trench asks for, short of an engineer. */
const UNKNOWN_DEPTH: Cft = 2000;

/** A bottom that people can work in. */
const BOTTOM: Cft = 300;

/** A crew reads every connection and every place: none is counted away as “others”. */
const ALL = Number.POSITIVE_INFINITY;

/**
 * What the crew keeps to, by the work in force: how deep is dug, what flows, whether there is a
 * manhole, what the pipe is made of. What is not known counts as there: no depth as deep, no work
 * priced as digging, an unknown pipe as one that may hold asbestos.
 */
export function crewSafety(file: SafetyFile, found: Found): SafetyPart[] {
  const items = mustChooseOption(file) ? agreedScope(file) : scopeInForce(file);
  const site = { options: file.options, tieIns: found.tieIns };
  const whole: Stretch = { from: 0, to: found.extent };
  const onPipe = items.filter((item) => opensPipe(item, file));
  const dug = items.filter((item) => item.place !== "general" && isDug(item, file));
  const places = (some: readonly ScopeItem[]) =>
    joinedStretches(some.map((item) => stretchOf(item, site) ?? whole));
  const unpriced = items.length === 0;
  const digs = unpriced ? [whole] : places(dug);
  const touched = unpriced ? [whole] : places(onPipe);
  return [
    ...(digs.length === 0 ? [] : [trenchPart(file, digs, unpriced)]),
    ...crossingPart(found, unpriced || items.some((item) => cutsInside(item, file))),
    ...(touched.length === 0 ? [] : [flowPart(found, touched)]),
    manholePart(file),
    { key: "gas", title: "Gas from sewage", why: "", rules: GASES },
    ...pipePart(found.reaches, touched),
    { key: "sewage", title: "Sewage on skin and in eyes", why: "", rules: SEWAGE },
  ];
}

/** Work that cuts, opens or enters the pipe; a camera, a fee or new turf does not. */
function opensPipe(item: ScopeItem, file: SafetyFile): boolean {
  if (item.place === "general") return false;
  return kindsOf(item, file).some(
    (kind) => !["test", "restore", "permit-fee", "other"].includes(kind),
  );
}

const CUTTING: readonly ScopeKind[] = ["clear", "line", "burst"];

/** Roots, a liner’s openings and a bursting head are all cut inside the pipe. */
function cutsInside(item: ScopeItem, file: SafetyFile): boolean {
  return kindsOf(item, file).some((kind) => CUTTING.includes(kind));
}

/**
 * A gas line that was bored through the pipe: each hold of it with what it stops, waived ones too, and
 * what comes before any cutting. No other hold stands here: theirs speak of neighbors, and the sheet
 * goes into a public record.
 */
function crossingPart({ holds }: Found, cuts: boolean): SafetyPart[] {
  const crossing = holds.filter(
    ({ cause }) => cause === "crossing-seen" || cause === "crossing-not-ruled-out",
  );
  if (crossing.length === 0 && !cuts) return [];
  return [
    {
      key: "crossing",
      title: "A gas line through the pipe",
      why: "",
      rules: [...crossing.map(crossingRule), BEFORE_CUTTING],
    },
  ];
}

function crossingRule({ key, sentence, stops, waiver }: Hold): SafetyRule {
  const stopped = sayAny(
    stops.map((stop) => STOP_WORDS[stop]),
    ALL,
  );
  const words =
    waiver === null
      ? `${sentence} Until the office clears it: no ${stopped} there.`
      : `${sentence} ${waiver.by} has allowed the work to go on: ask them why, and what the gas company said, before anything is cut.`;
  return { key, words, citation: "" };
}

const BEFORE_CUTTING: SafetyRule = {
  key: "before-cutting",
  words:
    "Before anything is cut inside the pipe: a camera on both sides of it, and a call to the gas company.",
  citation: "",
};

function trenchPart(file: SafetyFile, digs: readonly Stretch[], unpriced: boolean): SafetyPart {
  const noted = notedDepths(file);
  const deepest = digs
    .flatMap(({ from, to }) => deepestBetween(noted, from, to) ?? [])
    .reduce<DeepestPlace | null>(
      (most, each) => (most === null || safeDepth(each) > safeDepth(most) ? each : most),
      null,
    );
  const depth = deepest === null ? UNKNOWN_DEPTH : trenchDepth(safeDepth(deepest));
  return {
    key: "trench",
    title: "The trench",
    why: `${unpriced ? "No work is priced yet, so it is treated as digging. " : ""}${depthWords(deepest)}`,
    rules: [...EVERY_EXCAVATION, ...trenchNeeds(depth), ...slopeRule(deepest)],
  };
}

function depthWords(deepest: DeepestPlace | null): string {
  if (deepest === null)
    return "No depth is recorded at the dig, so it is treated as deep. Find the depth before digging.";
  const pipe = safeDepth(deepest);
  const lies = deepest.by === "noted" ? "is" : "is, going by the nearest recorded depths, about";
  return `Deepest dig: ${formatFeet(trenchDepth(pipe))} at ${formatFeet(deepest.station)} (the pipe ${lies} ${formatFeet(pipe)} deep there, and the trench half a foot deeper).`;
}

function slopeRule(deepest: DeepestPlace | null): SafetyRule[] {
  if (deepest === null) return [];
  const depth = trenchDepth(safeDepth(deepest));
  const width = slopedTopWidth({ depth, bottomWidth: BOTTOM });
  if (width === null || !trenchNeeds(depth).some(({ key }) => key === "protection")) return [];
  return [
    {
      key: "sloped",
      words: `Sloped, in soil that has not been classified: about ${Math.ceil(width / 100)} ft wide at the top for ${formatFeet(BOTTOM)} at the bottom. No room for that: shore or shield.`,
      citation: "29 CFR 1926.652(b)(1)(i)",
    },
  ];
}

function flowPart({ tieIns }: Found, touched: readonly Stretch[]): SafetyPart {
  const lowest = touched[0]?.from ?? 0;
  const above = tieIns.filter(
    ({ live, station, tieIn }) =>
      live && tieIn.parentId === null && (station === null || station >= lowest),
  );
  const count =
    above.length === 1 ? "1 active connection drains" : `${above.length} active connections drain`;
  return {
    key: "flow",
    title: "Water that people run",
    why:
      above.length === 0
        ? ""
        : `${count} to the open pipe: ${sayList(
            above.map(({ tieIn }) => tieIn.label),
            ALL,
          )}.`,
    rules: [
      {
        key: "bypass",
        words:
          "Hold back or pump around the flow before the pipe is opened. Someone watches the plug and the pump as long as anyone is below.",
        citation: "",
      },
      {
        key: "roll-call",
        words: "No one goes in until every household has been told and the foreman has the list.",
        citation: "",
      },
    ],
  };
}

function manholePart({ points }: SafetyFile): SafetyPart {
  const stations = points.filter(({ kind }) => kind === "manhole").map(({ station }) => station);
  return {
    key: "manhole",
    title: "Manholes",
    why:
      stations.length === 0
        ? "No manholes are entered on this line; the public main has some."
        : `There is a manhole at ${sayList(
            stations.map((station) => formatFeet(station)),
            ALL,
          )}.`,
    rules: manholeRules(stations.length > 0),
  };
}

const DUSTY: ReadonlySet<Material> = new Set(["vitrified-clay", "concrete"]);

/** Cutting old pipe: asbestos where it is known or not ruled out, dust where it is clay or concrete. */
function pipePart(reaches: readonly ReachFinding[], touched: readonly Stretch[]): SafetyPart[] {
  const cut = touched.flatMap((stretch) =>
    reaches.flatMap((reach) => {
      const common = commonStretch(reach, stretch);
      return common === null ? [] : [{ ...common, material: reach.material }];
    }),
  );
  const where = (is: (material: Material) => boolean) =>
    joinedStretches(cut.filter(({ material }) => is(material)));
  const asbestos = where((material) => material === "asbestos-cement");
  const unknown =
    touched.length > 0 && cut.length === 0
      ? [...touched]
      : where((material) => material === "unknown");
  const dusty = where((material) => DUSTY.has(material));
  const rules: SafetyRule[] = [
    ...(asbestos.length === 0 ? [] : [asbestosRule(asbestos)]),
    ...(unknown.length === 0 ? [] : [unknownRule(unknown)]),
    ...(dusty.length === 0 ? [] : [dustRule(dusty)]),
  ];
  return rules.length === 0 ? [] : [{ key: "pipe", title: "Cutting the old pipe", why: "", rules }];
}

function asbestosRule(stretches: readonly Stretch[]): SafetyRule {
  return {
    key: "asbestos",
    words: `Asbestos-cement pipe ${places(stretches)}: a competent person classes the work before it is cut. Keep it wet, snap it or cut it by hand, no dry power saw; bag every piece.`,
    citation: "29 CFR 1926.1101",
  };
}

function unknownRule(stretches: readonly Stretch[]): SafetyRule {
  return {
    key: "unknown-pipe",
    words: `The pipe material is unknown ${places(stretches)}: look before cutting. Gray cement pipe may hold asbestos: stop, and treat it as such.`,
    citation: "29 CFR 1926.1101",
  };
}

function dustRule(stretches: readonly Stretch[]): SafetyRule {
  return {
    key: "dust",
    words: `Clay or concrete pipe ${places(stretches)}: cut it wet. The dust harms the lungs.`,
    citation: "",
  };
}

function places(stretches: readonly Stretch[]): string {
  return sayList(
    stretches.map((stretch) => sayWhere(stretch)),
    ALL,
  );
}
