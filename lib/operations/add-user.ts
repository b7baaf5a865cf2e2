import { getAccount, insertUser } from "#db/queries/user.ts";
import { mayDo, type User, type UserRole } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";
import { parse } from "./parse.ts";
import { checkPassword, hashPassword } from "./password.ts";
import { UserShape } from "./user-shape.ts";

interface NewUser {
  readonly name: string;
  readonly email: string;
  readonly role: UserRole;
  readonly password: string;
}

/** Adds a person who may sign in. Refuses an address that has an account. */
export async function addUser(
  act: Act,
  input: NewUser,
): Promise<Result<{ userId: string }, Refusal>> {
  if (!mayDo(act.actor.role, "run-the-office")) return refuse("not-allowed");
  const person = parse(UserShape, input);
  if (!person.ok) return person;
  const password = checkPassword(input.password, [input.email, input.name]);
  if (!password.ok) return password;
  const passwordHash = await hashPassword(password.value);
  const user: User = { ...person.value, id: act.newId(), disabled: false };
  return changeOffice(act, { deed: "run-the-office", action: "add-user" }, (db) => {
    if (getAccount(db, user.email) !== null)
      return refuse("already-there", "email", "Someone already has this email address");
    return ok({
      value: { userId: user.id },
      sentence: `Added ${user.name} as ${user.role}.`,
      detail: user,
      write: (one) => insertUser(one, { user, passwordHash, at: act.now }),
    });
  });
}
