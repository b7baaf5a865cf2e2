import { type EntryRefusal, entryRefused } from "../consent/entry-refused.ts";
import type { LinePoint } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { FloorDrain, TestDay, TestStop } from "../facts/test-day.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { streetOf } from "../party/stakeholders.ts";
import { candidatesFor } from "../tiein/candidates.ts";
import { isOwnerOpen } from "../tiein/open-question.ts";
import { formatDate } from "../time/format-day.ts";
import { timeOf } from "../time/time-of-day.ts";
import { dyeWait, LEAST_WAIT } from "./dye-wait.ts";

export const STOP_ORDERS = ["likeliest-first", "upstream-first"] as const;
export type StopOrder = (typeof STOP_ORDERS)[number];

interface DayAsked {
  readonly order: StopOrder;
  /** Minutes after midnight of the first dosing. */
  readonly startsAt: number;
}

export interface ProposedTestDay extends Pick<TestDay, "controlPropertyId" | "stops"> {
  /** Why it is planned so, a sentence each. */
  readonly reasons: readonly string[];
}

/** Green is seen best; red and blue are told from it in lamp light (common practice). */
export const DYE_COLORS = ["green", "red", "blue"] as const;

/**
 * How each address is dosed unless the office says otherwise: the lowest drain first and one on each
 * floor that there is, the dye as its maker says, and water after it. Common practice.
 */
export const USUAL_DOSING = {
  drains: [
    { floor: "basement", drain: "floor-drain" },
    { floor: "first-floor", drain: "toilet" },
    { floor: "upper-floor", drain: "toilet" },
  ] as readonly FloorDrain[],
  dose: "as the label says",
  flushGallons: 5,
  rinseMinutes: 10,
} as const;

/** Minutes to walk to the next address, and to move the camera to another place: common practice. */
const WALK = 5;
const MOVE_CAMERA = 15;

/** Tie-ins within this of each other are watched by a camera that lies still: common practice. */
export const VIEW: Cft = 500;

/** More addresses than this for one place do not fit a day. */
const MOST_ADDRESSES = 4;

/** The last watch ends by then: daylight and people's evening. */
const LATEST = 17 * 60;

const MORNING: DayAsked = { order: "likeliest-first", startsAt: 9 * 60 };

/** Undocumented branches whose owner is not shown yet: what a test day is for. */
export function tieInsToTest({ tieIns }: Pick<Report, "tieIns">): TieInFinding[] {
  return tieIns.filter(isOwnerOpen);
}

/**
 * Proposes a day of dye tests. One camera watches one place at a time: tie-ins within a view of each
 * other make one place, and places are taken in turn. At each place the first dosing shows what the
 * others can prove: a control address whose settled tie-in lies below, so that its dye does not color
 * the pipe before the camera; where there is none, the pipe itself, from an access above. Then up to
 * four candidates, each unit of a property by itself, none that refused entry. One dosing at a time,
 * each in another color than the two before, with time to rinse until the pipe is clear.
 */
export function proposeTestDay(
  file: LineFile,
  report: Report,
  asked: Partial<DayAsked> = {},
): ProposedTestDay {
  const { order, startsAt } = { ...MORNING, ...asked };
  const places = placesOf(file, report, order).filter(({ visits }) => visits.length > 0);
  const refused = places.flatMap((place) => place.refused);
  if (places.length === 0)
    return { controlPropertyId: null, stops: [], reasons: refusedWords(file, refused) };
  const control = controlFor(file, report, places);
  const planned = places.map((place) => ({
    ...place,
    opening: openingOf(file, { place, control }),
  }));
  const { stops, left } = inTurn(planned, startsAt);
  const waits = places.flatMap(({ open }) => open.map((each) => dyeWait(each, report).sentence));
  return {
    controlPropertyId: stops.some(({ propertyId }) => propertyId === control?.propertyId)
      ? (control?.propertyId ?? null)
      : null,
    stops,
    reasons: [
      ...planned.map((place) => openingWords(file, place)),
      ...(places.length > 1 ? [PLACES_WORDS] : []),
      ORDER_WORDS[order],
      ...refusedWords(file, refused),
      ...leftWords(file, left),
      ...callFirst(file, stops),
      ...waits,
      "Waits, doses and rinsing follow common practice, not this line; allow longer in slow pipe.",
    ],
  };
}

