import "server-only";
import { headers } from "next/headers";
import { callerAddress } from "#lib/caller-address.ts";
import { readEnv } from "#lib/env.ts";

/** From which network address this request really comes; empty where that is not known. */
export async function networkAddress(): Promise<string> {
  return addressIn(await headers());
}

function addressIn(asked: Pick<Headers, "get">): string {
  const { peerHeader, proxies } = readEnv();
  return callerAddress({
    peer: peerHeader === null ? "" : (asked.get(peerHeader) ?? ""),
    forwardedFor: asked.get("x-forwarded-for") ?? "",
    proxies,
  });
}
