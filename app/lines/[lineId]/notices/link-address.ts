import "server-only";
import { readEnv } from "#lib/env.ts";

/**
 * How neighbors reach this office: the address that was set for it; null where none was. What a
 * request calls its host never decides: it can say anything, and a link is a promise.
 */
export function officeAddress(): string | null {
  return readEnv().address;
}

/** The beginning of a link that is made by hand: without an address of the office, this computer's own. */
export function linkBase(): string {
  const { address, port } = readEnv();
  return address ?? `http://localhost:${port}`;
}
