/** A number as spoken, in hundredths. */
export interface SpokenNumber {
  readonly value: number;
  /** Index after its last word. */
  readonly to: number;
  /** Spoken with tenths or a fraction: then it is hardly a count of anything. */
  readonly parts: boolean;
  /**
   * How it was read off. `pairs`: two pairs of digits, as houses and years are (`thirteen oh six`,
   * `nineteen fifty-four`); `short`: a digit and a pair, as houses and some distances are
   * (`nine oh four`, `one forty`).
   */
  readonly style: "plain" | "pairs" | "short";
  /** The word `one`, which is mostly no number. */
  readonly one: boolean;
}

const DIGITS = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];
const TEENS = [
  "ten",
  "eleven",
  "twelve",
  "thirteen",
  "fourteen",
  "fifteen",
  "sixteen",
  "seventeen",
  "eighteen",
  "nineteen",
];
const TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

const DIGIT = new Map<string, number>([
  ...DIGITS.map((word, value): [string, number] => [word, value]),
  ["nought", 0],
  ["naught", 0],
]);
const TEEN = new Map<string, number>(TEENS.map((word, at) => [word, at + 10]));
const TEN = new Map<string, number>([
  ...TENS.map((word, at): [string, number] => [word, at * 10 + 20]),
  ["fourty", 40],
]);

interface Part {
  readonly value: number;
  readonly to: number;
}

/**
 * The number that begins at `from`, if one does: digits (`34`, `34.5`), words (`a hundred and two`,
 * `one oh two`), tenths as technicians read them off (`ninety-eight six`), and halves and quarters.
 * Takes the longest reading; the words of one clause only.
 */
export function spokenNumber(words: readonly string[], from: number): SpokenNumber | null {
  const spelled = spelledAt(words, from);
  if (spelled) return { ...spelled, ...PLAIN, parts: false, style: "pairs" };
  const whole = digitsAt(words, from) ?? cardinalAt(words, from);
  if (!whole) return pointAt(words, from);
  const how = { style: whole.style, one: words[from] === "one" && whole.to === from + 1 };
  if (whole.parts) return { value: whole.value, to: whole.to, parts: true, ...how };
  const part = whole.style === "pairs" ? null : partAfter(words, whole);
  return part
    ? { value: whole.value * 100 + part.value, to: part.to, parts: true, ...how }
    : { value: whole.value * 100, to: whole.to, parts: false, ...how };
}

/** Nobody spells a footage in so many digits, but for one with a point. */
const SPELLED = 3;

/** `five five five oh one`, `two six one four`: spelled digit by digit. */
function spelledAt(words: readonly string[], from: number): Part | null {
  let to = from;
  while (digitOf(words[to]) !== null) to += 1;
  if (to - from < SPELLED || /^(point|dot)$/.test(words[to] ?? "")) return null;
  // `one oh four two`, read off to the tenth
  if (to - from <= SPELLED + 1 && digitOf(words[from + 1]) === 0) return null;
  // `six one two taps`
  const next = words[to] ?? "";
  if (to - from === SPELLED && (NOT_TENTHS.has(next) || isPlural(next))) return null;
  const digits = words.slice(from, to).map((word) => digitOf(word));
  return { value: Number(digits.join("")) * 100, to };
}

/** `point five`, `.5` with nothing before it. */
function pointAt(words: readonly string[], from: number): SpokenNumber | null {
  const text = words[from] ?? "";
  if (/^\.\d+$/.test(text))
    return { value: Math.round(Number(text) * 100), to: from + 1, parts: true, ...PLAIN };
  const part = pointPart(words, from);
  return part ? { ...part, parts: true, ...PLAIN } : null;
}

const PLAIN = { style: "plain", one: false } as const;

interface Whole extends Part {
  readonly parts: boolean;
  readonly style: SpokenNumber["style"];
}

