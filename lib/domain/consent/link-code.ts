/**
 * What is printed beside a letter's QR code, for those who type: eleven signs by chance and one that
 * finds a slip of the finger, in three groups of four.
 *
 * How hard it is to guess: 28 signs in 11 places are 8.3 × 10^15 codes (53 bits). A network address
 * gets 30 wrong tries in a quarter of an hour (LINK_MISSES). A stranger with a thousand addresses has
 * 2.9 million a day; with a thousand codes open in the office, one of 2.9 million days hits. From a
 * stolen copy of the database each try costs what a password costs (argon2id, 19 MiB), and a code is
 * good for 30 days.
 */
const SIGNS = "23456789BCDFGHJKMNPQRSTVWXYZ";
const BY_CHANCE = 11;
const GROUP = 4;

/** A code from eleven numbers by chance, each from 0 and below `CODE_SIGNS`. */
export function linkCode(chance: readonly number[]): string {
  if (chance.length !== BY_CHANCE) throw new RangeError(`A code is made of ${BY_CHANCE} numbers`);
  const signs = chance.map((one) => {
    const sign = SIGNS[one];
    if (sign === undefined) throw new RangeError(`No sign of a code has the number ${one}`);
    return sign;
  });
  return [...signs, checkSign(signs)].join("");
}

export const CODE_SIGNS = SIGNS.length;
export const CODE_CHANCE = BY_CHANCE;

/** `K7QM-2XPD-9RTB`, as it prints. */
export function shownCode(code: string): string {
  return (code.match(new RegExp(`.{1,${GROUP}}`, "g")) ?? []).join("-");
}

/** A typed code; null where it is none or has a slip. Blanks, hyphens and case do not matter. */
export function readCode(typed: string): string | null {
  const signs = [...typed.toLocaleUpperCase("en-US").replace(/[\s\-–—.]/g, "")];
  if (signs.length !== BY_CHANCE + 1 || signs.some((sign) => !SIGNS.includes(sign))) return null;
  return signs.at(-1) === checkSign(signs.slice(0, -1)) ? signs.join("") : null;
}

/** The Luhn sum over 28 signs: one wrong sign is always found, two neighbors that changed places nearly always. */
function checkSign(signs: readonly string[]): string {
  const sum = signs.reduceRight((total, sign, at) => {
    const twice = SIGNS.indexOf(sign) * ((signs.length - at) % 2 === 1 ? 2 : 1);
    return total + Math.floor(twice / CODE_SIGNS) + (twice % CODE_SIGNS);
  }, 0);
  return SIGNS[(CODE_SIGNS - (sum % CODE_SIGNS)) % CODE_SIGNS] ?? "";
}