/** An address, or one unit of it, that is dosed. */
interface Visit {
  readonly propertyId: string;
  readonly unitId: string | null;
  readonly weight: number;
}

/** Where the camera lies, and whom to dose while it does. */
interface Place {
  readonly open: readonly TieInFinding[];
  /** Lowest station of what is watched; null: not measured. */
  readonly station: Cft | null;
  readonly visits: readonly Visit[];
  readonly refused: readonly (Visit & { readonly refusal: EntryRefusal })[];
  readonly waitMinutes: number;
}

/** What is dosed first at a place, to show what the dosings after it can prove. */
type Opening =
  | { readonly kind: "control"; readonly control: Control }
  | { readonly kind: "pipe"; readonly point: LinePoint }
  | null;

const ORDER_WORDS: Record<StopOrder, string> = {
  "likeliest-first": "The likeliest addresses come first: the day may end early.",
  "upstream-first": "The farthest upstream comes first.",
};

const PLACES_WORDS =
  "One camera watches one place at a time: it moves on once every address for a place has been tested.";

function placesOf(file: LineFile, report: Report, order: StopOrder): Place[] {
  const places = clusters(tieInsToTest(report)).map((open) => placeOf(file, report, open));
  const upstream = (one: Place, other: Place) => (other.station ?? -1) - (one.station ?? -1);
  const best = ({ visits }: Place) => Math.max(0, ...visits.map(({ weight }) => weight));
  const likeliest = (one: Place, other: Place) =>
    best(other) - best(one) || (one.station ?? 0) - (other.station ?? 0);
  return places.toSorted(order === "upstream-first" ? upstream : likeliest);
}

/** Tie-ins that a camera sees without being moved; one without a station stands alone. */
function clusters(open: readonly TieInFinding[]): TieInFinding[][] {
  const placed = open
    .filter(({ station }) => station !== null)
    .toSorted((one, other) => (one.station ?? 0) - (other.station ?? 0));
  const groups: TieInFinding[][] = [];
  for (const finding of placed) {
    const last = groups.at(-1);
    const from = last?.[0]?.station ?? null;
    if (last && from !== null && (finding.station ?? 0) - from <= VIEW) last.push(finding);
    else groups.push([finding]);
  }
  return [...groups, ...open.filter(({ station }) => station === null).map((each) => [each])];
}

function placeOf(file: LineFile, report: Report, open: readonly TieInFinding[]): Place {
  const weights = new Map<string, number>();
  for (const finding of open)
    for (const { propertyId, weight } of candidatesFor(file, report, finding)
      .filter((each) => each.weight > 0)
      .slice(0, MOST_ADDRESSES))
      weights.set(propertyId, Math.max(weight, weights.get(propertyId) ?? 0));
  const visits = [...weights]
    .toSorted(([, one], [, other]) => other - one)
    .flatMap(([propertyId, weight]) =>
      unitsOf(file, propertyId).map((unitId) => ({ propertyId, unitId, weight })),
    )
    .map((visit) => ({ ...visit, refusal: entryRefused(file, visit) }));
  return {
    open,
    station: open[0]?.station ?? null,
    visits: visits.filter(({ refusal }) => refusal === null),
    refused: visits.flatMap((visit) =>
      visit.refusal === null ? [] : [{ ...visit, refusal: visit.refusal }],
    ),
    waitMinutes: Math.max(LEAST_WAIT, ...open.map((each) => dyeWait(each, report).minutes)),
  };
}

