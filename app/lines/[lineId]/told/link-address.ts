import "server-only";
import { headers } from "next/headers";
import { readEnv } from "#lib/env.ts";

/** How this office is reached: the address that is set for it, else the one that was just used. */
export async function officeAddress(): Promise<string> {
  const { address } = readEnv();
  if (address !== null) return new URL(address).origin;
  const asked = await headers();
  const scheme = asked.get("x-forwarded-proto") ?? "http";
  return `${scheme}://${asked.get("x-forwarded-host") ?? asked.get("host") ?? "localhost"}`;
}

/** Whether neighbours can open that address: no link to this very machine works elsewhere. */
export function isReachable(address: string): boolean {
  const { hostname } = new URL(address);
  return hostname !== "localhost" && !/^(127\.|\[::1\])/.test(hostname);
}
