import type { Day } from "../calendar/day.ts";
import { dayOfRule, latestEventFor } from "../calendar/rule-day.ts";
import { laterBy } from "../calendar/time-of-day.ts";
import { consentTable } from "../consent/table.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import { servedBy } from "../line/served-by.ts";
import type { TestDay } from "./test-day.ts";

/** Who keeps water off, all day but for the dosing itself. */
interface WaterOff {
  readonly propertyId: string;
  readonly unitIds: readonly string[];
  /** Its flow passes a watched place; or it may, being a candidate. */
  readonly passes: "surely" | "perhaps";
}

/** Who has to let the crew in. */
interface LetIn {
  readonly propertyId: string;
  readonly partyIds: readonly string[];
  /** Consent to enter is in hand. */
  readonly consented: boolean;
  /** Last day on which notice of the entry may still be given; null where no rule says. */
  readonly noticeBy: Day | null;
  readonly citation: string;
}

export interface TestDayPeople {
  readonly waterOff: readonly WaterOff[];
  /** From the first dosing to the end of the last watch; empty without a stop. */
  readonly from: string;
  readonly to: string;
  readonly letIn: readonly LetIn[];
}

/**
 * Who has to keep water off on a test day, and who has to let the crew in. Water is kept off by
 * everybody whose flow passes the lowest watched place, and by every address that is dosed or may be
 * on the line, since theirs may come out of the watched branch.
 */
export function testDayPeople(file: LineFile, report: Report, day: TestDay): TestDayPeople {
  const last = day.stops.at(-1);
  return {
    waterOff: waterOffFor(file, report, day),
    from: day.stops[0]?.startsAt ?? "",
    to: last ? laterBy(last.startsAt, last.waitMinutes) : "",
    letIn: letInFor(file, report, day),
  };
}

function waterOffFor(file: LineFile, report: Report, { stops }: TestDay): WaterOff[] {
  const watched = new Set(stops.flatMap(({ tieInIds }) => tieInIds));
  const stations = report.tieIns
    .filter(({ tieIn }) => watched.has(tieIn.id))
    .map(({ station }) => station ?? 0);
  if (stations.length === 0) return [];
  const surely = new Set(servedBy(report.tieIns, Math.min(...stations)).properties);
  const perhaps = new Set(stops.map(({ propertyId }) => propertyId));
  return file.properties
    .filter(({ id, stake }) => surely.has(id) || perhaps.has(id) || stake === "candidate")
    .map(({ id }) => ({
      propertyId: id,
      unitIds: file.units.filter((unit) => unit.propertyId === id).map((unit) => unit.id),
      passes: surely.has(id) ? "surely" : "perhaps",
    }));
}

function letInFor(file: LineFile, report: Report, day: TestDay): LetIn[] {
  const table = consentTable(file, report);
  const notice = noticeFor(file, day.on);
  return [...new Set(day.stops.map(({ propertyId }) => propertyId))].map((propertyId) => {
    const roles = file.roles.filter((role) => role.propertyId === propertyId);
    const occupants = roles.filter(({ role }) => role === "occupant");
    const asked = occupants.length > 0 ? occupants : roles;
    return {
      propertyId,
      partyIds: [...new Set(asked.map(({ partyId }) => partyId))],
      consented: table.find((row) => row.propertyId === propertyId)?.cells.enter.inHand ?? false,
      ...notice,
    };
  });
}

/** The earliest of the days that the authority's rules on entry leave for the notice. */
function noticeFor({ authority }: LineFile, on: Day): Pick<LetIn, "noticeBy" | "citation"> {
  const holidays = authority?.holidays ?? [];
  const [first] = (authority?.clockRules ?? [])
    .filter(({ event }) => event === "tenant-entry")
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
