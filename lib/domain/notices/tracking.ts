/** What is wrong with a number that is said to be one of certified mail. */
export interface NumberFault {
  /** `no-number` can't be one at all; `check-digit` has the form of one, and a digit of it is wrong. */
  readonly fault: "no-number" | "check-digit";
  readonly words: string;
}

/**
 * Looks at a number of certified mail as people type it, with or without spaces: 20 or 22 digits of the
 * Postal Service, or the 13 signs of the Universal Postal Union, each with its check digit. Null where
 * it can be one, or where none was typed. The forms and the sums are from memory (modulus 10 with
 * weights 3 and 1 from the right; S10 modulus 11 with weights 8 6 4 2 3 5 9 7), so that a check digit
 * alone never stops anybody: it is said beside the number.
 */
export function numberFault(typed: string): NumberFault | null {
  const number = bareNumber(typed);
  if (number === "") return null;
  if (/^[A-Z]{2}\d{9}[A-Z]{2}$/.test(number))
    return fitsEleven(number.slice(2, 11)) ? null : WRONG_DIGIT;
  if (!/^(?:\d{20}|\d{22})$/.test(number)) return NO_NUMBER;
  // Of 20 digits some are counted with the two that the scanner puts before them.
  const fits = fitsTen(number) || (number.length === 20 && fitsTen(`91${number}`));
  return fits ? null : WRONG_DIGIT;
}

/** A number as it is compared: without the blanks, dots and hyphens that people type. */
export function bareNumber(typed: string): string {
  return typed.replaceAll(/[\s.-]/g, "").toUpperCase();
}

const NO_NUMBER: NumberFault = {
  fault: "no-number",
  words:
    "A certified mail number has 20 or 22 digits, or two letters, nine digits and two letters; copy it from the receipt",
};

const WRONG_DIGIT: NumberFault = {
  fault: "check-digit",
  words: "One digit of this number seems wrong: compare it with the receipt",
};

/** The last digit makes the sum of all, tripled at every second place from the right, end in 0. */
function fitsTen(digits: string): boolean {
  const sum = [...digits]
    .reverse()
    .reduce((all, digit, at) => all + Number(digit) * (at % 2 === 1 ? 3 : 1), 0);
  return sum % 10 === 0;
}

const WEIGHTS = [8, 6, 4, 2, 3, 5, 9, 7];

function fitsEleven(digits: string): boolean {
  const sum = WEIGHTS.reduce((all, weight, at) => all + weight * Number(digits[at]), 0);
  const rest = 11 - (sum % 11);
  const named = new Map([
    [10, 0],
    [11, 5],
  ]);
  return (named.get(rest) ?? rest) === Number(digits[8]);
}
