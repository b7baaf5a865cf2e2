import type { ClockEvent } from "../calendar/clock-rule.ts";
import type { Day } from "../calendar/day.ts";
import { dayOfRule, latestEventFor } from "../calendar/rule-day.ts";
import { laterBy } from "../calendar/time-of-day.ts";
import { consentTable } from "../consent/table.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import { servedBy } from "../line/served-by.ts";
import type { TestDay, TestStop } from "./test-day.ts";
import { stopsInForce } from "./test-day-results.ts";

/** From the first dosing to the end of the last watch, as `09:00` and `10:15`. */
export interface TimeSpan {
  readonly from: string;
  readonly to: string;
}

/** Who keeps water off, but for the dosing itself, and when. */
interface WaterOff {
  readonly propertyId: string;
  readonly unitIds: readonly string[];
  /** Its flow passes a watched place; or it may, being a candidate. */
  readonly passes: "surely" | "perhaps";
  /** While the places are watched that its flow passes, one span for each. */
  readonly spans: readonly TimeSpan[];
}

/** Who has to let the crew in. */
interface LetIn {
  readonly propertyId: string;
  /** Null: the property itself. */
  readonly unitId: string | null;
  readonly partyIds: readonly string[];
  /** Consent to enter is in hand. */
  readonly consented: boolean;
  /** Last day on which notice of the entry may still be given; null where no rule says. */
  readonly noticeBy: Day | null;
  readonly citation: string;
}

export interface TestDayPeople extends TimeSpan {
  readonly waterOff: readonly WaterOff[];
  readonly letIn: readonly LetIn[];
}

/**
 * Who has to keep water off on a test day, and who has to let the crew in. Water is kept off by those
 * whose flow passes the place where the camera lies, and by those whose flow may: the addresses that
 * are dosed there for the branch, and others that may be on the line. Only while that place is
 * watched. Whoever joins below disturbs nothing, the control among them.
 */
export function testDayPeople(file: LineFile, report: Report, day: TestDay): TestDayPeople {
  const stops = stopsInForce(file, day);
  return {
    waterOff: waterOffFor(file, report, { ...day, stops }),
    ...spanOf(stops),
    letIn: letInFor(file, report, { ...day, stops }),
  };
}

/** Of stops in the order of their times; empty without a stop. */
function spanOf(stops: readonly TestStop[]): TimeSpan {
  const ends = stops.map(({ startsAt, waitMinutes }) => laterBy(startsAt, waitMinutes));
  return { from: stops[0]?.startsAt ?? "", to: ends.toSorted().at(-1) ?? "" };
}

/** Stops that follow each other while the camera lies at one place. */
function placesOf(stops: readonly TestStop[]): (readonly TestStop[])[] {
  const places: TestStop[][] = [];
  for (const stop of stops) {
    const last = places.at(-1);
    const same = last?.[0]?.tieInIds.toSorted().join(" ") === stop.tieInIds.toSorted().join(" ");
    if (last && same) last.push(stop);
    else places.push([stop]);
  }
  return places;
}

function waterOffFor(file: LineFile, report: Report, day: TestDay): WaterOff[] {
  const places = placesOf(day.stops).map((stops) => ({
    span: spanOf(stops),
    ...whosePasses(file, report, { ...day, stops }),
  }));
  return file.properties.flatMap(({ id }): WaterOff[] => {
    const own = places.filter(({ surely, perhaps }) => surely.has(id) || perhaps.has(id));
    if (own.length === 0) return [];
    return [
      {
        propertyId: id,
        unitIds: file.units.filter((unit) => unit.propertyId === id).map((unit) => unit.id),
        passes: own.some(({ surely }) => surely.has(id)) ? "surely" : "perhaps",
        spans: own.map(({ span }) => span),
      },
    ];
  });
}

/** Whose flow passes one watched place, and whose may. A place that is not measured is passed by all. */
function whosePasses(
  { properties }: LineFile,
  { tieIns }: Report,
  { stops, controlPropertyId }: TestDay,
): { surely: ReadonlySet<string>; perhaps: ReadonlySet<string> } {
  const watched = new Set(stops.flatMap(({ tieInIds }) => tieInIds));
  const stations = tieIns
    .filter(({ tieIn }) => watched.has(tieIn.id))
    .map(({ station }) => station ?? 0);
  const dosed = stops.flatMap(({ propertyId }) => propertyId ?? []);
  const unplaced = properties.filter(({ stake }) => stake === "candidate").map(({ id }) => id);
  return {
    surely: new Set(servedBy(tieIns, stations.length === 0 ? 0 : Math.min(...stations)).properties),
    perhaps: new Set([...dosed, ...unplaced].filter((id) => id !== controlPropertyId)),
  };
}

function letInFor(file: LineFile, report: Report, day: TestDay): LetIn[] {
  const table = consentTable(file, report);
  const notice = noticeFor(file, day.on, "tenant-entry");
  const doors = new Map<string, Pick<LetIn, "propertyId" | "unitId">>();
  for (const { propertyId, unitId } of day.stops)
    if (propertyId !== null) doors.set(`${propertyId} ${unitId ?? ""}`, { propertyId, unitId });
  return [...doors.values()].map(({ propertyId, unitId }) => {
    const roles = file.roles.filter((role) => role.propertyId === propertyId);
    const occupants = roles.filter(
      ({ role, unitId: own }) =>
        role === "occupant" && (unitId === null || own === null || own === unitId),
    );
    const asked =
      occupants.length > 0 ? occupants : roles.filter(({ role }) => role !== "occupant");
    return {
      propertyId,
      unitId,
      partyIds: [...new Set(asked.map(({ partyId }) => partyId))],
      consented: table.find((row) => row.propertyId === propertyId)?.cells.enter.inHand ?? false,
      ...notice,
    };
  });
}

/** The earliest of the days that the authority's rules on such an event leave for the notice. */
function noticeFor(
  { authority }: LineFile,
  on: Day,
  about: ClockEvent,
): Pick<LetIn, "noticeBy" | "citation"> {
  const holidays = authority?.holidays ?? [];
  const [first] = (authority?.clockRules ?? [])
    .filter(({ event }) => event === about)
    .flatMap((rule) => {
      const by =
        rule.way === "before"
          ? dayOfRule(rule, on, holidays, { mailed: false }).on
          : latestEventFor(rule, on, holidays);
      return by === null ? [] : [{ noticeBy: by, citation: rule.citation }];
    })
    .toSorted((one, other) => one.noticeBy.localeCompare(other.noticeBy));
  return first ?? { noticeBy: null, citation: "" };
}

/** Whether whoever runs the sewer and the plant was told of the dye. */
interface PlantNotice {
  /** The authority's rules ask for it; false: no rule on file says. */
  readonly asked: boolean;
  readonly by: Day | null;
  readonly citation: string;
  readonly toldOn: Day | null;
}

/**
 * Dye shows at the treatment plant: whether the authority's data ask to be told beforehand and by
 * when, and whether it was. Where no rule is on file, a person has to ask.
 */
export function plantNotice(file: LineFile, day: TestDay): PlantNotice {
  const asked = file.authority?.clockRules.some(({ event }) => event === "dye-test") ?? false;
  const { noticeBy, citation } = noticeFor(file, day.on, "dye-test");
  return { asked, by: noticeBy, citation, toldOn: day.plantToldOn };
}
