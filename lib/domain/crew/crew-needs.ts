import type { LineFile } from "../facts/line-file.ts";
import { drainPlaces } from "../notices/audience.ts";
import { type HouseholdNeed, hasAgreed, householdNeeds } from "../party/household-needs.ts";
import type { Day } from "../time/day.ts";

/** A household that cannot simply be without drains, and what was agreed for the day. */
export interface CrewNeed extends HouseholdNeed {
  /** What was agreed, in their words; null: nobody has agreed to this day. */
  readonly agreed: string | null;
}

type NeedFile = Parameters<typeof drainPlaces>[0] &
  Pick<LineFile, "householdCalls" | "parties" | "roles">;

/** The households with a need whose drains are on the line, with what they agreed to for a day. */
export function needsOnDay(file: NeedFile, on: Day): CrewNeed[] {
  const places = new Set(drainPlaces(file));
  const asked = { purpose: "drain-pause", day: on } as const;
  return householdNeeds(file)
    .filter(({ propertyId }) => places.has(propertyId))
    .map((need) => ({
      ...need,
      agreed: hasAgreed(file, need, asked) ? wordsOf(file, need, on) : null,
    }));
}

function wordsOf(
  { householdCalls }: NeedFile,
  { party, propertyId }: HouseholdNeed,
  on: Day,
): string {
  const last = householdCalls.findLast(
    (call) =>
      call.partyId === party.id &&
      call.propertyId === propertyId &&
      call.purpose === "drain-pause" &&
      call.forDay === on,
  );
  return last?.words ?? "";
}
