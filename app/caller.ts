import "server-only";
import { headers } from "next/headers";
import { callerAddress } from "#lib/caller-address.ts";
import { readEnv } from "#lib/env.ts";

/** From where a request comes, and by which browser. */
export interface CallerWords {
  /** Network address; empty where it is not known. */
  readonly address: string;
  /** What the browser calls itself. */
  readonly agent: string;
}

/**
 * The address of a proxy that hands this request on and that nobody named in `WYEBOOK_PROXY`; null
 * where there is none. Only a hint: anybody can add the header by which it is told.
 */
export async function unknownProxy(): Promise<string | null> {
  const { address } = await callerOf();
  const told = (await headers()).get("x-forwarded-for") ?? "";
  const { peerHeader } = readEnv();
  const peer = peerHeader === null ? "" : ((await headers()).get(peerHeader) ?? "");
  const isPlain = told === "" || told === peer;
  return isPlain ||
    address === "" ||
    address !== callerAddress({ peer, forwardedFor: "", proxies: [] })
    ? null
    : address;
}

export async function callerOf(): Promise<CallerWords> {
  const asked = await headers();
  const { peerHeader, proxies } = readEnv();
  const address = callerAddress({
    peer: peerHeader === null ? "" : (asked.get(peerHeader) ?? ""),
    forwardedFor: asked.get("x-forwarded-for") ?? "",
    proxies,
  });
  return { address, agent: asked.get("user-agent") ?? "" };
}
