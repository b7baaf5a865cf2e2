import { err, ok, type Result } from "../../result.ts";
import { maybe, oneOf, type RowOf, ref, row, usually, words } from "../facts/field.ts";
import {
  type Address,
  PARTY_KINDS,
  PARTY_LANGUAGES,
  PARTY_ROLES,
  type Party,
  type Role,
  type Unit,
} from "../facts/party.ts";
import { withStateWritten } from "./address.ts";
import { reachProblems } from "./address-check.ts";

/**
 * One line of the list that an office types: a name, what they are to which property, and where
 * their mail goes. Somebody with two roles stands on two lines under the same name.
 */
export type PersonRow = RowOf<typeof PERSON_ROW>;

export const PERSON_ROW = row({
  one: "person",
  fields: {
    name: words,
    kind: usually(oneOf(PARTY_KINDS), "person"),
    /** Null: no role yet. */
    role: maybe(oneOf(PARTY_ROLES)),
    propertyId: maybe(ref("properties")),
    /** Name of the unit at the property; empty: the whole property, or its only unit. */
    unit: words,
    capacity: words,
    /** Who else holds title without being named. */
    heldWith: words,
    careOf: words,
    street: words,
    mailUnit: words,
    city: words,
    state: words,
    zip: words,
    email: words,
    phone: words,
    language: usually(oneOf(PARTY_LANGUAGES), "unknown"),
    needs: words,
    needsSaidBy: words,
    note: words,
  },
});

/** The three tables that the list is kept in. */
export interface People {
  readonly parties: readonly Party[];
  readonly roles: readonly Role[];
  readonly units: readonly Unit[];
}

const PERSON_PROBLEMS = [
  "name-missing",
  "property-missing",
  "role-missing",
  "contradicts-same-name",
  "street-missing",
  "written-oddly",
] as const;
export type PersonProblemReason = (typeof PERSON_PROBLEMS)[number];

/** What is wrong in one cell; `row` counts from 0. */
export interface PersonProblem {
  readonly row: number;
  readonly column: keyof PersonRow;
  readonly reason: PersonProblemReason;
  /** What the other line of the same person says; for `written-oddly` how to write it. */
  readonly detail: string;
}

/** The fields of a line that belong to the person and not to the role. */
const PARTY_FIELDS = [
  "kind",
  "careOf",
  "street",
  "mailUnit",
  "city",
  "state",
  "zip",
  "email",
  "phone",
  "language",
  "needs",
  "needsSaidBy",
  "note",
] as const satisfies readonly (keyof PersonRow)[];

type PartyField = (typeof PARTY_FIELDS)[number];
type PartyFields = Readonly<Record<PartyField, string>>;

const BLANK: PartyFields = {
  kind: "person",
  careOf: "",
  street: "",
  mailUnit: "",
  city: "",
  state: "",
  zip: "",
  email: "",
  phone: "",
  language: "unknown",
  needs: "",
  needsSaidBy: "",
  note: "",
};

/** The list as typed: a line for each role, and one for everybody who has none. */
export function personRows({ parties, roles, units }: People): PersonRow[] {
  return parties.flatMap((party) => {
    const own = roles.filter((role) => role.partyId === party.id);
    if (own.length === 0) return [personRow(party, null, units)];
    return own.map((role) => personRow(party, role, units));
  });
}

function personRow(party: Party, role: Role | null, units: readonly Unit[]): PersonRow {
  const { mailing } = party;
  return {
    id: role?.id ?? party.id,
    name: party.name,
    kind: party.kind,
    role: role?.role ?? null,
    propertyId: role?.propertyId ?? null,
    unit: units.find((unit) => unit.id === role?.unitId)?.name ?? "",
    capacity: role?.capacity ?? "",
    heldWith: role?.heldWith ?? "",
    careOf: party.careOf,
    street: mailing?.street ?? "",
    mailUnit: mailing?.unit ?? "",
    city: mailing?.city ?? "",
    state: mailing?.state ?? "",
    zip: mailing?.zip ?? "",
    email: party.email,
    phone: party.phone,
    language: party.language,
    needs: party.needs,
    needsSaidBy: party.needsSaidBy,
    note: party.note,
  };
}

/**
 * Takes the typed list apart into parties, roles and units.
 *
 * The same name is the same person: what one of their lines changes holds for all of them, and a
 * further line need not repeat an address. A line that is renamed away from the others becomes
 * another person. A unit that the property does not have yet is added. Refuses lines of one person
 * that contradict each other, a role without a property and a property without a role, and a state,
 * ZIP code or phone number that is typed as none.
 */
