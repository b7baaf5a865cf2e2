import { asc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import {
  authorities,
  clockRules,
  fees,
  forms,
  holidays,
  refusalSteps,
  requirements,
  rules,
} from "#db/schema.ts";
import type { Authority } from "#lib/domain/facts/authority.ts";
import { checkReferencesAtEnd } from "./row.ts";

/** Every authority with its rules, requirements, fees, clock rules and holidays, by name. */
export function listAuthorities(db: Db): Authority[] {
  const found = db
    .select({ id: authorities.id })
    .from(authorities)
    .orderBy(sql`fold_text(${authorities.name})`)
    .all();
  return found.flatMap(({ id }) => getAuthority(db, id) ?? []);
}

export function getAuthority(db: Db, authorityId: string): Authority | null {
  const authority = db.select().from(authorities).where(eq(authorities.id, authorityId)).get();
  if (!authority) return null;
  return {
    ...authority,
    rules: partsOf(
      db
        .select()
        .from(rules)
        .where(eq(rules.authorityId, authorityId))
        .orderBy(asc(rules.position))
        .all(),
    ),
    requirements: partsOf(
      db
        .select()
        .from(requirements)
        .where(eq(requirements.authorityId, authorityId))
        .orderBy(asc(requirements.position))
        .all(),
    ),
    fees: partsOf(
      db
        .select()
        .from(fees)
        .where(eq(fees.authorityId, authorityId))
        .orderBy(asc(fees.position))
        .all(),
    ),
    clockRules: partsOf(
      db
        .select()
        .from(clockRules)
        .where(eq(clockRules.authorityId, authorityId))
        .orderBy(asc(clockRules.position))
        .all(),
    ),
    holidays: partsOf(
      db
        .select()
        .from(holidays)
        .where(eq(holidays.authorityId, authorityId))
        .orderBy(asc(holidays.position))
        .all(),
    ),
    refusalSteps: partsOf(
      db
        .select()
        .from(refusalSteps)
        .where(eq(refusalSteps.authorityId, authorityId))
        .orderBy(asc(refusalSteps.position))
        .all(),
    ),
  };
}

function partsOf<T extends { position: number }>(rows: T[]): Omit<T, "position">[] {
  return rows.map(({ position: _position, ...part }) => part);
}

const PARTS = { rules, requirements, fees, clockRules, holidays, refusalSteps };

/**
 * Puts an authority in the place of the one with its id, or adds it: inside of a transaction, since
 * its parts are written anew while lines name its rules.
 */
export function putAuthority(db: Db, authority: Authority): void {
  checkReferencesAtEnd(db);
  const {
    rules: _1,
    requirements: _2,
    fees: _3,
    clockRules: _4,
    holidays: _5,
    refusalSteps: _6,
    ...facts
  } = authority;
  db.insert(authorities)
    .values(facts)
    .onConflictDoUpdate({ target: authorities.id, set: facts })
    .run();
  for (const name of Object.keys(PARTS) as (keyof typeof PARTS)[]) {
    const table = PARTS[name];
    db.delete(table).where(eq(table.authorityId, authority.id)).run();
    authority[name].forEach((part, position) => {
      db.insert(table)
        .values({ ...part, authorityId: authority.id, position } as never)
        .run();
    });
  }
}

/** Takes an authority out with all its parts; a line that lies with it would be left without one. */
export function deleteAuthority(db: Db, authorityId: string): void {
  for (const table of Object.values(PARTS))
    db.delete(table).where(eq(table.authorityId, authorityId)).run();
  db.delete(forms).where(eq(forms.authorityId, authorityId)).run();
  db.delete(authorities).where(eq(authorities.id, authorityId)).run();
}