function digitsAt(words: readonly string[], from: number): Whole | null {
  const text = words[from] ?? "";
  if (/^\d+$/.test(text))
    return { value: Number(text), to: from + 1, parts: false, style: "plain" };
  if (/^\d+\.\d+$/.test(text))
    return { value: Math.round(Number(text) * 100), to: from + 1, parts: true, style: "plain" };
  const drawn = /^(\d+)\+(\d+(?:\.\d+)?)$/.exec(text);
  if (!drawn) return null;
  const value = Number(drawn[1]) * 10_000 + Math.round(Number(drawn[2]) * 100);
  return { value, to: from + 1, parts: true, style: "plain" };
}

function cardinalAt(words: readonly string[], from: number): Whole | null {
  const pairs = thousandsAt(words, from) ?? pairsAt(words, from);
  if (pairs) return { ...pairs, parts: false, style: "pairs" };
  const plain = hundredsAt(words, from);
  const short = plain ? null : shortHundredsAt(words, from);
  if (short) return { ...short, parts: false, style: "short" };
  const found = plain ?? digitByDigit(words, from) ?? belowHundredAt(words, from);
  return found && { ...found, parts: false, style: "plain" };
}

/** `two thousand twenty-six`, `eighteen thousand`, `forty-eight hundred`. */
function thousandsAt(words: readonly string[], from: number): Part | null {
  const times = hundredsAt(words, from) ?? belowHundredAt(words, from);
  if (!times || DIGIT.get(words[from] ?? "") === 0) return null;
  const scale = words[times.to];
  if (scale === "thousand") {
    const joined = words[times.to + 1] === "and" ? times.to + 2 : times.to + 1;
    const rest = hundredsAt(words, joined) ?? belowHundredAt(words, joined);
    return { value: times.value * 1000 + (rest?.value ?? 0), to: rest?.to ?? times.to + 1 };
  }
  return scale === "hundred" && times.value > 9 && times.value < 100
    ? { value: times.value * 100, to: times.to + 1 }
    : null;
}

/** So far apart two numbers in one breath are a guess between them: `twenty-four twenty-five`. */
const GUESS = 1;

/** What makes a number before it the measure of something else. */
const OF_ITS_OWN: ReadonlySet<string> = new Set([
  "degree",
  "degrees",
  "inch",
  "inches",
  "percent",
  "%",
  "o'clock",
  "oclock",
  "bend",
  "elbow",
]);

/** `thirteen oh six`, `fourteen twenty`, `nineteen fifty-four`. */
function pairsAt(words: readonly string[], from: number): Part | null {
  const first = tensAt(words, from);
  if (!first) return null;
  if (words[first.to] === "oh" || words[first.to] === "o") {
    const digit = DIGIT.get(words[first.to + 1] ?? "");
    return digit ? { value: first.value * 100 + digit, to: first.to + 2 } : null;
  }
  return oldYear(words, from) ?? pairOf(words, first);
}

/** Two pairs of digits in a row, that are not two numbers. */
function pairOf(words: readonly string[], first: Part): Part | null {
  const second = tensAt(words, first.to);
  const apart = second ? second.value - first.value : 0;
  // `fifty-five, fifty-five`: said twice, no house number.
  if (!second || apart === 0 || (apart === GUESS && first.value > 20)) return null;
  // `twenty-seven, forty-five degree bend`: the second is the size of something.
  if (OF_ITS_OWN.has(words[second.to] ?? "")) return null;
  // `twenty-four twenty-six four`: said anew, and read off to the tenth.
  if (second.to - first.to > 1 && DIGIT.has(words[second.to] ?? "")) return null;
  return { value: first.value * 100 + second.value, to: second.to };
}

/** `nineteen and forty-eight`, as old people say a year; not `between nineteen and forty`. */
function oldYear(words: readonly string[], from: number): Part | null {
  const century = /^(eighteen|nineteen)$/.test(words[from] ?? "") ? tensAt(words, from) : null;
  if (!century || words[from + 1] !== "and" || words[from - 1] === "between") return null;
  const year = tensAt(words, from + 2);
  return year && year.value >= 20 ? { value: century.value * 100 + year.value, to: year.to } : null;
}

