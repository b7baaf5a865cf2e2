import "server-only";
import path from "node:path";
import { readEnv } from "#lib/env.ts";

/** Where messages go: through a server, or into a folder while none is set. */
export function mailPlace(): { readonly kind: "server" | "folder"; readonly name: string } {
  return { kind: "folder", name: path.join(readEnv().dataFolder, "unsent-mail") };
}
