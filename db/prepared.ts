import type { Db } from "./open.ts";

const kept = new WeakMap<object, Map<unknown, unknown>>();

/**
 * A statement of a database, written and prepared at its first use and kept as long as the database:
 * writing the SQL anew costs several times what running it does. `key` tells it from the others.
 * A transaction has its own database's session, so what is kept serves inside of one too.
 */
export function preparedOn<Q>(db: Db, key: unknown, make: () => Q): Q {
  const session: object = Reflect.get(db, "session");
  const statements = kept.get(session) ?? new Map<unknown, unknown>();
  kept.set(session, statements);
  const known = statements.get(key);
  if (known !== undefined) return known as Q;
  const made = make();
  statements.set(key, made);
  return made;
}
