import type { CallPurpose, HouseholdCall } from "../facts/household-call.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Party } from "../facts/party.ts";
import type { Day } from "../time/day.ts";

/** Somebody who cannot simply be without drains, at the place where they live or work. */
export interface HouseholdNeed {
  readonly party: Party;
  readonly propertyId: string;
}

type Households = Pick<LineFile, "parties" | "roles" | "householdCalls">;

/**
 * Everybody with a need on file, at each place that they occupy; at each of their places where the
 * file does not say that they occupy one.
 */
export function householdNeeds({
  parties,
  roles,
}: Pick<Households, "parties" | "roles">): HouseholdNeed[] {
  return parties.flatMap((party) => {
    if (party.needs.trim() === "") return [];
    const own = roles.filter(({ partyId }) => partyId === party.id);
    const lived = own.filter(({ role }) => role === "occupant");
    const places = (lived.length > 0 ? lived : own).map(({ propertyId }) => propertyId);
    return [...new Set(places)].map((propertyId) => ({ party, propertyId }));
  });
}

/** What a call has to be about: its purpose and its day. */
export interface CallAsked {
  readonly purpose: CallPurpose;
  readonly day: Day;
}

/**
 * Whether a household agreed to something on a day: its latest call about that very thing and day
 * ended in agreement, under the need as it is on file now.
 */
export function hasAgreed(file: Households, need: HouseholdNeed, asked: CallAsked): boolean {
  const last = callsAbout(file, need, asked).at(-1);
  return last?.outcome === "agreed" && last.needs === need.party.needs;
}

/** The calls to a household about one thing on one day, the latest last. */
function callsAbout(
  { householdCalls }: Pick<Households, "householdCalls">,
  { party, propertyId }: HouseholdNeed,
  { purpose, day }: CallAsked,
): HouseholdCall[] {
  return householdCalls
    .filter(
      (call) =>
        call.partyId === party.id &&
        call.propertyId === propertyId &&
        call.purpose === purpose &&
        call.forDay === day,
    )
    .toSorted((one, other) => one.calledOn.localeCompare(other.calledOn));
}

/** Households at these places that have not agreed to something on a day; without a day, none has. */
export function needsUnasked(
  file: Households,
  asked: { readonly purpose: CallPurpose; readonly day: Day | null },
  places: readonly string[],
): HouseholdNeed[] {
  const { purpose, day } = asked;
  return householdNeeds(file).filter(
    (need) =>
      places.includes(need.propertyId) &&
      (day === null || !hasAgreed(file, need, { purpose, day })),
  );
}
