import { and, eq, type SQL, sql } from "drizzle-orm";
import type { SQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import { foldText } from "#db/fold-text.ts";
import type { Db } from "#db/open.ts";
import {
  agreements,
  entries,
  inspections,
  lines,
  locateTickets,
  parties,
  permits,
  properties,
  records,
  runs,
  scope,
  tieIns,
  uploads,
} from "#db/schema.ts";
import type { Question } from "#lib/domain/desk/answer.ts";

/** Something in the files that holds every word that was looked for. */
export interface SearchHit {
  readonly lineId: string;
  readonly lineName: string;
  /** What it is, in words: `property`, `permit record`. */
  readonly kind: string;
  /** What it is called. */
  readonly title: string;
  /** What else it holds, for telling it from others. */
  readonly detail: string;
  /** The page of the file that shows it; null: the file itself. */
  readonly question: Question | null;
}

interface Place {
  readonly kind: string;
  readonly question: Question | null;
  readonly table: SQLiteTable;
  readonly lineId: SQLiteColumn;
  readonly title: SQL | SQLiteColumn;
  readonly detail: SQL;
}

const MOST_PER_KIND = 50;

/** An address that is kept as JSON, as one text. */
function addressWords(column: SQLiteColumn): SQL {
  const parts = ["street", "unit", "city", "state", "zip"].map(
    (part) => sql`coalesce(json_extract(${column}, ${sql.raw(`'$.${part}'`)}), '')`,
  );
  return joined(parts);
}

function joined(parts: readonly (SQL | SQLiteColumn)[]): SQL {
  return sql.join([...parts], sql.raw(" || ' ' || "));
}

const street = sql`trim(json_extract(${properties.address}, '$.street') || ' ' || json_extract(${properties.address}, '$.unit'))`;

const PLACES: readonly Place[] = [
  {
    kind: "property",
    question: "who",
    table: properties,
    lineId: properties.lineId,
    title: street,
    detail: joined([
      addressWords(properties.address),
      properties.parcel,
      properties.legalDescription,
      properties.note,
    ]),
  },
  {
    kind: "party",
    question: "who",
    table: parties,
    lineId: parties.lineId,
    title: parties.name,
    detail: joined([
      sql`coalesce(${addressWords(parties.mailing)}, '')`,
      parties.email,
      parties.phone,
      parties.needs,
      parties.note,
    ]),
  },
  {
    kind: "permit record",
    question: "record",
    table: records,
    lineId: records.lineId,
    title: records.title,
    detail: joined([records.number, records.dated, records.note]),
  },
  {
    kind: "record entry",
    question: "record",
    table: entries,
    lineId: entries.lineId,
    title: entries.label,
    detail: joined([entries.explanation, entries.note]),
  },
  {
    kind: "run",
    question: "camera",
    table: runs,
    lineId: runs.lineId,
    title: runs.name,
    detail: joined([runs.ranOn, runs.operator, runs.accessPoint, runs.note]),
  },
  {
    kind: "tie-in",
    question: "agree",
    table: tieIns,
    lineId: tieIns.lineId,
    title: tieIns.label,
    detail: joined([tieIns.settledReason, tieIns.note]),
  },
  {
    kind: "agreement",
    question: "answers",
    table: agreements,
    lineId: agreements.lineId,
    title: agreements.title,
    detail: joined([agreements.recordingNumber, agreements.terms]),
  },
  {
    kind: "scope item",
    question: "cost",
    table: scope,
    lineId: scope.lineId,
    title: scope.title,
    detail: joined([scope.allegedCause, scope.note]),
  },
  {
    kind: "permit",
    question: "authority",
    table: permits,
    lineId: permits.lineId,
    title: permits.number,
    detail: joined([permits.note]),
  },
  {
    kind: "locate ticket",
    question: "next",
    table: locateTickets,
    lineId: locateTickets.lineId,
    title: locateTickets.number,
    detail: joined([locateTickets.calledOn, locateTickets.note]),
  },
  {
    kind: "inspection",
    question: "authority",
    table: inspections,
    lineId: inspections.lineId,
    title: inspections.title,
    detail: joined([inspections.inspector, inspections.note]),
  },
  {
    kind: "stored file",
    question: "happened",
    table: uploads,
    lineId: uploads.lineId,
    title: uploads.name,
    detail: joined([uploads.note]),
  },
];

/**
 * Everything that holds every word of `text`, whatever its capitals and accents: lines first, then
 * what is on them. Nothing for an empty text.
 */
export function search(db: Db, text: string): SearchHit[] {
  const wanted = foldText(text)
    .split(" ")
    .filter((word) => word !== "");
  if (wanted.length === 0) return [];
  return [...linesWith(db, wanted), ...PLACES.flatMap((place) => rowsWith(db, place, wanted))];
}

function linesWith(db: Db, wanted: readonly string[]): SearchHit[] {
  const found = db
    .select()
    .from(lines)
    .where(holdsAll(joined([lines.name, lines.town, lines.mainNote, lines.note]), wanted))
    .limit(MOST_PER_KIND)
    .all();
  return found.map(({ id, name, town }) => ({
    lineId: id,
    lineName: name,
    kind: "line",
    title: name,
    detail: town,
    question: null,
  }));
}

function rowsWith(db: Db, place: Place, wanted: readonly string[]): SearchHit[] {
  const { kind, question, table, lineId, title, detail } = place;
  return db
    .select({
      lineId: sql<string>`${lineId}`,
      lineName: lines.name,
      title: sql<string>`${title}`,
      detail: sql<string>`${detail}`,
    })
    .from(table)
    .innerJoin(lines, eq(lines.id, lineId))
    .where(holdsAll(sql`${title} || ' ' || ${detail}`, wanted))
    .limit(MOST_PER_KIND)
    .all()
    .map((row) => ({
      ...row,
      detail: row.detail.replace(/\s+/g, " ").trim(),
      kind,
      question,
    }));
}

function holdsAll(words: SQL, wanted: readonly string[]): SQL | undefined {
  return and(...wanted.map((word) => sql`instr(fold_text(${words}), ${word}) > 0`));
}
