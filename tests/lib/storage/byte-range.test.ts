import fc from "fast-check";
import { expect, test } from "vitest";
import { parseContentRange, parseRange } from "#lib/storage/byte-range.ts";

// RFC 9110, sections 14.1.2 and 14.2, from memory: the examples for a representation of 10000 bytes.
test.each([
  ["bytes=0-499", { from: 0, to: 499 }],
  ["bytes=500-999", { from: 500, to: 999 }],
  ["bytes=-500", { from: 9_500, to: 9_999 }],
  ["bytes=9500-", { from: 9_500, to: 9_999 }],
  ["bytes=0-0", { from: 0, to: 0 }],
  ["bytes=-20000", { from: 0, to: 9_999 }],
  ["bytes=9999-20000", { from: 9_999, to: 9_999 }],
  ["bytes=10000-", "unsatisfiable"],
  ["bytes=-0", "unsatisfiable"],
  ["bytes=0-0,-1", "whole"],
  ["bytes=5-4", "whole"],
  ["bytes=-", "whole"],
  ["lines=1-2", "whole"],
  ["bytes=one-two", "whole"],
  [null, "whole"],
] as const)("parseRange(%j) of 10000 bytes", (header, range) => {
  expect(parseRange(header, 10_000)).toEqual(range);
});

test("parseRange() never leaves the file and never turns round", () => {
  const part = fc.oneof(fc.constant(""), fc.nat(300).map(String));
  fc.assert(
    fc.property(part, part, fc.nat(200), (first, last, size) => {
      const range = parseRange(`bytes=${first}-${last}`, size);
      if (typeof range === "string") return;
      expect(range.from).toBeGreaterThanOrEqual(0);
      expect(range.from).toBeLessThanOrEqual(range.to);
      expect(range.to).toBeLessThan(size);
    }),
  );
});

test("parseContentRange() reads what a piece says of itself, and refuses what cannot be", () => {
  expect(parseContentRange("bytes 0-99/1000")).toEqual({ from: 0, length: 100, total: 1_000 });
  expect(parseContentRange("bytes */1000")).toEqual({ from: 0, length: 0, total: 1_000 });
  for (const wrong of ["bytes 9-8/10", "bytes 0-10/10", "bytes 0-9/*", "", null])
    expect(parseContentRange(wrong)).toBeNull();
});
