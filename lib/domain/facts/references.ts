import { formatFeet } from "../length/station.ts";
import type { LineFile } from "./line-file.ts";

/** The parts of a file that are lists of rows. */
export type ListName = Exclude<keyof LineFile, "line" | "authority">;

/** A field of a list whose value is the id of a row of another list. */
interface Reference {
  readonly from: ListName;
  readonly field: string;
  readonly to: ListName;
  /** The field lies in this list of the row: `shares`. */
  readonly inside: string | null;
}

function refer(from: ListName, to: ListName, ...fields: readonly string[]): Reference[] {
  return fields.map((field) => ({ from, field, to, inside: null }));
}

function referInside(from: ListName, inside: string, to: ListName, field: string): Reference {
  return { from, field, to, inside };
}

/** Who names whom in a line's file. */
export const LIST_REFERENCES: readonly Reference[] = [
  ...refer("units", "properties", "propertyId"),
  ...refer("roles", "parties", "partyId"),
  ...refer("roles", "properties", "propertyId"),
  ...refer("roles", "units", "unitId"),
  ...refer("sameParties", "parties", "partyId", "intoId"),
  ...refer("crossings", "properties", "propertyId"),
  ...refer("land", "properties", "propertyId"),
  ...refer("tieIns", "tieIns", "parentId"),
  ...refer("tieIns", "properties", "propertyId"),
  ...refer("ties", "tieIns", "tieInId"),
  ...refer("ties", "points", "pointId"),
  ...refer("ties", "fixedPoints", "fromId", "otherId"),
  ...refer("planShapes", "properties", "propertyId"),
  ...refer("planPictures", "uploads", "uploadId"),
  ...refer("records", "uploads", "uploadId"),
  ...refer("entries", "records", "recordId"),
  ...refer("entries", "properties", "propertyId"),
  ...refer("anchors", "runs", "runId"),
  ...refer("gaps", "runs", "runId"),
  ...refer("observations", "runs", "runId"),
  ...refer("observations", "tieIns", "tieInId"),
  ...refer("observations", "uploads", "pictureId"),
  ...refer("narrations", "runs", "runId"),
  ...refer("videos", "runs", "runId"),
  ...refer("alignments", "records", "recordId"),
  ...refer("pairings", "entries", "entryId"),
  ...refer("pairings", "tieIns", "tieInId"),
  ...refer("tests", "tieIns", "tieInId"),
  ...refer("tests", "properties", "propertyId", "controlPropertyId"),
  ...refer("tests", "units", "unitId"),
  ...refer("testDays", "properties", "controlPropertyId"),
  referInside("testDays", "stops", "properties", "propertyId"),
  referInside("testDays", "stops", "units", "unitId"),
  referInside("testDays", "stops", "points", "pointId"),
  ...refer("rulings", "tieIns", "tieInId"),
  ...refer("rulings", "uploads", "uploadId"),
  referInside("agreements", "shares", "properties", "propertyId"),
  ...refer("agreementSteps", "agreements", "agreementId"),
  ...refer("agreementSteps", "parties", "partyId"),
  ...refer("agreementSteps", "uploads", "uploadId"),
  ...refer("fixtures", "properties", "propertyId"),
  ...refer("fixtures", "units", "unitId"),
  ...refer("scope", "options", "optionId"),
  ...refer("scope", "changeOrders", "addedById", "droppedById"),
  ...refer("splits", "options", "optionId"),
  ...refer("scope", "tieIns", "tieInId"),
  ...refer("scope", "properties", "payerId"),
  ...refer("splits", "properties", "payerId"),
  referInside("splits", "shares", "properties", "propertyId"),
  referInside("splits", "shares", "tieIns", "tieInId"),
  ...refer("digAreas", "properties", "propertyId"),
  ...refer("notices", "parties", "partyId"),
  ...refer("notices", "properties", "propertyId"),
  ...refer("notices", "tieIns", "tieInId"),
  ...refer("notices", "splits", "splitId"),
  ...refer("notices", "uploads", "uploadId"),
  ...refer("deliveries", "notices", "noticeId"),
  ...refer("deliveries", "uploads", "proofUploadId"),
  ...refer("replies", "notices", "noticeId"),
  ...refer("replies", "uploads", "uploadId"),
  ...refer("householdCalls", "parties", "partyId"),
  ...refer("householdCalls", "properties", "propertyId"),
  ...refer("rollCall", "properties", "propertyId"),
  ...refer("rollCall", "units", "unitId"),
  ...refer("consents", "parties", "partyId"),
  ...refer("consents", "properties", "propertyId"),
  ...refer("consents", "splits", "splitId"),
  ...refer("consents", "uploads", "uploadId"),
  ...refer("consents", "consents", "restsOnId"),
  ...refer("signatures", "consents", "consentId"),
  ...refer("signatures", "uploads", "documentId", "drawingId"),
  ...refer("ledger", "parties", "partyId"),
  ...refer("ledger", "properties", "propertyId"),
  ...refer("ledger", "splits", "splitId"),
  ...refer("ledger", "ledger", "reversesId"),
  ...refer("ledger", "uploads", "uploadId"),
  ...refer("permitSteps", "permits", "permitId"),
  ...refer("inspections", "permits", "permitId"),
  ...refer("requirementMarks", "uploads", "uploadId"),
  ...refer("reconnections", "tieIns", "tieInId"),
  ...refer("reconnections", "runs", "openedRunId"),
  ...refer("built", "scope", "itemId"),
  ...refer("built", "uploads", "uploadId"),
];