/** Each unit of a property with several; the property itself otherwise. */
function unitsOf({ units }: LineFile, propertyId: string): (string | null)[] {
  const own = units.filter((unit) => unit.propertyId === propertyId);
  return own.length > 1 ? own.map(({ id }) => id) : [null];
}

/** An address whose tie-in is settled, to be dosed against the others. */
interface Control {
  readonly finding: TieInFinding;
  readonly propertyId: string;
  readonly unitId: string | null;
  readonly station: Cft;
}

/**
 * The settled tie-in nearest below the lowest place that has one below; of those as good, somebody
 * whose household needs no call first. It serves every place above it.
 */
function controlFor(file: LineFile, report: Report, places: readonly Place[]): Control | null {
  const tested = new Set(
    places.flatMap(({ visits, refused }) =>
      [...visits, ...refused].map(({ propertyId }) => propertyId),
    ),
  );
  const settled = report.tieIns.flatMap((finding): Control[] => {
    const { standing, live, decided, propertyId, station } = finding;
    if (!live || !decided || propertyId === null || station === null) return [];
    if (standing === "undocumented" || tested.has(propertyId)) return [];
    const unitId = unitsOf(file, propertyId).find(
      (each) => entryRefused(file, { propertyId, unitId: each }) === null,
    );
    return unitId === undefined ? [] : [{ finding, propertyId, unitId, station }];
  });
  const stations = places
    .flatMap(({ station }) => station ?? [])
    .toSorted((one, other) => one - other);
  for (const place of stations) {
    const [best] = settled
      .filter(({ station }) => station < place)
      .toSorted(
        (one, other) =>
          needsAt(file, one).length - needsAt(file, other).length || other.station - one.station,
      );
    if (best !== undefined) return best;
  }
  return null;
}

function openingOf(
  { points }: LineFile,
  { place, control }: { readonly place: Place; readonly control: Control | null },
): Opening {
  const { station } = place;
  if (station === null) return null;
  if (control !== null && control.station < station) return { kind: "control", control };
  const [point] = points
    .filter(({ kind }) => kind === "cleanout" || kind === "manhole")
    .filter((each) => each.station > station)
    .toSorted((one, other) => one.station - other.station);
  return point === undefined ? null : { kind: "pipe", point };
}

function openingWords(
  file: LineFile,
  { open, opening }: Place & { readonly opening: Opening },
): string {
  const labels = open.map(({ tieIn }) => tieIn.label).join(" and ");
  if (opening?.kind === "control") {
    const { finding, propertyId, station } = opening.control;
    return `Control for ${labels}: ${nameOf(file, propertyId)}, whose tie-in ${finding.tieIn.label} at ${formatFeet(station)} is settled and lies below. Its dye should not show at ${labels}.`;
  }
  const none = `No address below ${labels} has a confirmed tie-in to serve as a control; dye from upstream would color the pipe before the camera.`;
  if (opening?.kind === "pipe")
    return `${none} So dye goes into the pipe itself first, at the ${opening.point.kind} at ${formatFeet(opening.point.station)}, to see that it passes the camera. That is not a control: evidence stays below level 5.`;
  return `${none} No upstream cleanout is on file to dye the pipe itself. Without a control, evidence stays below level 5.`;
}

function nameOf({ properties }: LineFile, propertyId: string): string {
  const property = properties.find(({ id }) => id === propertyId);
  return property ? streetOf(property.address) : "an address";
}

function visitName(file: LineFile, { propertyId, unitId }: Omit<Visit, "weight">): string {
  const unit = file.units.find(({ id }) => id === unitId)?.name ?? "";
  return unit === "" ? nameOf(file, propertyId) : `${nameOf(file, propertyId)}, ${unit}`;
}

