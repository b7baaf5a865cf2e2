import type { InspectionKind } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Inspection, Permit } from "../facts/permit.ts";
import { sayList } from "../say/say-list.ts";
import { permitName } from "./say.ts";

type InspectionFile = Pick<LineFile, "inspections" | "authority">;

/** The kinds of inspection that this authority makes under a permit, in its order. */
export function kindsFor({ authority }: InspectionFile, permit: Permit): InspectionKind[] {
  return (authority?.inspectionKinds ?? []).filter(
    ({ permitKind }) => permitKind === null || permitKind === permit.kind,
  );
}

/** The inspections of a permit in the order of their days, without those that were canceled. */
export function heldInspections(file: Pick<LineFile, "inspections">, permit: Pick<Permit, "id">) {
  return file.inspections
    .filter(({ permitId, result }) => permitId === permit.id && result !== "cancelled")
    .toSorted(
      (one, other) =>
        one.bookedFor.localeCompare(other.bookedFor) || one.bookedAt.localeCompare(other.bookedAt),
    );
}

/** Of the same kind, or of the same title where no kind of the authority’s list is said. */
function sameKind(one: Inspection, other: Inspection): boolean {
  if (one.kindId !== null || other.kindId !== null) return one.kindId === other.kindId;
  return one.title.trim().toLowerCase() === other.title.trim().toLowerCase();
}

/** Inspections that come again after one of the same kind failed. */
export function reinspections(file: InspectionFile, permit: Pick<Permit, "id">): Inspection[] {
  const held = heldInspections(file, permit);
  return held.filter((each, at) =>
    held.slice(0, at).some((before) => before.result === "failed" && sameKind(before, each)),
  );
}

/** A kind counts as passed by the last inspection of it that has a result. */
function isPassed(file: InspectionFile, permit: Permit, kind: InspectionKind): boolean {
  const results = heldInspections(file, permit).filter(
    ({ kindId, result }) => kindId === kind.id && result !== "booked",
  );
  return results.at(-1)?.result === "passed";
}

/**
 * Why the pipe may not be covered, or the permit not be final: kinds of inspection that this authority
 * wants passed before and that are not on file as passed. What holds the backfill holds the final too.
 * Null: nothing.
 */
export function inspectionBar(
  file: InspectionFile,
  permit: Permit,
  before: "backfill" | "final",
): string | null {
  const wanting = kindsFor(file, permit).filter(
    (kind) =>
      (kind.neededBefore === before || kind.neededBefore === "backfill") &&
      !isPassed(file, permit, kind),
  );
  if (wanting.length === 0) return null;
  const names = sayList(wanting.map(({ title }) => `“${title}”`));
  const act = before === "backfill" ? "backfill" : "the final";
  return `${permitName(permit)}: ${file.authority?.name ?? "the authority"} wants ${names} passed before ${act}. Enter the inspection with its result under “Inspections”`;
}

/** What a test’s result lacks that this authority asks for, to complete “Enter …”; empty: nothing. */
export function missingFigures(file: InspectionFile, inspection: Inspection): string[] {
  const kind = file.authority?.inspectionKinds.find(({ id }) => id === inspection.kindId);
  if (!(kind?.asksForFigures ?? false) || inspection.result !== "passed") return [];
  const { startPsi, endPsi, minutes, witness } = inspection;
  return [
    ...(startPsi === null || endPsi === null ? ["the pressure at start and end"] : []),
    ...(minutes === null ? ["the minutes"] : []),
    ...(witness.trim() === "" ? ["who witnessed it"] : []),
  ];
}