/** `a hundred and two`, `two hundred`, `hundred four`. */
function hundredsAt(words: readonly string[], from: number): Part | null {
  const first = words[from] ?? "";
  const bare = first === "hundred";
  const times = first === "a" || bare ? 1 : (DIGIT.get(first) ?? 0);
  const at = bare ? from : from + 1;
  if (times === 0 || words[at] !== "hundred") return null;
  const joined = words[at + 1] === "and" ? at + 2 : at + 1;
  const rest = belowHundredAt(words, joined);
  return rest
    ? { value: times * 100 + rest.value, to: rest.to }
    : { value: times * 100, to: at + 1 };
}

/** `one oh two` is 102, `one fourteen` is 114, `two twenty-six` is 226. */
function shortHundredsAt(words: readonly string[], from: number): Part | null {
  const times = DIGIT.get(words[from] ?? "");
  if (times === undefined || times === 0) return null;
  if (words[from + 1] === "oh" || words[from + 1] === "o") {
    const digit = DIGIT.get(words[from + 2] ?? "");
    return digit === undefined ? null : { value: times * 100 + digit, to: from + 3 };
  }
  const rest = tensAt(words, from + 1);
  return rest && { value: times * 100 + rest.value, to: rest.to };
}

/** `one four point two` is 14.2, read off the screen digit by digit. */
function digitByDigit(words: readonly string[], from: number): Part | null {
  const point = words.indexOf("point", from);
  if (point - from < 2 || point - from > 3) return null;
  const digits = words.slice(from, point).map((word) => digitOf(word));
  if (digits.some((digit) => digit === null)) return null;
  return { value: Number(digits.join("")), to: point };
}

function belowHundredAt(words: readonly string[], from: number): Part | null {
  const digit = DIGIT.get(words[from] ?? "");
  if (digit !== undefined) return { value: digit, to: from + 1 };
  const written = /^\d{1,2}$/.exec(words[from] ?? "");
  return written ? { value: Number(written[0]), to: from + 1 } : tensAt(words, from);
}

function tensAt(words: readonly string[], from: number): Part | null {
  const teen = TEEN.get(words[from] ?? "");
  if (teen !== undefined) return { value: teen, to: from + 1 };
  const ten = TEN.get(words[from] ?? "");
  if (ten === undefined) return null;
  const digit = DIGIT.get(words[from + 1] ?? "");
  return digit ? { value: ten + digit, to: from + 2 } : { value: ten, to: from + 1 };
}

/** The part of a foot after a whole number, in hundredths. */
function partAfter(words: readonly string[], whole: Part): Part | null {
  return pointPart(words, whole.to) ?? fractionPart(words, whole.to) ?? tenthRead(words, whole);
}

/** `point five`, `point oh five`, `point two five`, `dot five`. */
function pointPart(words: readonly string[], at: number): Part | null {
  if (words[at] !== "point" && words[at] !== "dot") return null;
  const written = /^\d{1,2}$/.exec(words[at + 1] ?? "");
  if (written) return { value: Number(written[0].padEnd(2, "0")), to: at + 2 };
  const first = digitOf(words[at + 1]);
  if (first === null) return null;
  const second = digitOf(words[at + 2]);
  const two = second !== null && !NOT_TENTHS.has(words[at + 3] ?? "");
  return two ? { value: first * 10 + second, to: at + 3 } : { value: first * 10, to: at + 2 };
}

function digitOf(word: string | undefined): number | null {
  if (word === "oh" || word === "o") return 0;
  return DIGIT.get(word ?? "") ?? null;
}

const FRACTIONS: readonly (readonly [string, number])[] = [
  ["and a half", 50],
  ["and one half", 50],
  ["and half", 50],
  ["and a quarter", 25],
  ["and one quarter", 25],
  ["and three quarters", 75],
  ["and three quarter", 75],
  ["and a third", 33],
  ["and two thirds", 67],
  ["and change", 50],
  ["and some change", 50],
  ["and a skosh", 10],
  ["and a hair", 10],
  ["and a touch", 10],
  ["and a tad", 10],
  ["and a bit", 20],
  ["and a little bit", 20],
  ["and some", 30],
];

