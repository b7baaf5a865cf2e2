import { BlockList, isIP, isIPv4, isIPv6 } from "node:net";

/** What is known of where a request came from. */
export interface Caller {
  /** The address at the other end of the socket; empty where it is not known. */
  readonly peer: string;
  /** `X-Forwarded-For` as it came, from whomever. */
  readonly forwardedFor: string;
  /** The proxies whose word on that header is taken: addresses, or nets as `10.0.0.0/8`. */
  readonly proxies: readonly string[];
}

/**
 * From which network address somebody really asks: the socket's own, unless that is a proxy of this
 * office; then the last address in the proxy's list that is no proxy of ours. Empty where that can't be
 * told: a proxy that says nothing, or something that is no address. What a stranger puts into the header
 * counts for nothing.
 */
export function callerAddress({ peer, forwardedFor, proxies }: Caller): string {
  const own = plainAddress(peer);
  if (own === "" || !isIn(proxies, own)) return own;
  const told = forwardedFor.split(",").map((part) => plainAddress(part));
  return told.findLast((address) => address === "" || !isIn(proxies, address)) ?? "";
}

/** `203.0.113.7`, `2001:db8::1`: without port, brackets and the IPv6 dress of an IPv4 address; else empty. */
function plainAddress(text: string): string {
  const bare = text
    .trim()
    .replace(/^\[([^\]]+)\](:\d+)?$/, "$1")
    .replace(/^(\d+\.\d+\.\d+\.\d+):\d+$/, "$1")
    .replace(/^::ffff:(?=\d+\.\d+\.\d+\.\d+$)/i, "");
  return isIP(bare) === 0 ? "" : bare.toLowerCase();
}

/** Whether this names an address or a net: `127.0.0.1`, `::1`, `10.0.0.0/8`. */
export function isNet(text: string): boolean {
  const [address = "", prefix, ...rest] = text.split("/");
  if (rest.length > 0 || isIP(address) === 0) return false;
  if (prefix === undefined) return true;
  return /^\d{1,3}$/.test(prefix) && Number(prefix) <= (isIPv4(address) ? 32 : 128);
}

function isIn(nets: readonly string[], address: string): boolean {
  const list = new BlockList();
  for (const net of nets) {
    const [base = "", prefix] = net.split("/");
    const family = isIPv6(base) ? "ipv6" : "ipv4";
    if (prefix === undefined) list.addAddress(base, family);
    else list.addSubnet(base, Number(prefix), family);
  }
  return list.check(address, isIPv6(address) ? "ipv6" : "ipv4");
}

/**
 * Under what an address is counted by a throttle. Whoever has one IPv6 address has the 2 to the 64 of
 * its net, so that these count as one.
 */
export function countedAddress(address: string): string {
  if (!isIPv6(address)) return address;
  const [head = "", tail] = address.split("::");
  const parts = head === "" ? [] : head.split(":");
  const rest = tail === undefined || tail === "" ? [] : tail.split(":");
  const zeros = Array.from({ length: Math.max(0, 8 - parts.length - rest.length) }, () => "0");
  const all = tail === undefined ? parts : [...parts, ...zeros, ...rest];
  return `${all.slice(0, 4).join(":")}::/64`;
}
