import type { Property } from "../facts/party.ts";
import { formatAddress } from "./address.ts";
import { listedOwners } from "./listed-owners.ts";
import { personOf } from "./listed-person.ts";
import { propertyFor, withSiteStates } from "./listed-place.ts";
import type { ListedFields, ListedRow, ListPlace, ListProblem } from "./listed-row.ts";
import { mergePeople, type PersonProblem, type PersonRow, personRows } from "./people.ts";

export interface Listing {
  readonly rows: readonly ListedRow[];
  readonly after: ListPlace;
}

interface Draft extends ListedRow {
  readonly persons: readonly PersonRow[];
  readonly fresh: Property | null;
}

/**
 * What a list of owners adds to a line: properties matched by parcel number or address and added
 * where there is none; owners by name, as the list of people does it. A row that cannot be read, or
 * that contradicts what is on file under the same name, stays outside with its reason.
 */
export function listed(
  there: ListPlace,
  list: readonly ListedFields[],
  newId: () => string,
): Listing {
  const rows = withSiteStates(there, list);
  const properties = [...there.properties];
  const drafts = rows.map((fields) => {
    const draft = draftOf({ ...there, properties }, fields, newId);
    if (draft.fresh !== null) properties.push(draft.fresh);
    return draft;
  });
  return housed(there, drafts, rows, newId);
}

/** Takes in what goes together; what does not stays outside, row by row. */
function housed(
  there: ListPlace,
  drafts: readonly Draft[],
  fields: readonly ListedFields[],
  newId: () => string,
): Listing {
  const found = new Map<number, ListProblem[]>();
  const fine = (at: number) => drafts[at]?.problems.length === 0 && !found.has(at);
  for (;;) {
    const origin: number[] = [];
    const persons = drafts.flatMap((draft, at) => {
      if (!fine(at)) return [];
      for (const _person of draft.persons) origin.push(at);
      return draft.persons;
    });
    const old = personRows(there);
    const merged = mergePeople(there, [...old, ...persons], newId);
    if (merged.ok) {
      const rows = drafts.map(({ persons: _persons, fresh: _fresh, ...row }, at) => ({
        ...row,
        problems: [...row.problems, ...(found.get(at) ?? [])],
      }));
      return { rows, after: { ...merged.value, properties: propertiesAfter(there, drafts, fine) } };
    }
    const before = found.size;
    for (const problem of merged.error) {
      const at = origin[problem.row - old.length];
      if (at === undefined) continue;
      found.set(at, [...(found.get(at) ?? []), asListed(problem, fields[at] ?? {})]);
    }
    // What is on file contradicts itself: nothing of the list is to blame, nothing comes in.
    if (found.size === before) return { rows: drafts, after: there };
  }
}

/** Properties of rows that stay outside do not come in, unless another row is about them. */
function propertiesAfter(
  there: ListPlace,
  drafts: readonly Draft[],
  fine: (at: number) => boolean,
): Property[] {
  const all = drafts.flatMap(({ fresh }) => (fresh === null ? [] : [fresh]));
  const used = new Set(
    drafts.flatMap((draft, at) =>
      fine(at) ? [draft.fresh?.id, ...draft.persons.map(({ propertyId }) => propertyId)] : [],
    ),
  );
  return [...there.properties, ...all.filter(({ id }) => used.has(id))];
}

const COLUMNS: Partial<Record<keyof PersonRow, keyof ListedFields>> = {
  name: "owner",
  kind: "owner",
  role: "role",
  unit: "unit",
  careOf: "careOf",
  street: "mail",
  mailUnit: "mailUnit",
  city: "mailCity",
  state: "mailState",
  zip: "mailZip",
  email: "email",
  phone: "phone",
  language: "language",
  needs: "needs",
  note: "note",
};

const LAST: readonly (keyof ListedFields)[] = ["mailCity", "mailState", "mailZip"];

function asListed({ column, reason, detail }: PersonProblem, fields: ListedFields): ListProblem {
  const own = COLUMNS[column] ?? "owner";
  const at = LAST.includes(own) && (fields.mailLast ?? "") !== "" ? "mailLast" : own;
  if (reason !== "contradicts-same-name") return { column: at, message: detail };
  const said = detail === "" ? "blank" : `“${detail}”`;
  return {
    column: at,
    message: `The same name is on the list of people with ${said} here. Clear this cell to keep that, or add an initial to the name if it is someone else`,
  };
}

function draftOf(there: ListPlace, fields: ListedFields, newId: () => string): Draft {
  const problems: ListProblem[] = [];
  const said: string[] = [];
  const place = propertyFor(there, fields, newId, { problems, said });
  const owners = listedOwners(fields);
  said.push(...owners.said);
  if (owners.owners.length === 0 && problems.length === 0) said.push("No owner named.");
  const property = place?.property ?? null;
  const made = owners.owners.map((owner, index) =>
    personOf(there, { fields, owners, owner, index, property, newId }),
  );
  return {
    problems,
    said,
    property:
      place === null ? null : { words: formatAddress(place.property.address), isNew: place.isNew },
    people: made.map(({ shown }) => shown),
    persons: made.flatMap(({ person, shown }) => (shown.there ? [] : [person])),
    fresh: place?.isNew === true ? place.property : null,
    there:
      problems.length === 0 && place?.isNew === false && made.every(({ shown }) => shown.there),
  };
}
