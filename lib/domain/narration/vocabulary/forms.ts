/** Past forms that no rule gives, by the stem. */
const IRREGULAR: ReadonlyMap<string, readonly string[]> = new Map([
  ["bend", ["bent"]],
  ["break", ["broke", "broken"]],
  ["bust", ["busted", "burst"]],
  ["come", ["came"]],
  ["eat", ["ate", "eaten", "et"]],
  ["fall", ["fell", "fallen"]],
  ["grow", ["grew", "grown"]],
  ["hang", ["hung"]],
  ["let", []],
  ["lose", ["lost"]],
  ["run", ["ran"]],
  ["shear", ["sheared", "shorn"]],
  ["sink", ["sank", "sunk"]],
  ["slide", ["slid"]],
  ["split", []],
  ["spread", []],
  ["squeeze", ["squoze", "squeezed"]],
  ["stand", ["stood"]],
  ["stick", ["stuck"]],
  ["tear", ["tore", "torn"]],
  ["tie", ["tied", "tying"]],
  ["wear", ["wore", "worn"]],
]);

/** One vowel before one of these consonants, in a short word: `drop` gives `dropped`. */
const DOUBLES = /(^|[^aeiou])[aeiou][bdgmnpt]$/;
const SHORT = 5;

/** A verb in all its forms: `pinch` gives `pinches`, `pinched`, `pinching`; `sink` gives `sank`, `sunk`. */
export function formsOf(stem: string): string[] {
  const short = stem.replace(/e$/, "");
  const twice = DOUBLES.test(stem) && stem.length <= SHORT ? stem.slice(-1) : "";
  const third = /(s|sh|ch|x|z)$/.test(stem) ? `${stem}es` : thirdOf(stem);
  const past = IRREGULAR.get(stem) ?? [pastOf(stem, twice)];
  return [...new Set([stem, third, ...past, `${short}${twice}ing`])];
}

function thirdOf(stem: string): string {
  return /[^aeiou]y$/.test(stem) ? `${stem.slice(0, -1)}ies` : `${stem}s`;
}

function pastOf(stem: string, twice: string): string {
  if (/[^aeiou]y$/.test(stem)) return `${stem.slice(0, -1)}ied`;
  return `${stem.replace(/e$/, "")}${twice}ed`;
}

/** Any form of any of the verbs, as a group of a regular expression. */
export function anyFormOf(stems: string): string {
  return `(?:${stems.split(" ").flatMap(formsOf).join("|")})`;
}
