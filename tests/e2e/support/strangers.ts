import type Database from "better-sqlite3";
import { formatCents } from "#lib/domain/money/format-cents.ts";

/**
 * What must not reach the reader of one letter: every id of its line (but of their letter's own PDF and
 * of the version that it puts to them to sign), everyone else's name, phone and email, the addresses
 * and amounts of others that the letter itself does not tell.
 */
export function strangersOf(
  db: Database.Database,
  { lineId, noticeId }: { readonly lineId: string; readonly noticeId: string },
): string[] {
  const all = <Row>(query: string, ...given: string[]) => db.prepare(query).all(...given) as Row[];
  const [letter] = all<Own>(
    "select party_id as party, frozen_json as frozen, upload_id as paper, split_id as split from notices where id = ?",
    noticeId,
  );
  if (letter === undefined) throw new Error("No such letter");
  const people = all<{ name: string; email: string; phone: string }>(
    "select name, email, phone from parties where line_id = ? and id <> ?",
    ...[lineId, letter.party],
  ).flatMap(({ name, email, phone }) => [name, email, phone]);
  const streets = all<{ street: string }>(
    "select address_json ->> 'street' as street from properties where line_id = ?",
    lineId,
  ).map(({ street }) => street);
  const amounts = all<{ cents: number }>(
    "select value ->> 'amount' as cents from splits, json_each(splits.shares_json) where line_id = ?",
    lineId,
  ).map(({ cents }) => formatCents(cents));
  const told = (words: string) => !letter.frozen.includes(words);
  const ids = idsOf(db, lineId).filter((id) => id !== letter.paper && id !== letter.split);
  return [...ids, ...[...people, ...streets, ...amounts].filter(told)].filter(
    (one) => one.length > 3,
  );
}

interface Own {
  readonly party: string;
  readonly frozen: string;
  readonly paper: string | null;
  readonly split: string | null;
}

/** The line's own id, and that of each of its rows, whatever the table. */
function idsOf(db: Database.Database, lineId: string): string[] {
  const tables = db
    .prepare(
      "select m.name from sqlite_master m where m.type = 'table' and 2 = (select count(*) from pragma_table_info(m.name) where name in ('id', 'line_id'))",
    )
    .pluck()
    .all() as string[];
  const ids = tables.flatMap(
    (name) =>
      db.prepare(`select id from "${name}" where line_id = ?`).pluck().all(lineId) as string[],
  );
  return [lineId, ...ids.map(String)];
}
