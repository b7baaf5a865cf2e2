import { logSignIn, removeSession } from "#db/queries/session.ts";
import { getUserOfSession } from "#db/queries/user.ts";
import type { Act } from "./act.ts";
import { accountOf } from "./throttle.ts";

interface Leaving {
  readonly tokenHash: string;
  /** Network address; empty where it is not known. */
  readonly address: string;
  readonly agent: string;
}

/** Ends a session on the server's side; the secret in the browser is worth nothing afterwards. */
export function signOut(
  { db, now }: Pick<Act, "db" | "now">,
  { tokenHash, address, agent }: Leaving,
): void {
  db.transaction(
    (one) => {
      const user = getUserOfSession(one, tokenHash, now);
      removeSession(one, tokenHash);
      if (user === null) return;
      const from = { address: address.slice(0, 100), agent: agent.slice(0, 400) };
      logSignIn(one, { at: now, what: "signed-out", account: accountOf(user.email), ...from });
    },
    { behavior: "immediate" },
  );
}
