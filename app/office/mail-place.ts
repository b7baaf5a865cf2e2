import "server-only";
import path from "node:path";
import { readEnv } from "#lib/env.ts";

/** Where messages go: through a server, or into a folder while none is set. */
export function mailPlace(): { readonly kind: "server" | "folder"; readonly name: string } {
  const { smtp, dataFolder } = readEnv();
  if (smtp === null) return { kind: "folder", name: path.join(dataFolder, "unsent-mail") };
  return { kind: "server", name: `${smtp.host}, port ${smtp.port}` };
}

/** The mailbox that returned mail and answers are read from; null while none is set. */
export function mailboxPlace(): string | null {
  const { imap } = readEnv();
  return imap === null ? null : `${imap.user} at ${imap.host}`;
}