/** `and a half`, `and three quarters`, `and six tenths`, and `1/2` as it is typed. */
function fractionPart(words: readonly string[], at: number): Part | null {
  const from = words[at] === "and" ? at + 1 : at;
  return typedPart(words, from) ?? namedPart(words, at) ?? tenthsPart(words, from);
}

/** `22 1/2`; not `40 1/4 bend`, a quarter bend. */
function typedPart(words: readonly string[], at: number): Part | null {
  const typed = /^([1-7])\/([2348])$/.exec(words[at] ?? "");
  if (!typed || words[at + 1] === "bend") return null;
  const value = Math.round((Number(typed[1]) / Number(typed[2])) * 100);
  return value < 100 ? { value, to: at + 1 } : null;
}

function namedPart(words: readonly string[], at: number): Part | null {
  for (const [text, value] of FRACTIONS) {
    const parts = text.split(" ");
    if (parts.every((part, index) => words[at + index] === part))
      return { value, to: at + parts.length };
  }
  return null;
}

function tenthsPart(words: readonly string[], at: number): Part | null {
  const tenths = words[at] === "a" ? 1 : (DIGIT.get(words[at] ?? "") ?? null);
  return tenths !== null && /^tenths?$/.test(words[at + 1] ?? "")
    ? { value: tenths * 10, to: at + 2 }
    : null;
}

/** What stands after a number that counts or measures something else. */
const NOT_TENTHS: ReadonlySet<string> = new Set([
  "inch",
  "inches",
  "by",
  "o'clock",
  "oclock",
  "percent",
  "%",
  "or",
  "more",
  "on",
  "of",
  "here",
  "there",
  "coming",
  "with",
  "that",
  "different",
  "separate",
  "way",
  "places",
  "quarter",
  "quarters",
  "third",
  "thirds",
  "hundred",
  "oh",
]);

/** `ninety-eight six` is 98.6; `ninety-eight six inch` and `thirty-four two cracks` are not. */
function tenthRead(words: readonly string[], whole: Part): Part | null {
  const last = words[whole.to - 1] ?? "";
  const digit = digitOf(words[whole.to]) ?? writtenDigit(words[whole.to]);
  if (digit === null || words[whole.to] === "o") return null;
  const next = words[whole.to + 1] ?? "";
  const rest = words.slice(whole.to + 1, whole.to + 4).join(" ");
  // `twenty-one, nine to three o’clock`
  if (/^(to|through) \w+ (o'clock|oclock|clock)\b/.test(rest)) return null;
  if (!isReadOff(rest, digit) && (NOT_TENTHS.has(next) || isPlural(next) || DIGIT.has(next)))
    return null;
  // `nine, nine and a half`: said once more, and closer
  if (digit === whole.value && namedPart(words, whole.to + 1) !== null) return null;
  const single = whole.value < 10 && DIGIT.has(last);
  return single && digit === whole.value + 1 ? null : { value: digit * 10, to: whole.to + 1 };
}

/** `forty-eight three on the counter`, `forty-six five on the right`; two on the right may be two. */
function isReadOff(rest: string, digit: number): boolean {
  if (digit > 2 && /^on (the |my |your )?(right|left|top|bottom)\b/.test(rest)) return true;
  return /^on (the |my |our )?(counter|footage|screen|reel|monitor|meter|dot|nose|button|money)\b/.test(
    rest,
  );
}

function writtenDigit(word: string | undefined): number | null {
  return /^\d$/.test(word ?? "") ? Number(word) : null;
}

const SINGULAR_S = new Set([
  "is",
  "was",
  "this",
  "abs",
  "grass",
  "glass",
  "pass",
  "yes",
  "us",
  "as",
  // Nobody counts them: `thirty-six four, roots`.
  "roots",
]);

function isPlural(word: string): boolean {
  return /[a-z]{2,}s$/.test(word) && !SINGULAR_S.has(word) && !word.includes("'");
}
