import fc from "fast-check";
import { expect, test } from "vitest";
import { callerAddress, countedAddress, isNet } from "#lib/caller-address.ts";
import { readEnv } from "#lib/env.ts";

// Addresses for documentation: RFC 5737 and RFC 3849.
const FORGED = "198.51.100.77";

test("callerAddress() is the socket's, whatever a stranger puts into the header", () => {
  const asked = { peer: "203.0.113.7", forwardedFor: FORGED };
  expect(callerAddress({ ...asked, proxies: [] })).toBe("203.0.113.7");
  expect(callerAddress({ ...asked, proxies: ["127.0.0.1"] })).toBe("203.0.113.7");
  expect(callerAddress({ ...asked, peer: "::ffff:203.0.113.7", proxies: [] })).toBe("203.0.113.7");
  expect(callerAddress({ ...asked, peer: "", proxies: [] })).toBe("");
});

test("callerAddress() takes the word of the office's own proxies, the last that is not theirs", () => {
  const proxies = ["127.0.0.1", "::1", "10.0.0.0/8"];
  const from = (peer: string, forwardedFor: string) =>
    callerAddress({ peer, forwardedFor, proxies });
  expect(from("127.0.0.1", "203.0.113.7")).toBe("203.0.113.7");
  expect(from("::ffff:127.0.0.1", "203.0.113.7")).toBe("203.0.113.7");
  expect(from("::1", "2001:DB8::7")).toBe("2001:db8::7");
  expect(from("127.0.0.1", `${FORGED}, 203.0.113.7, 10.1.2.3`)).toBe("203.0.113.7");
  expect(from("127.0.0.1", "203.0.113.7:51234")).toBe("203.0.113.7");
  expect(from("127.0.0.1", "[2001:db8::7]:443")).toBe("2001:db8::7");
  // A proxy that says nothing, only itself, or nonsense: it is not known.
  expect(from("127.0.0.1", "")).toBe("");
  expect(from("127.0.0.1", "10.9.9.9")).toBe("");
  expect(from("127.0.0.1", `${FORGED}, unknown`)).toBe("");
});

test("callerAddress() never answers with what only a stranger said", () => {
  fc.assert(
    fc.property(fc.ipV4(), fc.array(fc.oneof(fc.ipV4(), fc.ipV6(), fc.string())), (peer, said) => {
      const proxies = ["192.0.2.1"];
      fc.pre(peer !== "192.0.2.1");
      expect(callerAddress({ peer, forwardedFor: said.join(","), proxies })).toBe(peer);
    }),
  );
});

test("countedAddress() counts an IPv6 net of one subscriber as one", () => {
  expect(countedAddress("203.0.113.7")).toBe("203.0.113.7");
  expect(countedAddress("2001:db8:1:2:3:4:5:6")).toBe("2001:db8:1:2::/64");
  expect(countedAddress("2001:db8:1:2::9")).toBe("2001:db8:1:2::/64");
  expect(countedAddress("2001:db8::9")).toBe("2001:db8:0:0::/64");
  expect(countedAddress("::1")).toBe("0:0:0:0::/64");
  expect(countedAddress("")).toBe("");
});

test("readEnv() takes proxies as addresses and nets, and refuses anything else in words", () => {
  const proxies = (text: string) => readEnv({ WYEBOOK_PROXY: text }).proxies;
  expect(proxies("127.0.0.1, ::1,10.0.0.0/8")).toEqual(["127.0.0.1", "::1", "10.0.0.0/8"]);
  expect(readEnv({}).proxies).toEqual([]);
  for (const wrong of ["*", "proxy.example.com", "10.0.0.0/33", "10.0.0", "::/129"]) {
    expect(isNet(wrong), wrong).toBe(false);
    expect(() => proxies(wrong)).toThrow(/WYEBOOK_PROXY/);
  }
});

test("readEnv() takes an address that people can type, and refuses what is none", () => {
  expect(readEnv({ WYEBOOK_ADDRESS: "https://office.example.com/" }).address).toBe(
    "https://office.example.com",
  );
  expect(readEnv({ WYEBOOK_ADDRESS: "" }).address).toBeNull();
  for (const wrong of ["office.example.com", "ftp://office.example.com", "https://a b"])
    expect(() => readEnv({ WYEBOOK_ADDRESS: wrong })).toThrow(/WYEBOOK_ADDRESS/);
});
