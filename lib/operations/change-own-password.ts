import { removeSessionsOf } from "#db/queries/session.ts";
import { getAccount, getUser, setPasswordHash } from "#db/queries/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse, tell } from "./change.ts";
import { checkPassword, hashPassword, isPassword } from "./password.ts";
import { accountOf, takeBackTry, takeTry } from "./throttle.ts";

interface OwnPassword {
  readonly current: string;
  readonly password: string;
  /** The session that asks: it goes on, and every other one of this person ends. */
  readonly tokenHash: string;
  /** Network address; empty where it is not known. */
  readonly address: string;
}

/**
 * Sets a person's own password, whatever their role. Refuses without the one that holds now, which is
 * throttled as a sign-in is, and a new one that is too easy to guess or the same.
 */
export async function changeOwnPassword(
  act: Act,
  { current, password, tokenHash, address }: OwnPassword,
): Promise<Result<null, Refusal>> {
  const user = getUser(act.db, act.actor.id);
  if (user === null) return refuse("not-found", "", "your account");
  const wanted = checkPassword(password, [user.email, user.name]);
  if (!wanted.ok) return wanted;
  if (wanted.value === current)
    return refuse("bad-value", "password", "This is the password that you have; take another one");
  const trier = { account: accountOf(user.email), address: address.slice(0, 100) };
  const taken = act.db.transaction((db) => takeTry(db, trier, act.now), { behavior: "immediate" });
  if ("wait" in taken) return refuse("not-in-this-state", "", `Wait ${taken.wait}: too many tries`);
  const account = getAccount(act.db, user.email);
  if (!(await isPassword(current, account?.passwordHash ?? null)))
    return refuse("bad-value", "current", "This is not the password that you have now");
  const passwordHash = await hashPassword(wanted.value);
  return act.db.transaction(
    (db) => {
      const now = getAccount(db, user.email);
      if (now === null || now.user.disabled || now.passwordHash !== account?.passwordHash)
        return refuse("changed-meanwhile", "current");
      takeBackTry(db, taken);
      setPasswordHash(db, user.id, passwordHash);
      removeSessionsOf(db, user.id, { but: tokenHash });
      const sentence = `${user.name} changed their own password.`;
      tell({ ...act, db }, { lineId: null, action: "change-own-password", sentence, detail: {} });
      return ok(null);
    },
    { behavior: "immediate" },
  );
}
