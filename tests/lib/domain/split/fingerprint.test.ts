import { expect, test } from "vitest";
import { canonicalJson, fingerprint } from "#lib/domain/split/fingerprint.ts";

// Fowler, Noll & Vo's own test vectors for FNV-1a, 64 bits (draft-eastlake-fnv, appendix C), from memory.
test.each([
  ["", "cbf29ce484222325"],
  ["a", "af63dc4c8601ec8c"],
  ["foobar", "85944171f73967e8"],
])("fingerprint(%j) is the published %s", (text, hash) => {
  expect(fingerprint(text)).toBe(hash);
});

test("fingerprint() agrees with the definition in whole numbers of any length", () => {
  const plain = (text: string) => {
    let hash = 0xcbf29ce484222325n;
    for (const byte of new TextEncoder().encode(text)) {
      hash = ((hash ^ BigInt(byte)) * 0x100000001b3n) % 2n ** 64n;
    }
    return hash.toString(16).padStart(16, "0");
  };
  for (const text of ["$18,640.00", "Calle Peña ½ — 12", "x".repeat(1_000)]) {
    expect(fingerprint(text)).toBe(plain(text));
  }
});

test("canonicalJson() reads the same whatever the order of the keys", () => {
  expect(canonicalJson({ b: [1, { d: null, c: "x" }], a: true })).toBe(
    '{"a":true,"b":[1,{"c":"x","d":null}]}',
  );
});
