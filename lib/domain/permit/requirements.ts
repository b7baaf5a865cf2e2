import { latestSplit } from "../consent/standing.ts";
import { consentTable } from "../consent/table.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report } from "../file/report.ts";
import { cellOf } from "../letter/told.ts";
import { signersFor } from "../party/signers.ts";
import type { Requirement, SheetKind } from "../responsibility/authority.ts";
import type { RequirementState } from "./permit.ts";

export interface RequirementFinding {
  readonly requirement: Requirement;
  readonly state: RequirementState;
  /** Why, in one sentence; the office's note where the office marked it. */
  readonly sentence: string;
}

/**
 * How each thing that the authority asks for stands. What the office marked counts; the rest is
 * judged by whether the file holds what the sheet is made from. What only paper can show stays
 * missing until somebody marks it.
 */
export function requirementsOn(file: LineFile, report: Report): RequirementFinding[] {
  return (file.authority?.requirements ?? []).map((requirement) => {
    const mark = file.requirementMarks.findLast((each) => each.requirementId === requirement.id);
    if (mark !== undefined)
      return { requirement, state: mark.state, sentence: mark.note || "As the office marked it." };
    const lacking = LACKING[requirement.sheet](file, report);
    return {
      requirement,
      state: lacking === "" ? "in-hand" : "missing",
      sentence: lacking === "" ? "The file holds what it is made from." : lacking,
    };
  });
}

type Lacking = (file: LineFile, report: Report) => string;

/** What the file lacks for a sheet, as a sentence; empty where it lacks nothing. */
const LACKING: Record<SheetKind, Lacking> = {
  application: (file) => lackingOwners(file),
  "line-drawing": (_, { extent, stations }) =>
    extent > 0 && stations.some(({ station }) => station !== null)
      ? ""
      : "Nothing on the line has a station yet.",
  "schedule-of-connections": (file) =>
    file.tieIns.length + file.entries.length > 0 ? "" : "No connection is entered.",
  "observation-log": (file) => (file.observations.length > 0 ? "" : "No observation is entered."),
  tests: (file) => (file.tests.length > 0 ? "" : "No test is entered."),
  scope: (file) => (file.scope.length > 0 ? "" : "No work is entered."),
  responsibility: (_, { reaches }) =>
    reaches.length > 0 && reaches.every(({ holder }) => holder !== "unclear")
      ? ""
      : "Who answers for the line is not clear throughout.",
  split: (file) => (latestSplit(file) === null ? "No split is chosen." : ""),
  consents: (file) => lackingConsents(file),
  "proof-of-notice": (file) => lackingNotice(file),
  "contractor-standing": () => "",
  "holds-and-waivers": () => "",
  upload: () => "Add the paper and mark it.",
};

function lackingOwners(file: LineFile): string {
  if (file.properties.length === 0) return "No property is entered.";
  const without = connected(file).filter((id) => signersFor(file, id).length === 0);
  return without.length === 0 ? "" : "A property on the line has no owner entered.";
}

function connected(file: LineFile): string[] {
  return file.properties
    .filter(({ stake }) => stake === "connected" || stake === "crossed")
    .map(({ id }) => id);
}

function lackingConsents(file: LineFile): string {
  const open = consentTable(file).filter(({ cells }) => cells.dig.needed && !cells.dig.inHand);
  return open.length === 0
    ? ""
    : "A lot that the work opens has not all its owners’ consent to dig.";
}

function lackingNotice(file: LineFile): string {
  const owners = connected(file).flatMap((id) => signersFor(file, id));
  const unproven = owners.some(
    ({ partyId }) =>
      !file.notices.some(
        (notice) => notice.partyId === partyId && cellOf(file, notice).state === "delivered",
      ),
  );
  if (owners.length === 0) return "No owner is entered.";
  return unproven ? "Not every owner has a letter whose delivery is recorded." : "";
}
