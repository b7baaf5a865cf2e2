import { getOffice, putOffice } from "#db/queries/office.ts";
import { insertUser, listUsers } from "#db/queries/user.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import type { User } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse, tell } from "./change.ts";
import { OfficeShape } from "./office-shape.ts";
import { parse } from "./parse.ts";
import { checkPassword, hashPassword } from "./password.ts";
import { UserShape } from "./user-shape.ts";

interface SetUp {
  readonly office: Office;
  /** Becomes the first admin. */
  readonly user: { readonly name: string; readonly email: string; readonly password: string };
}

/**
 * The first thing that happens to a new installation: the office and its first admin. Refused once
 * there is either, so that nobody makes themselves an admin later.
 */
export async function setUpOffice(
  act: Omit<Act, "actor">,
  { office, user }: SetUp,
): Promise<Result<{ user: User }, Refusal>> {
  const facts = parse(OfficeShape, office);
  if (!facts.ok) return facts;
  const person = parse(UserShape, { ...user, role: "admin" });
  if (!person.ok) return person;
  const password = checkPassword(user.password, [user.email, user.name, facts.value.name]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  const first: User = { ...person.value, id: act.newId(), disabled: false };
  return act.db.transaction(
    (db) => {
      if (getOffice(db) !== null || listUsers(db).length > 0)
        return refuse("already-there", "", "The office is set up already");
      putOffice(db, facts.value);
      insertUser(db, { user: first, passwordHash, at: act.now });
      const sentence = `Set up ${facts.value.name}, with ${first.name} as its first admin.`;
      tell(
        { ...act, db, actor: first },
        { lineId: null, action: "set-up-office", sentence, detail: { office: facts.value } },
      );
      return ok({ user: first });
    },
    { behavior: "immediate" },
  );
}
