import { eq, sql } from "drizzle-orm";
import { foldText } from "#db/fold-text.ts";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { lines, searchTexts } from "#db/schema.ts";
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

/** The page that shows each kind of thing. */
const SHOWN_BY: Readonly<Record<string, Question>> = {
  property: "who",
  party: "who",
  "permit record": "record",
  "record entry": "record",
  run: "camera",
  "tie-in": "reconcile",
  agreement: "responsibility",
  "scope item": "cost",
  permit: "authority",
  "locate ticket": "schedule",
  inspection: "authority",
  "stored file": "history",
};

/** So many hits are shown at once. */
export const MOST_HITS = 200;

/**
 * What holds every word of `text` in one entry, each from the beginning of a word on, whatever
 * capitals and accents: lines first, then the best matches, names before notes. At most `MOST_HITS`;
 * nothing for an empty text.
 */
export function search(db: Db, text: string): SearchHit[] {
  const wanted = matchOf(text);
  if (wanted === "") return [];
  const found = preparedOn(db, "search", () => selectHits(db)).all({ wanted });
  return found.map(({ kind, detail, ...hit }) => ({
    ...hit,
    kind,
    detail: detail.replace(/\s+/g, " ").trim(),
    question: SHOWN_BY[kind] ?? null,
  }));
}

function selectHits(db: Db) {
  return db
    .select({
      lineId: lines.id,
      lineName: lines.name,
      kind: searchTexts.kind,
      title: searchTexts.title,
      detail: searchTexts.detail,
    })
    .from(sql`search_index`)
    .innerJoin(searchTexts, eq(searchTexts.id, sql`search_index.rowid`))
    .innerJoin(lines, eq(lines.id, searchTexts.lineId))
    .where(sql`search_index MATCH ${sql.placeholder("wanted")}`)
    .orderBy(sql`${searchTexts.kind} <> 'line'`, sql`bm25(search_index, 5.0, 1.0)`)
    .limit(MOST_HITS)
    .prepare();
}

/** Every word as the beginning of one, in the full-text index's own language; none of its operators. */
function matchOf(text: string): string {
  return foldText(text)
    .split(" ")
    .filter((word) => /[\p{L}\p{N}]/u.test(word))
    .map((word) => `"${word.replaceAll('"', '""')}" *`)
    .join(" ");
}
