import { hourEnd } from "./hour.ts";
import { type SpokenNumber, spokenNumber } from "./spoken-number.ts";

/** Words for feet. */
export const FOOT = new Set(["foot", "feet", "ft", "footer"]);
/** Words for inches. */
export const INCH = new Set(["inch", "inches"]);

interface Length {
  readonly value: number;
  readonly to: number;
  readonly unit: boolean;
}

/** `31 foot 6`, `thirty-one feet six inches`, `thirty-four feet and a half`, `34.5 feet`. */
export function withUnit(words: readonly string[], number: SpokenNumber): Length {
  const { value } = number;
  if (isOnward(words, number)) return { value, to: number.to + 2, unit: true };
  if (!FOOT.has(words[number.to] ?? "")) return { value: number.value, to: number.to, unit: false };
  const at = number.to + 1;
  const half = /^and (a half|a quarter|three quarters)/.exec(words.slice(at, at + 3).join(" "));
  if (half)
    return {
      value: number.value + (HALVES.get(half[1] ?? "") ?? 0),
      to: at + half[0].split(" ").length,
      unit: true,
    };
  const joined = words[at] === "and" ? at + 1 : at;
  const more = number.parts ? null : inchesSpoken(words, joined);
  if (!more || more.value >= 1200) return { value: number.value, to: at, unit: true };
  return withInches(words, { number, at, more });
}

/** `two` of `five feet two, five feet two`: inches are not read off to the tenth. */
function inchesSpoken(words: readonly string[], at: number): SpokenNumber | null {
  const number = spokenNumber(words, at);
  const tenths = number?.parts && !/^(and|point|\d)/.test(words[at + 1] ?? "and");
  if (number === null || !(tenths || number.value >= 1_200)) return number;
  return spokenNumber(words.slice(0, at + 1), at) ?? number;
}

/** `seven more feet` */
function isOnward(words: readonly string[], { to }: SpokenNumber): boolean {
  return /^(more|further|farther)$/.test(words[to] ?? "") && FOOT.has(words[to + 1] ?? "");
}

const HALVES = new Map([
  ["a half", 50],
  ["a quarter", 25],
  ["three quarters", 75],
]);

function withInches(
  words: readonly string[],
  { number, at, more }: { number: SpokenNumber; at: number; more: SpokenNumber },
): Length {
  const inch = INCH.has(words[more.to] ?? "");
  const next = words[more.to + 1] ?? "";
  const size =
    words[more.to] === "inch" &&
    next !== "" &&
    !/^(and|there|we|i|on|from|is|we're|mark|there's|i've)$/.test(next);
  const alone =
    !inch &&
    (words[more.to] === undefined ||
      !/^(to|or|and|way|o'clock|foot|feet|ft|percent|%|degrees?)$/.test(words[more.to] ?? ""));
  if (size || !(inch || alone)) return { value: number.value, to: at, unit: true };
  const inches = Math.round(more.value / 12);
  return { value: number.value + inches, to: inch ? more.to + 1 : more.to, unit: true };
}

const JOINT =
  /^(?:(?:back|up|down|on|over|out|clear|coming|going|running|all the way) )*(?:to|through|thru|till|until|or|and (?:(?:it|i|you|we|that|can|still|just) )*(?:go|goes|goes|run|runs|see|saw|follow|followed|keeps?|carries|lasts?|continues?|stays?)(?: (?:it|that|going|on|up|down|back|us|me|all|the|way|clear))* (?:to|till|until)|and)(?: (?:about|around|maybe|like|roughly|at))?(?= |$)/;

/** `to forty-seven`, `through 47`, `or thirty-five`, and `and` after `between`. */
export function rangeEnd(
  words: readonly string[],
  at: number,
  from: number,
): (Length & { choice: boolean }) | null {
  const joint = JOINT.exec(words.slice(from, from + 10).join(" "))?.[0].trim() ?? "";
  const between = words.slice(Math.max(0, at - 3), at).includes("between");
  if (joint === "" || (/^and( (about|around|maybe|like|roughly|at))?$/.test(joint) && !between))
    return null;
  const skip = from + joint.split(" ").length;
  const number = spokenNumber(words, skip);
  if (!number || INCH.has(words[number.to] ?? "") || hourEnd(words, number.to) > number.to)
    return null;
  const end = withUnit(words, number);
  const somewhere =
    between &&
    /\b(somewhere|someplace|maybe|about|call it)\b/.test(
      words.slice(Math.max(0, at - 4), at).join(" "),
    );
  return { ...end, choice: joint.startsWith("or") || somewhere };
}