export function mergePeople(
  before: People,
  typed: readonly PersonRow[],
  newId: () => string,
): Result<People, readonly PersonProblem[]> {
  const original = new Map(personRows(before).map((row) => [row.id, row]));
  const rows = peopleWritten(typed, original);
  const problems = rows.flatMap((row, at) => [
    ...problemsOfRow(row, at),
    ...oddFields(row, at, original.get(row.id)),
  ]);
  const partyIds = identify({ before, rows, original, newId });
  const known = new Map(before.parties.map((party) => [party.id, party]));
  const parties: Party[] = [];
  for (const partyId of new Set(partyIds)) {
    const lines = linesOf(partyId, { rows, partyIds, original });
    const party = known.get(partyId) ?? null;
    const gathered = gather(lines, party);
    problems.push(...gathered.problems);
    parties.push(partyFrom(partyId, lines, gathered.fields));
  }
  if (problems.length > 0) return err(problems);
  const housed = houseRoles({ before, rows, partyIds, original, newId });
  return ok({ parties: inOldOrder(parties, before.parties), ...housed });
}

/** The list with states in two letters; one that stood in the file before is left alone. */
export function peopleWritten(
  rows: readonly PersonRow[],
  original: ReadonlyMap<string, PersonRow>,
): readonly PersonRow[] {
  return rows.map((row) =>
    original.get(row.id)?.state === row.state ? row : withStateWritten(row),
  );
}

function problemsOfRow(row: PersonRow, at: number): PersonProblem[] {
  const found: PersonProblem[] = [];
  const add = (column: keyof PersonRow, reason: PersonProblemReason) =>
    found.push({ row: at, column, reason, detail: "" });
  if (nameKey(row.name) === "") add("name", "name-missing");
  if (row.role !== null && row.propertyId === null) add("propertyId", "property-missing");
  if (row.role === null && row.propertyId !== null) add("role", "role-missing");
  const rest = [row.mailUnit, row.city, row.state, row.zip];
  if (row.street.trim() === "" && rest.some((part) => part.trim() !== ""))
    add("street", "street-missing");
  return found;
}

/** State, ZIP code and phone as they were typed now; what stood in the file before is left alone. */
function oddFields(row: PersonRow, at: number, was: PersonRow | undefined): PersonProblem[] {
  return reachProblems(row)
    .filter(({ field }) => was?.[field] !== row[field])
    .map(({ field, message }) => ({
      row: at,
      column: field,
      reason: "written-oddly",
      detail: message,
    }));
}

interface Identifying {
  readonly before: People;
  readonly rows: readonly PersonRow[];
  readonly original: ReadonlyMap<string, PersonRow>;
  readonly newId: () => string;
}

/** For each line, which party it is: unchanged names keep theirs first, then names decide. */
function identify({ before, rows, original, newId }: Identifying): string[] {
  const owner = ownersOfRows(before);
  const claimed = new Set<string>();
  const byName = new Map<string, string>();
  const found = rows.map((row) => {
    const partyId = owner.get(row.id);
    if (partyId === undefined) return null;
    const was = original.get(row.id);
    if (was === undefined || personKey(was) !== personKey(row)) return null;
    claimed.add(partyId);
    if (!byName.has(personKey(row))) byName.set(personKey(row), partyId);
    return partyId;
  });
  return rows.map((row, at) => {
    const settled = found[at] ?? byName.get(personKey(row));
    if (settled !== undefined) return settled;
    const former = owner.get(row.id);
    const partyId = former !== undefined && !claimed.has(former) ? former : newId();
    claimed.add(partyId);
    byName.set(personKey(row), partyId);
    return partyId;
  });
}

function ownersOfRows({ parties, roles }: People): Map<string, string> {
  return new Map([
    ...parties.map((party): [string, string] => [party.id, party.id]),
    ...roles.map((role): [string, string] => [role.id, role.partyId]),
  ]);
}

interface PersonLine {
  readonly at: number;
  readonly row: PersonRow;
  /** As it stood in the file, if it was this person's already. */
  readonly was: PersonRow | null;
}

function linesOf(
  partyId: string,
  {
    rows,
    partyIds,
    original,
  }: Pick<Identifying, "rows" | "original"> & { partyIds: readonly string[] },
): PersonLine[] {
  const lines: PersonLine[] = [];
  rows.forEach((row, at) => {
    if (partyIds[at] === partyId) lines.push({ at, row, was: original.get(row.id) ?? null });
  });
  return lines;
}

