import fc from "fast-check";
import { expect, test } from "vitest";
import {
  CODE_CHANCE,
  CODE_SIGNS,
  linkCode,
  readCode,
  shownCode,
} from "#lib/domain/consent/link-code.ts";

const chance = fc.array(fc.nat({ max: CODE_SIGNS - 1 }), {
  minLength: CODE_CHANCE,
  maxLength: CODE_CHANCE,
});

test("a code is read however it is typed", () => {
  fc.assert(
    fc.property(chance, (numbers) => {
      const code = linkCode(numbers);
      expect(shownCode(code)).toMatch(/^\w{4}-\w{4}-\w{4}$/);
      for (const typed of [code, shownCode(code), shownCode(code).toLowerCase(), ` ${code} `])
        expect(readCode(typed)).toBe(code);
    }),
  );
});

test("one wrong sign is always found", () => {
  const place = fc.nat({ max: CODE_CHANCE });
  fc.assert(
    fc.property(chance, place, fc.integer({ min: 1, max: CODE_SIGNS - 1 }), (numbers, at, more) => {
      const signs = "23456789BCDFGHJKMNPQRSTVWXYZ";
      const code = linkCode(numbers);
      const wrong = signs[(signs.indexOf(code[at] ?? "") + more) % signs.length];
      expect(readCode(`${code.slice(0, at)}${wrong}${code.slice(at + 1)}`)).toBeNull();
    }),
  );
});

test("a code has no signs that are taken for others, and spells no words", () => {
  const code = linkCode([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  expect(code).not.toMatch(/[01ILOAEU]/);
  expect(readCode("")).toBeNull();
  expect(readCode("AAAA-AAAA-AAAA")).toBeNull();
  expect(() => linkCode([1, 2])).toThrow(RangeError);
});

test("codes are as many as their arithmetic says", () => {
  const codes = CODE_SIGNS ** CODE_CHANCE;
  expect(codes).toBeGreaterThan(8.2e15);
  // A thousand addresses with 30 tries in each quarter of an hour against a thousand open codes.
  const triesADay = 1_000 * 30 * 4 * 24;
  expect(codes / 1_000 / triesADay).toBeGreaterThan(2.8e6);
});
