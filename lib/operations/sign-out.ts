import { removeSession } from "#db/queries/session.ts";
import type { Act } from "./act.ts";

/** Ends a session on the server's side; the secret in the browser is worth nothing afterwards. */
export function signOut({ db }: Pick<Act, "db">, tokenHash: string): void {
  removeSession(db, tokenHash);
}
