import "server-only";
import { readEnv } from "#lib/env.ts";

/**
 * Whether a request that changes something comes from a page of ours. Server actions check this by
 * themselves; route handlers have to. A browser names its page's origin on every such request.
 */
export function isFromOwnPage(request: Request): boolean {
  const origin = request.headers.get("origin");
  if (origin === null) return false;
  const address = readEnv().address;
  if (address !== null && origin === new URL(address).origin) return true;
  const host = request.headers.get("host");
  return host !== null && URL.canParse(origin) && new URL(origin).host === host;
}
