import { asc, eq, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { preparedOn } from "#db/prepared.ts";
import {
  authorities,
  clockRules,
  conditions,
  drawingItems,
  fees,
  forms,
  holidays,
  inspectionKinds,
  pavementRules,
  permitOrders,
  proofRules,
  refusalSteps,
  requirements,
  rules,
  scales,
  statutoryPapers,
} from "#db/schema.ts";
import {
  AUTHORITY_PART_NAMES,
  type Authority,
  type AuthorityPart,
  eachPart,
} from "#lib/domain/facts/authority.ts";
import { checkReferencesAtEnd } from "./row.ts";

/** Every authority with its rules, requirements, fees, clock rules and holidays, by name. */
export function listAuthorities(db: Db): Authority[] {
  return listAuthorityNames(db).flatMap(({ id }) => getAuthority(db, id) ?? []);
}

/** What authorities are called, by name. */
export function listAuthorityNames(db: Db): Pick<Authority, "id" | "name">[] {
  return db
    .select({ id: authorities.id, name: authorities.name })
    .from(authorities)
    .orderBy(sql`fold_text(${authorities.name})`)
    .all();
}

export function getAuthority(db: Db, authorityId: string): Authority | null {
  const authority = preparedOn(db, authorities, () =>
    db
      .select()
      .from(authorities)
      .where(eq(authorities.id, sql.placeholder("authorityId")))
      .prepare(),
  ).get({ authorityId });
  if (!authority) return null;
  return { ...authority, ...eachPart((part) => partRows(db, part, authorityId)) } as Authority;
}

/** The table of each part. */
const PARTS = {
  rules,
  requirements,
  fees,
  inspectionKinds,
  clockRules,
  holidays,
  refusalSteps,
  conditions,
  permitOrders,
  pavementRules,
  drawingItems,
  scales,
  proofRules,
  statutoryPapers,
} satisfies Record<AuthorityPart, unknown>;

function partRows(db: Db, part: AuthorityPart, authorityId: string): object[] {
  // Every part is keyed and ordered alike; which one it is makes no difference here.
  const table = PARTS[part] as typeof rules;
  const selected = preparedOn(db, table, () =>
    db
      .select()
      .from(table)
      .where(eq(table.authorityId, sql.placeholder("authorityId")))
      .orderBy(asc(table.position))
      .prepare(),
  );
  return selected.all({ authorityId }).map(({ position: _position, ...row }) => row);
}

/**
 * Puts an authority in the place of the one with its id, or adds it: inside of a transaction, since
 * its parts are written anew while lines name its rules.
 */
export function putAuthority(db: Db, authority: Authority): void {
  checkReferencesAtEnd(db);
  const facts = Object.fromEntries(
    Object.entries(authority).filter(([name]) => !(name in PARTS)),
  ) as Omit<Authority, AuthorityPart>;
  db.insert(authorities)
    .values(facts)
    .onConflictDoUpdate({ target: authorities.id, set: facts })
    .run();
  for (const name of AUTHORITY_PART_NAMES) {
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
