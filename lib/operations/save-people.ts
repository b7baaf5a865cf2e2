import type { Db } from "#db/open.ts";
import { getKeptFile, getLineFile } from "#db/queries/line-file.ts";
import { getLastSave, getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { danglingReferences, nameRow } from "#lib/domain/facts/references.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import {
  mergePeople,
  PERSON_ROW,
  type PersonProblem,
  type PersonProblemReason,
  type PersonRow,
  peopleWritten,
  personRows,
} from "#lib/domain/party/people.ts";
import { type Nonsense, nonsenseIn } from "#lib/domain/report/sense.ts";
import { fieldsShape } from "#lib/exchange/shape.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { Act } from "./act.ts";
import { closedWords } from "./change.ts";
import { saveTables } from "./row-writes.ts";
import type { CellProblem, RowsRefusal, RowsSaved } from "./save-rows.ts";

const PERSON = fieldsShape(PERSON_ROW.fields, "memory");

/** The tables that the list of people is kept in. */
const PEOPLE_TABLES = ["parties", "roles", "units"] as const satisfies readonly RowTable[];

/** How often the list of people was saved, over all its tables: rises with each of them. */
export function peopleRevision(revisions: Readonly<Record<RowTable, number>>): number {
  return PEOPLE_TABLES.reduce((sum, table) => sum + revisions[table], 0);
}

interface PeopleInput {
  readonly lineId: string;
  /** `peopleRevision` of the revisions that the rows were read at. */
  readonly base: number;
  readonly rows: readonly unknown[];
}

/**
 * Saves the typed list of people whole, over parties, roles and units. Refuses where one of them was
 * saved since `base`, where lines contradict each other, and where somebody who would be gone is
 * named by a letter or a consent.
 */
export function savePeople(act: Act, input: PeopleInput): Result<RowsSaved, RowsRefusal> {
  if (!mayDo(act.actor.role, "work-the-file")) return refusePeople("not-allowed");
  if (!Array.isArray(input.rows))
    return refusePeople("bad-value", {
      by: "These rows can’t be read; reload the page and try again",
    });
  return act.db.transaction((db) => saveIn({ ...act, db }, input), { behavior: "immediate" });
}

function saveIn(act: Act, { lineId, base, rows }: PeopleInput): Result<RowsSaved, RowsRefusal> {
  const before = getLineFile(act.db, lineId);
  if (before === null) return refusePeople("not-found", { by: "the line" });
  const closed = closedWords(before);
  if (closed !== null) return refusePeople("not-in-this-state", { by: closed });
  if (peopleRevision(getRevisions(act.db, lineId)) !== base)
    return refusePeople("changed-meanwhile", lastSave(act.db, lineId));
  const parsed = parsePeople(rows);
  if (!parsed.ok) return parsed;
  const merged = mergePeople(before, parsed.value, act.newId);
  if (!merged.ok) return refusePeople("bad-rows", { cells: merged.error.map(cellOf) });
  const after: LineFile = { ...before, ...merged.value };
  const kept = getKeptFile(act.db, lineId) ?? before;
  const refusal = refusalOf({ before, after, kept, rows: parsed.value });
  if (refusal !== null) return refusal;
  saveTables(act, { before, after, tables: PEOPLE_TABLES });
  const original = new Map(personRows(before).map((row) => [row.id, row]));
  return ok({
    revision: peopleRevision(getRevisions(act.db, lineId)),
    otherwise: peopleWritten(parsed.value, original).filter((row, at) => row !== parsed.value[at]),
  });
}

function lastSave(db: Db, lineId: string): { by: string; at: string } {
  const saves = PEOPLE_TABLES.flatMap((table) => getLastSave(db, { lineId, table }) ?? []);
  const [last] = saves.toSorted((a, b) => b.at.localeCompare(a.at));
  return { by: last?.by ?? "", at: last?.at ?? "" };
}

function parsePeople(rows: readonly unknown[]): Result<PersonRow[], RowsRefusal> {
  const good: PersonRow[] = [];
  const cells: CellProblem[] = [];
  rows.forEach((row, at) => {
    const parsed = PERSON.safeParse(row);
    if (parsed.success) good.push(parsed.data);
    else
      for (const { path, message } of parsed.error.issues)
        cells.push({ row: at, column: path.join("."), message });
  });
  return cells.length === 0 ? ok(good) : refusePeople("bad-rows", { cells });
}

const PROBLEM_WORDS: Record<PersonProblemReason, (said: string) => string> = {
  "name-missing": () => "Enter a name",
  "property-missing": () => "Choose the property, or clear the role",
  "role-missing": () => "Choose their role at the property",
  "contradicts-same-name": (said) =>
    said === ""
      ? "Another row with this name is blank here; the same name means the same person"
      : `Another row with this name says “${said}”; the same name means the same person`,
  "written-oddly": (how) => how,
  "street-missing": () =>
    "Enter the street or PO box of the mailing address, or clear the rest of it",
};

function cellOf({ row, column, reason, detail }: PersonProblem): CellProblem {
  return { row, column, message: PROBLEM_WORDS[reason](detail) };
}

function refusalOf({
  before,
  after,
  kept,
  rows,
}: {
  before: LineFile;
  after: LineFile;
  kept: LineFile;
  rows: readonly PersonRow[];
}): Result<never, RowsRefusal> | null {
  const own = nonsenseIn(after).filter(({ list }) => list === "roles");
  if (own.length > 0)
    return refusePeople("bad-rows", { cells: own.map((each) => roleCell(each, after, rows)) });
  const named = { ...after, parties: withMerged(after, before, kept) };
  const asKept = { ...named, sameParties: kept.sameParties };
  const namer = danglingReferences(asKept).find(({ to }) => to === "parties");
  if (namer === undefined) return null;
  const name = nameRow(before, "parties", namer.id);
  const { id } = (asKept[namer.from] as readonly { id: string }[])[namer.row] ?? { id: "" };
  return refusePeople("in-use", { by: `${name} is named by ${nameRow(before, namer.from, id)}` });
}

/** With those who are read as others: they stand in no list, and stay in the file. */
function withMerged(after: LineFile, before: LineFile, kept: LineFile): LineFile["parties"] {
  const shown = new Set(before.parties.map(({ id }) => id));
  return [...after.parties, ...kept.parties.filter(({ id }) => !shown.has(id))];
}

function roleCell(
  { row, path, message }: Nonsense,
  after: LineFile,
  rows: readonly PersonRow[],
): CellProblem {
  const role = after.roles[row];
  const at = rows.findIndex((each) => each.id === role?.id);
  return { row: Math.max(at, 0), column: path === "unitId" ? "unit" : path, message };
}

function refusePeople(
  reason: RowsRefusal["reason"],
  rest: Partial<Omit<RowsRefusal, "reason">> = {},
): Result<never, RowsRefusal> {
  return err({ reason, cells: [], by: "", at: "", ...rest });
}