/** A field that names a row which is not in the file. */
export interface DanglingReference {
  readonly from: ListName;
  /** Number of the row, from 0. */
  readonly row: number;
  /** As `propertyId`, or `shares.2.propertyId`. */
  readonly path: string;
  readonly to: ListName;
  readonly id: string;
}

type Row = Readonly<Record<string, unknown>>;

/** Every field that names a row which the file does not hold. */
export function danglingReferences(file: Pick<LineFile, ListName>): DanglingReference[] {
  const held = new Map<ListName, Set<string>>();
  const holds = (list: ListName, id: string) => {
    const ids = held.get(list) ?? new Set(file[list].map((row) => row.id));
    held.set(list, ids);
    return ids.has(id);
  };
  return LIST_REFERENCES.flatMap((reference) =>
    (file[reference.from] as unknown as readonly Row[]).flatMap((row, at) =>
      namesIn(row, reference)
        .filter(({ id }) => !holds(reference.to, id))
        .map(({ id, path }) => ({ from: reference.from, row: at, path, to: reference.to, id })),
    ),
  );
}

function namesIn(row: Row, { field, inside }: Reference): { id: string; path: string }[] {
  if (inside === null) {
    const id = row[field];
    return typeof id === "string" ? [{ id, path: field }] : [];
  }
  const members = (row[inside] ?? []) as readonly Row[];
  return members.flatMap((member, at) => {
    const id = member[field];
    return typeof id === "string" ? [{ id, path: `${inside}.${at}.${field}` }] : [];
  });
}

/** One row of each list, in words. */
export const ROW_WORDS: Readonly<Record<ListName, string>> = {
  properties: "property",
  units: "unit",
  parties: "party",
  roles: "role",
  sameParties: "decision on two parties",
  points: "point",
  crossings: "crossed lot",
  land: "section of land",
  tieIns: "tie-in",
  bends: "bend",
  fixedPoints: "fixed point",
  ties: "tie",
  planShapes: "shape of the plan",
  planPictures: "plan picture",
  records: "permit record",
  entries: "record entry",
  runs: "run",
  anchors: "anchor",
  gaps: "gap",
  observations: "observation",
  narrations: "narration",
  videos: "video",
  alignments: "alignment",
  pairings: "pairing",
  tests: "test",
  testDays: "test day",
  rulings: "ruling",
  waivers: "waiver",
  agreements: "agreement",
  agreementSteps: "agreement step",
  fixtures: "fixture count",
  levels: "level",
  options: "option",
  changeOrders: "change order",
  scope: "scope item",
  splits: "split",
  digAreas: "area to dig",
  notices: "letter",
  deliveries: "delivery",
  replies: "reply",
  householdCalls: "call",
  rollCall: "roll-call",
  consents: "consent",
  signatures: "signature",
  ledger: "ledger entry",
  permits: "permit",
  permitSteps: "permit step",
  requirementMarks: "requirement",
  locateTickets: "locate ticket",
  inspections: "inspection",
  events: "event",
  reconnections: "reconnection",
  built: "work done",
  spillSteps: "step of the spill",
  uploads: "stored file",
  history: "history entry",
};

type NameFile = Pick<LineFile, ListName>;

/** What a person calls a row: `tie-in T3`, `property 12 Fennel Row`, `letter to Jesús Peña`. */
export function nameRow(file: NameFile, list: ListName, id: string): string {
  const row = (file[list] as readonly { readonly id: string }[]).find((each) => each.id === id);
  const own = row ? ownName(file, list, row as unknown as Row) : id;
  return own === "" ? ROW_WORDS[list] : `${ROW_WORDS[list]} ${own}`;
}

function ownName(file: NameFile, list: ListName, row: Row): string {
  const name = NAMES[list];
  return name ? name(file, row) : firstText(row) || firstPlace(row);
}

/** Rows that are called after another row, or after their address. */
const NAMES: Partial<Record<ListName, (file: NameFile, row: Row) => string>> = {
  properties: (_file, row) => {
    const { street, unit } = row["address"] as { street: string; unit: string };
    return `${street} ${unit}`.trim();
  },
  notices: (file, row) => `to ${plainName(file, "parties", row["partyId"])}`,
  roles: (file, row) => `of ${plainName(file, "parties", row["partyId"])}`,
  rollCall: (file, row) => `at ${plainName(file, "properties", row["propertyId"])}`,
  householdCalls: (file, row) => `to ${plainName(file, "parties", row["partyId"])}`,
  consents: (file, row) => `of ${plainName(file, "parties", row["partyId"])}`,
  ties: (file, row) => `from ${plainName(file, "fixedPoints", row["fromId"])}`,
  reconnections: (file, row) => `of ${plainName(file, "tieIns", row["tieInId"])}`,
  tests: (file, row) => `on ${plainName(file, "tieIns", row["tieInId"])}`,
  pairings: (file, row) => `of ${plainName(file, "entries", row["entryId"])}`,
  deliveries: (file, row) => plainName(file, "notices", row["noticeId"]),
  replies: (file, row) => plainName(file, "notices", row["noticeId"]).replace(/^to /, "of "),
};

function firstText(row: Row): string {
  const texts = ["label", "name", "title", "number"].map((field) => row[field]);
  return String(texts.find((text) => text !== undefined && text !== "") ?? "").trim();
}

function firstPlace(row: Row): string {
  const places = ["station", "counter", "fromCounter", "from"].map((field) => row[field]);
  const place = places.find((each) => typeof each === "number");
  return typeof place === "number" ? `at ${formatFeet(place)}` : "";
}

function plainName(file: NameFile, list: ListName, id: unknown): string {
  const row = (file[list] as readonly { readonly id: string }[]).find((each) => each.id === id);
  return row ? ownName(file, list, row as unknown as Row) : String(id);
}