function refusedWords(file: LineFile, refused: Place["refused"]): string[] {
  const words = refused.map(
    (visit) =>
      `${visitName(file, visit)} refused entry on ${formatDate(visit.refusal.on)} and is left out.`,
  );
  return [...new Set(words)];
}

function leftWords(file: LineFile, left: readonly Visit[]): string[] {
  if (left.length === 0) return [];
  const names = [...new Set(left.map((visit) => visitName(file, visit)))];
  return [`For another day: ${names.join(", ")}. The last watch ends by 5 pm.`];
}

/** Households that need water or care, at the addresses that are dosed. */
function callFirst(file: LineFile, stops: readonly TestStop[]): string[] {
  const places = [...new Set(stops.flatMap(({ propertyId }) => propertyId ?? []))];
  return places.flatMap((propertyId) =>
    needsAt(file, { propertyId, unitId: null }).map(
      ({ name, needs }) => `Call first: ${name} at ${nameOf(file, propertyId)} (${needs}).`,
    ),
  );
}

/** Who lives or works there and has a need on file; of one unit where one is named. */
function needsAt(
  { roles, parties }: LineFile,
  { propertyId, unitId }: { readonly propertyId: string; readonly unitId: string | null },
): { readonly name: string; readonly needs: string }[] {
  return roles
    .filter((role) => role.propertyId === propertyId && role.role === "occupant")
    .filter((role) => unitId === null || role.unitId === null || role.unitId === unitId)
    .flatMap((role) => parties.find(({ id }) => id === role.partyId) ?? [])
    .filter(({ needs }) => needs.trim() !== "");
}

/** What a place is dosed with, one after another, and who does not fit the day any more. */
function inTurn(
  places: readonly (Place & { readonly opening: Opening })[],
  startsAt: number,
): { stops: TestStop[]; left: Visit[] } {
  const stops: TestStop[] = [];
  const left: Visit[] = [];
  let at = startsAt;
  for (const [turn, place] of places.entries()) {
    if (turn > 0) at += MOVE_CAMERA;
    for (const dosing of dosingsAt(place)) {
      if (at + place.waitMinutes > LATEST) {
        if (dosing.visit !== null) left.push(dosing.visit);
        continue;
      }
      stops.push({
        ...dosing.stop,
        tieInIds: place.open.map(({ tieIn }) => tieIn.id),
        colour: DYE_COLORS[stops.length % DYE_COLORS.length] ?? DYE_COLORS[0],
        startsAt: timeOf(at),
        waitMinutes: place.waitMinutes,
      });
      at += place.waitMinutes + USUAL_DOSING.rinseMinutes + WALK;
    }
  }
  return { stops, left };
}

function placeOfControl({ propertyId, unitId }: Control): Pick<TestStop, "propertyId" | "unitId"> {
  return { propertyId, unitId };
}

type Dosed = Omit<TestStop, "tieInIds" | "colour" | "startsAt" | "waitMinutes">;

function dosingsAt({
  opening,
  visits,
}: Place & { readonly opening: Opening }): { stop: Dosed; visit: Visit | null }[] {
  const at = (place: Pick<TestStop, "propertyId" | "unitId" | "pointId">): Dosed => ({
    ...place,
    drains: place.propertyId === null ? [] : USUAL_DOSING.drains,
    fixture: "",
    dose: USUAL_DOSING.dose,
    flushGallons: USUAL_DOSING.flushGallons,
    rinseMinutes: USUAL_DOSING.rinseMinutes,
    passed: null,
  });
  const first =
    opening === null
      ? []
      : [
          {
            stop:
              opening.kind === "pipe"
                ? at({ propertyId: null, unitId: null, pointId: opening.point.id })
                : at({ ...placeOfControl(opening.control), pointId: null }),
            visit: null,
          },
        ];
  return [
    ...first,
    ...visits.map((visit) => ({
      stop: at({ propertyId: visit.propertyId, unitId: visit.unitId, pointId: null }),
      visit,
    })),
  ];
}
