import { eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import { office } from "#db/schema.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { wordingsInUse } from "./wording.ts";

/** One installation serves one office. */
const ONLY = 1;

/** The office, or null until it is set up. */
export function getOffice(db: Db): Office | null {
  const row = preparedOn(db, office, () =>
    db.select().from(office).where(eq(office.id, ONLY)).prepare(),
  ).get();
  if (!row) return null;
  const { id: _id, ...facts } = row;
  const wordings = wordingsInUse(db);
  return wordings.length === 0 ? facts : { ...facts, wordings };
}

export function putOffice(db: Db, { wordings: _wordings, ...facts }: Office): void {
  db.insert(office)
    .values({ id: ONLY, ...facts })
    .onConflictDoUpdate({ target: office.id, set: facts })
    .run();
}
