import { eq, exists, or, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { ledger, lines, notices, permits, replies } from "#db/schema.ts";
import type { LineFacts } from "#lib/domain/facts/line.ts";

export function getLine(db: Db, lineId: string): LineFacts | null {
  const selected = preparedOn(db, lines, () =>
    db
      .select()
      .from(lines)
      .where(eq(lines.id, sql.placeholder("lineId")))
      .prepare(),
  );
  return selected.get({ lineId }) ?? null;
}

/** Every line: open ones first, the newest first among them. */
export function listLines(db: Db): LineFacts[] {
  return db
    .select()
    .from(lines)
    .orderBy(sql`${lines.closedOn} is not null`, sql`${lines.openedOn} desc`, lines.name)
    .all();
}

export function insertLine(db: Db, line: LineFacts): void {
  db.insert(lines).values(line).run();
}

export function updateLine(db: Db, { id, ...facts }: LineFacts): void {
  db.update(lines).set(facts).where(eq(lines.id, id)).run();
}

const HOLDING = { permits, ledger, notices, replies };

/** The lines that hold a row of any of these lists, by name. */
export function lineIdsWith(db: Db, lists: readonly (keyof typeof HOLDING)[]): string[] {
  const held = lists.map((list) => {
    const table = HOLDING[list];
    return exists(db.select({ one: sql`1` }).from(table).where(eq(table.lineId, lines.id)));
  });
  return db
    .select({ id: lines.id })
    .from(lines)
    .where(or(...held))
    .orderBy(lines.name, lines.id)
    .all()
    .map(({ id }) => id);
}
