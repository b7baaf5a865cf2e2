import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { propertyName } from "../../names.ts";

type Place = Pick<TestStop, "propertyId" | "unitId" | "pointId">;

/** Where a stop is: an address, one unit of it, or an access of the pipe. */
export function stopPlace(file: LineFile, { propertyId, unitId, pointId }: Place): string {
  if (propertyId === null) return accessName(file, pointId);
  const unit = file.units.find(({ id }) => id === unitId)?.name ?? "";
  const name = propertyName(file, propertyId);
  return unit === "" ? name : `${name}, ${unit}`;
}

function accessName({ points }: LineFile, pointId: string | null): string {
  const point = points.find(({ id }) => id === pointId);
  return point ? `the pipe, at the ${point.kind} at ${formatFeet(point.station)}` : "the pipe";
}

export function isControl({ controlPropertyId }: TestDay, { propertyId }: TestStop): boolean {
  return propertyId !== null && propertyId === controlPropertyId;
}

/** Where a stop may be, as the form sends it: addresses, units by themselves, accesses of the pipe. */
export function placeOptions(file: LineFile): { value: string; label: string }[] {
  const addresses = file.properties.flatMap(({ id }): Place[] => {
    const units = file.units.filter(({ propertyId }) => propertyId === id);
    const each = units.map((unit) => ({ propertyId: id, unitId: unit.id, pointId: null }));
    const whole = { propertyId: id, unitId: null, pointId: null };
    return units.length > 1 ? [whole, ...each] : [whole];
  });
  const accesses = file.points
    .filter(({ kind }) => kind === "cleanout" || kind === "manhole")
    .map(({ id }): Place => ({ propertyId: null, unitId: null, pointId: id }));
  return [...addresses, ...accesses].map((place) => ({
    value: placeValue(place),
    label: stopPlace(file, place),
  }));
}

export function placeValue({ propertyId, unitId, pointId }: Place): string {
  return JSON.stringify([propertyId, unitId, pointId]);
}
