import type { LineFile } from "../facts/line-file.ts";
import type { Party } from "../facts/party.ts";
import { COPY_ROLES } from "../facts/party.ts";
import type { DatedEvent } from "../facts/permit.ts";
import type { RollCallMatter, RollCallWord } from "../facts/roll-call.ts";
import type { Report } from "../findings/report.ts";
import { hasAgreed, householdNeeds } from "../party/household-needs.ts";
import type { Day } from "../time/day.ts";
import { type MustStop, mustStop } from "./must-stop.ts";

/** How it stands with one door; only the last two are settled. */
type DoorState =
  | "not-asked"
  | "not-reached"
  /** They were told other hours than are planned now. */
  | "other-hours"
  | "needs-help"
  /** A need is on file there and nobody there has agreed to the day. */
  | "call-first"
  | "reached"
  | "waived";

/** One door: a unit, or a property that has one or none. */
export interface Door {
  readonly propertyId: string;
  readonly unitId: string | null;
  readonly passes: "surely" | "perhaps";
  /** Who lives or works there, or else who manages or owns it. */
  readonly people: readonly Party[];
  readonly state: DoorState;
  /** The latest word; null: nobody called or knocked. */
  readonly word: RollCallWord | null;
}

export interface RollCall {
  readonly matter: RollCallMatter;
  /** The pause of drains. */
  readonly pause: DatedEvent;
  readonly doors: readonly Door[];
  readonly mustStop: MustStop;
  /** It is asked of somebody now: doors that are open are due. */
  readonly pressing: boolean;
}

type CallFile = Parameters<typeof mustStop>[0] &
  Pick<LineFile, "units" | "householdCalls" | "rollCall" | "events">;
type CallFacts = Parameters<typeof mustStop>[1] & Pick<Report, "today">;

/** The last day of a pause. */
export function endOfPause({ on, lastOn }: Pick<DatedEvent, "on" | "lastOn">): Day {
  return lastOn !== null && lastOn > on ? lastOn : on;
}

/**
 * The roll-calls of a line, by day: for each pause of drains that is not over, everybody whose drains
 * have to rest; and from its last day on, the same doors once more, that the drains are on again. The
 * second is asked only where the first was begun: nobody waits for word of a pause that they were
 * never told of.
 */
export function rollCallsOf(file: CallFile, facts: CallFacts): RollCall[] {
  const stop = mustStop(file, facts);
  return file.events
    .filter(({ event }) => event === "drains-paused")
    .toSorted((one, other) => one.on.localeCompare(other.on) || one.at.localeCompare(other.at))
    .flatMap((pause) => callsAbout(file, { pause, stop, today: facts.today }));
}

function callsAbout(
  file: CallFile,
  { pause, stop, today }: { pause: DatedEvent; stop: MustStop; today: Day },
): RollCall[] {
  const end = endOfPause(pause);
  const begun = (matter: RollCallMatter) =>
    file.rollCall.some((word) => word.matter === matter && word.forDay === pause.on);
  const call = (matter: RollCallMatter, pressing: boolean): RollCall => ({
    matter,
    pause,
    pressing,
    mustStop: stop,
    doors: doorsOf(file, { matter, pause, stop }),
  });
  return [
    ...(end >= today ? [call("drains-off", true)] : []),
    ...(end <= today && begun("drains-off")
      ? [call("drains-on", end < today || begun("drains-on"))]
      : []),
  ];
}

type About = Pick<RollCall, "matter" | "pause">;

function doorsOf(file: CallFile, { stop, ...about }: About & { readonly stop: MustStop }): Door[] {
  return stop.places.flatMap(({ propertyId, passes }) => {
    const units = file.units.filter((unit) => unit.propertyId === propertyId);
    const unitIds = units.length > 1 ? units.map(({ id }) => id) : [null];
    return unitIds.map((unitId): Door => {
      const word = file.rollCall.findLast(
        (each) =>
          each.matter === about.matter &&
          each.forDay === about.pause.on &&
          each.propertyId === propertyId &&
          each.unitId === unitId,
      );
      const place = { propertyId, unitId };
      return {
        ...place,
        passes,
        people: peopleAt(file, place),
        word: word ?? null,
        state: stateOf(file, { ...about, place, word: word ?? null }),
      };
    });
  });
}

type Place = Pick<Door, "propertyId" | "unitId">;

/** Occupants of the door; where none is known, whoever manages it; else whoever owns it. */
function peopleAt({ roles, parties }: CallFile, { propertyId, unitId }: Place): Party[] {
  const here = roles.filter(
    (role) =>
      role.propertyId === propertyId &&
      (unitId === null || role.unitId === null || role.unitId === unitId),
  );
  const groups = [
    here.filter(({ role }) => role === "occupant"),
    here.filter(({ role }) => role === "manager"),
    here.filter(({ role }) => role !== "crossed-lot-owner" && !COPY_ROLES.includes(role)),
  ];
  const found = groups.find((group) => group.length > 0) ?? [];
  const ids = new Set(found.map(({ partyId }) => partyId));
  return parties.filter(({ id }) => ids.has(id));
}

function stateOf(
  file: CallFile,
  { matter, pause, place, word }: About & { place: Place; word: RollCallWord | null },
): DoorState {
  const isOff = matter === "drains-off";
  if (isOff && hasOpenNeed(file, place, pause.on)) return "call-first";
  if (word === null) return "not-asked";
  if (word.answer === "not-reached") return "not-reached";
  if (isOff && (word.from !== pause.at || word.until !== pause.until)) return "other-hours";
  if (word.answer === "needs-help") return "needs-help";
  return word.answer === "waived" ? "waived" : "reached";
}

function hasOpenNeed(file: CallFile, { propertyId, unitId }: Place, day: Day): boolean {
  return householdNeeds(file).some(
    (need) =>
      need.propertyId === propertyId &&
      !hasAgreed(file, need, { purpose: "drain-pause", day }) &&
      file.roles.some(
        (role) =>
          role.partyId === need.party.id &&
          role.propertyId === propertyId &&
          (unitId === null || role.unitId === null || role.unitId === unitId),
      ),
  );
}

/** A door that is settled: reached, or waived by name. */
export function isSettled({ state }: Pick<Door, "state">): boolean {
  return state === "reached" || state === "waived";
}

/** The doors that keep a roll-call open. */
export function openDoors({ doors }: Pick<RollCall, "doors">): Door[] {
  return doors.filter((door) => !isSettled(door));
}
