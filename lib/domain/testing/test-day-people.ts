import { dayOfRule, latestEventFor } from "../calendar/rule-day.ts";
import { consentTable } from "../consent/table.ts";
import type { ClockEvent } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import { COPY_ROLES } from "../facts/party.ts";
import type { TestDay } from "../facts/test-day.ts";
import type { Report } from "../findings/report.ts";
import { tenantsAt } from "../notices/audience.ts";
import type { Day } from "../time/day.ts";
import { stopsInForce } from "./test-day-results.ts";
import { spanOf, type TimeSpan, type WaterOff, waterOffFor } from "./water-off.ts";

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

/** The law's notice of entry is for tenants: an owner who lives there needs none. */
const NO_NOTICE: Pick<LetIn, "noticeBy" | "citation"> = { noticeBy: null, citation: "" };

/** Whoever lets the crew in. Where nobody says who lives there, it may be let, and a tenant's notice counts. */
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
      occupants.length > 0
        ? occupants
        : roles.filter(({ role }) => role !== "occupant" && !COPY_ROLES.includes(role));
    const own = new Set(asked.map(({ partyId }) => partyId));
    const isLet = tenantsAt(file, propertyId).some(({ partyId }) => own.has(partyId));
    return {
      propertyId,
      unitId,
      partyIds: [...own],
      consented: table.find((row) => row.propertyId === propertyId)?.cells.enter.inHand ?? false,
      ...(isLet || occupants.length === 0 ? notice : NO_NOTICE),
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
