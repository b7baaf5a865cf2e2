import { formatFeet } from "../length/station.ts";
import type { Fields } from "./field.ts";
import type { LineFile } from "./line-file.ts";
import { LIST_NAMES, type ListName } from "./list-name.ts";
import { LISTS } from "./lists.ts";

/** A field of a list whose value is the id of a row of another list. */
interface Reference {
  readonly from: ListName;
  readonly field: string;
  readonly to: ListName;
  /** The field lies in this list of the row: `shares`. */
  readonly inside: string | null;
}

function referencesIn(from: ListName, fields: Fields, inside: string | null): Reference[] {
  return Object.entries(fields).flatMap(([field, { holds }]) => {
    if (holds.what === "ref") return [{ from, field, to: holds.to, inside }];
    return holds.what === "several" ? referencesIn(from, holds.fields, field) : [];
  });
}

/** Who names whom in a line's file. */
export const LIST_REFERENCES: readonly Reference[] = LIST_NAMES.flatMap((list) =>
  referencesIn(list, LISTS[list].fields, null),
);

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

type NameFile = Pick<LineFile, ListName>;

/** What a person calls a row: `tie-in T3`, `property 12 Fennel Row`, `letter to Jesús Peña`. */
export function nameRow(file: NameFile, list: ListName, id: string): string {
  const row = (file[list] as readonly { readonly id: string }[]).find((each) => each.id === id);
  const own = row ? ownName(file, list, row as unknown as Row) : id;
  const { one } = LISTS[list];
  return own === "" ? one : `${one} ${own}`;
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
  utilityResponses: (_file, row) => `of ${String(row["utility"])}`,
  corrections: (_file, row) => String(row["number"]).trim(),
  meetings: (_file, row) => `on ${String(row["on"])}`,
  meetingWords: (file, row) => `of ${plainName(file, "parties", row["partyId"])}`,
  rollCall: (file, row) => `at ${plainName(file, "properties", row["propertyId"])}`,
  householdCalls: (file, row) => `to ${plainName(file, "parties", row["partyId"])}`,
  consents: (file, row) => `of ${plainName(file, "parties", row["partyId"])}`,
  ties: (file, row) => `from ${plainName(file, "fixedPoints", row["fromId"])}`,
  reconnections: (file, row) => `of ${plainName(file, "tieIns", row["tieInId"])}`,
  tests: (file, row) => `on ${plainName(file, "tieIns", row["tieInId"])}`,
  pairings: (file, row) => `of ${plainName(file, "entries", row["entryId"])}`,
  deliveries: (file, row) => plainName(file, "notices", row["noticeId"]),
  replies: (file, row) =>
    row["noticeId"] === null
      ? `to invoice No. ${plainName(file, "ledger", row["entryId"])}`
      : plainName(file, "notices", row["noticeId"]).replace(/^to /, "of "),
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