function gather(
  lines: readonly PersonLine[],
  party: Party | null,
): { fields: PartyFields; problems: PersonProblem[] } {
  const problems: PersonProblem[] = [];
  const start = party === null ? BLANK : personRow(party, null, []);
  const fields = PARTY_FIELDS.map((field): [PartyField, string] => {
    const told = tell(lines, field, { start: start[field], fresh: party === null });
    problems.push(...told.problems);
    return [field, told.value];
  });
  return { fields: { ...BLANK, ...Object.fromEntries(fields) }, problems };
}

/** One field of a person, out of what their lines say. */
function tell(
  lines: readonly PersonLine[],
  field: PartyField,
  { start, fresh }: { start: string; fresh: boolean },
): { value: string; problems: PersonProblem[] } {
  const problems: PersonProblem[] = [];
  let value = start;
  let said = false;
  for (const { at, row, was } of lines) {
    const typed = row[field].trim();
    const asBefore = was !== null && !fresh ? typed === was[field].trim() : typed === BLANK[field];
    if (asBefore) continue;
    const open = !said && (was !== null || value === BLANK[field]);
    if (open) {
      value = typed;
      said = true;
    } else if (typed !== value) {
      problems.push({ row: at, column: field, reason: "contradicts-same-name", detail: value });
    }
  }
  return { value, problems };
}

function partyFrom(id: string, lines: readonly PersonLine[], fields: PartyFields): Party {
  return {
    id,
    name: lines[0]?.row.name.trim() ?? "",
    kind: PARTY_KINDS.find((kind) => kind === fields.kind) ?? "person",
    mailing: mailingFrom(fields),
    careOf: fields.careOf,
    email: fields.email,
    phone: fields.phone,
    language: PARTY_LANGUAGES.find((language) => language === fields.language) ?? "unknown",
    needs: fields.needs,
    needsSaidBy: fields.needsSaidBy,
    note: fields.note,
  };
}

function mailingFrom(fields: PartyFields): Address | null {
  if (fields.street === "") return null;
  return {
    street: fields.street,
    unit: fields.mailUnit,
    city: fields.city,
    state: fields.state,
    zip: fields.zip,
  };
}

function houseRoles({
  before,
  rows,
  partyIds,
  original,
  newId,
}: Identifying & { partyIds: readonly string[] }): Pick<People, "roles" | "units"> {
  const units = [...before.units];
  const partyRows = new Set(before.parties.map((party) => party.id));
  const formerUnit = new Map(before.roles.map((role) => [role.id, role.unitId]));
  const roles: Role[] = [];
  rows.forEach((row, at) => {
    const partyId = partyIds[at];
    const role = PARTY_ROLES.find((each) => each === row.role);
    if (partyId === undefined || role === undefined || row.propertyId === null) return;
    const was = original.get(row.id);
    const stays = was?.propertyId === row.propertyId && nameKey(was.unit) === nameKey(row.unit);
    const unitId = stays ? (formerUnit.get(row.id) ?? null) : housedIn(row, units, newId);
    const id = partyRows.has(row.id) ? newId() : row.id;
    const { propertyId } = row;
    const said = { capacity: row.capacity.trim(), heldWith: row.heldWith.trim() };
    roles.push({ id, partyId, propertyId, role, unitId, ...said });
  });
  return { roles, units };
}

/** The unit of a line; adds it to `units` where the property has none of that name. */
function housedIn(row: PersonRow, units: Unit[], newId: () => string): string | null {
  const own = units.filter((unit) => unit.propertyId === row.propertyId);
  const named = own.find((unit) => nameKey(unit.name) === nameKey(row.unit));
  if (nameKey(row.unit) === "") return row.role === "occupant" ? (named?.id ?? null) : null;
  if (named !== undefined) return named.id;
  if (row.propertyId === null) return null;
  const unit: Unit = {
    id: newId(),
    propertyId: row.propertyId,
    name: row.unit.trim(),
    use: row.kind === "firm" && row.role === "occupant" ? "business" : "dwelling",
    note: "",
  };
  units.push(unit);
  return unit.id;
}

function inOldOrder(parties: readonly Party[], before: readonly Party[]): Party[] {
  const place = new Map(before.map((party, at) => [party.id, at]));
  const last = before.length;
  return parties.toSorted((a, b) => (place.get(a.id) ?? last) - (place.get(b.id) ?? last));
}

/** Who a line is about: the same name is the same person; residents without one are told by their unit. */
function personKey({ kind, name, propertyId, unit }: PersonRow): string {
  if (kind !== "resident") return nameKey(name);
  return JSON.stringify(["resident", propertyId, nameKey(unit)]);
}

function nameKey(name: string): string {
  return name.trim().replace(/\s+/g, " ").toLowerCase();
}
