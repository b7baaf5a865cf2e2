import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spokenNumber } from "#lib/domain/narration/number/spoken-number.ts";

const read = (text: string) => spokenNumber(text.replaceAll("-", " ").split(" "), 0)?.value ?? null;

describe("spokenNumber()", () => {
  test.each([
    ["thirty-four", 3400],
    ["ninety-eight six", 9860],
    ["thirty four point five", 3450],
    ["thirty-four and a half", 3450],
    ["thirty-four and three quarters", 3475],
    ["twelve point oh five", 1205],
    ["one oh two", 10_200],
    ["one oh two point five", 10_250],
    ["one fourteen", 11_400],
    ["two twenty-six", 22_600],
    ["a hundred and two", 10_200],
    ["hundred four", 10_400],
    ["forty-one and six tenths", 4160],
    ["98.6", 9860],
    ["98 6", 9860],
    [".5", 50],
    ["zero", 0],
    ["1+02.5", 10_250],
  ])("reads %s", (text, value) => {
    expect(read(text)).toBe(value);
  });

  test.each([
    ["forty-one six inch", 4100],
    ["forty-one two cracks", 4100],
    ["forty-one one on the left", 4100],
    ["forty-one four by four", 4100],
    ["nine nine and a half", 900],
    ["six six and a quarter", 600],
  ])("takes no tenths from what counts or measures something else: %s", (text, value) => {
    expect(read(text)).toBe(value);
  });

  test("finds no number where none stands", () => {
    expect(read("wye on the left")).toBeNull();
    expect(read("a wye")).toBeNull();
  });

  test("reads back every tenth up to 199.9 as it is spoken", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 199 }),
        fc.integer({ min: 0, max: 9 }),
        (whole, tenth) => {
          expect(read(`${inWords(whole)} point ${DIGITS[tenth]}`)).toBe(whole * 100 + tenth * 10);
          if (whole > 9)
            expect(read(`${inWords(whole)} ${DIGITS[tenth]}`)).toBe(readOff(whole, tenth));
        },
      ),
    );
  });
});

const DIGITS = "zero one two three four five six seven eight nine".split(" ");
const TEENS =
  "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split(" ");
const TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split(" ");

function inWords(whole: number): string {
  if (whole >= 100) return whole === 100 ? "one hundred" : `a hundred and ${inWords(whole - 100)}`;
  if (whole < 10) return DIGITS[whole] ?? "";
  if (whole < 20) return TEENS[whole - 10] ?? "";
  const ten = TENS[Math.floor(whole / 10) - 2] ?? "";
  return whole % 10 === 0 ? ten : `${ten}-${DIGITS[whole % 10]}`;
}

/** `forty` and `six` is 46, `one hundred` and `six` is 106: only a number that is full takes tenths. */
function readOff(whole: number, tenth: number): number {
  const open = whole % 10 === 0 && whole !== 10 && whole !== 110;
  return open && tenth > 0 ? (whole + tenth) * 100 : whole * 100 + tenth * 10;
}
