import type { HoldStop, RaisedHold } from "../facts/hold.ts";
import type { CallPurpose } from "../facts/household-call.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { drainPlaces } from "../notices/audience.ts";
import { type HouseholdNeed, hasAgreed, householdNeeds } from "../party/household-needs.ts";
import { streetOf } from "../party/stakeholders.ts";
import { placesOfDay } from "../testing/water-off.ts";
import type { Day } from "../time/day.ts";

type NeedFile = Pick<
  LineFile,
  | "properties"
  | "units"
  | "parties"
  | "roles"
  | "householdCalls"
  | "tieIns"
  | "entries"
  | "events"
  | "testDays"
>;
type NeedFacts = Pick<Report, "tieIns" | "today">;

/** What is stopped until the household was called about it. */
const STOPS: Record<CallPurpose, HoldStop> = {
  "drain-pause": "pause",
  "test-visit": "test-visit",
};

/**
 * Households that cannot simply be without drains: no pause and no test visit there before somebody
 * called and they agreed, for each day that is planned, or for a day to come while none is. The need
 * itself is not in the sentence: it is for the crew, not for whoever reads a list of holds.
 */
export function needCauses(file: NeedFile, facts: NeedFacts): RaisedHold[] {
  const onPipe = new Set(drainPlaces(file));
  return householdNeeds(file).flatMap((need) => {
    const days = daysPlanned(file, facts, need);
    const isThere = onPipe.has(need.propertyId) || days["test-visit"].length > 0;
    const open = (["drain-pause", "test-visit"] as const).filter(
      (purpose) => !isSettled(file, need, { purpose, days: days[purpose], today: facts.today }),
    );
    if (!isThere || open.length === 0) return [];
    const { party, propertyId } = need;
    const property = file.properties.find(({ id }) => id === propertyId);
    const place = property === undefined ? "" : ` at ${streetOf(property.address)}`;
    return [
      {
        cause: "household-need" as const,
        subjectId: `${party.id}:${propertyId}`,
        subjectLabel: party.name,
        stretch: null,
        stops: open.map((purpose) => STOPS[purpose]),
        sentence: `${party.name}${place} has a need on file: call first, and agree on the day.`,
        closes: "Call them and agree on the day; record it under “Who is on it?”, “Call first”",
      },
    ];
  });
}

function daysPlanned(
  file: NeedFile,
  facts: NeedFacts,
  { propertyId }: HouseholdNeed,
): Record<CallPurpose, Day[]> {
  const { today } = facts;
  return {
    "drain-pause": file.events
      .filter(({ event, on }) => event === "drains-paused" && on >= today)
      .map(({ on }) => on),
    "test-visit": file.testDays
      .filter((day) => day.on >= today && placesOfDay(file, facts, day).includes(propertyId))
      .map(({ on }) => on),
  };
}

function isSettled(
  file: NeedFile,
  need: HouseholdNeed,
  asked: { readonly purpose: CallPurpose; readonly days: readonly Day[]; readonly today: Day },
): boolean {
  const { purpose, days, today } = asked;
  if (days.length > 0) return days.every((day) => hasAgreed(file, need, { purpose, day }));
  return file.householdCalls.some(
    (call) =>
      call.purpose === purpose &&
      call.forDay >= today &&
      hasAgreed(file, need, { purpose, day: call.forDay }),
  );
}
