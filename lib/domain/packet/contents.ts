import type { ConditionFile } from "../application/answer.ts";
import { requirementApplies } from "../application/conditions.ts";
import type { Requirement, SheetKind } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";

/** What decides on the contents: the authority’s list, and what its conditions rest on. */
interface ContentInput {
  readonly file: ConditionFile & Pick<LineFile, "authority" | "requirementMarks">;
  readonly report: Pick<Report, "tieIns">;
}

/** What a packet holds, and by whose list. */
export interface PacketContents {
  readonly kinds: ReadonlySet<SheetKind>;
  /** The authority’s own list, or the usual one where none is on file. */
  readonly by: "authority" | "usual";
}

/** What most counters ask for; nobody’s amounts, refusals, tests or waivers. */
const USUAL: readonly SheetKind[] = [
  "application",
  "line-drawing",
  "schedule-of-connections",
  "observation-log",
  "scope",
  "consents",
  "contractor-standing",
];

/**
 * The kinds of sheets that this authority asks for with the application, and no more: the packet
 * becomes a public record. What keeps the crew safe is in every packet.
 */
export function packetContents(input: ContentInput): PacketContents {
  const asked = askedWithApplication(input);
  const kinds = asked.length === 0 ? USUAL : asked.map(({ sheet }) => sheet);
  return {
    kinds: new Set([...kinds, "crew-safety"]),
    by: asked.length === 0 ? "usual" : "authority",
  };
}

/** Requirements that are due with the application and that may apply here. */
export function askedWithApplication(input: ContentInput): Requirement[] {
  return (input.file.authority?.requirements ?? []).filter(
    (requirement) =>
      requirement.due === "submission" &&
      requirement.permitKind === null &&
      isAsked(requirement, input),
  );
}

/**
 * Whether a requirement may apply: by its conditions; else unless the office marked that it does not.
 * A condition that is known to hold outranks the mark.
 */
export function isAsked({ id }: Pick<Requirement, "id">, { file, report }: ContentInput): boolean {
  const { applies } = requirementApplies({ id }, { file, tieIns: report.tieIns });
  if (applies === "yes" || applies === "no") return applies === "yes";
  return (
    file.requirementMarks.findLast((mark) => mark.requirementId === id)?.state !== "does-not-apply"
  );
}

/** What a sheet is called where it is left out. */
const NAMES: Partial<Record<SheetKind, string>> = {
  "observation-log": "the camera’s log",
  tests: "tests",
  attestation: "the applicant’s signature and the owners’ authorizations",
  "proposed-pipe": "the new pipe",
  pavement: "pavement and traffic",
  capacity: "slope and load",
  responsibility: "responsibility by section",
  split: "who pays what",
  consents: "consents",
  "proof-of-notice": "letters and their delivery",
  "contractor-standing": "the contractor’s documents",
  "holds-and-waivers": "holds and waivers",
};

/** What the file holds and the packet leaves out on purpose, in words; empty where nothing. */
export function leftOutNames({ kinds }: PacketContents, held: ReadonlySet<SheetKind>): string[] {
  return (Object.keys(NAMES) as SheetKind[])
    .filter((kind) => held.has(kind) && !kinds.has(kind))
    .map((kind) => NAMES[kind] ?? kind);
}

/** Kinds of sheets of which the file has something. */
export function heldKinds(file: LineFile): Set<SheetKind> {
  const kinds: readonly (readonly [SheetKind, boolean])[] = [
    ["observation-log", file.observations.length > 0],
    ["tests", file.tests.length > 0],
    ["attestation", file.ownerAuthorizations.length > 0],
    ["proposed-pipe", file.proposedPipes.length > 0],
    ["pavement", file.surfaceCuts.length > 0],
    ["capacity", file.levels.length + file.fixtures.length > 0],
    ["responsibility", file.line.ruleId !== null || file.agreements.length > 0],
    ["split", file.splits.length > 0],
    ["consents", file.consents.length > 0],
    ["proof-of-notice", file.notices.some(({ state }) => state === "sent")],
    ["holds-and-waivers", file.waivers.length > 0],
  ];
  return new Set(kinds.flatMap(([kind, has]) => (has ? [kind] : [])));
}
