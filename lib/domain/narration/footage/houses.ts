import { type Said, type Talk, wordsOf } from "../meaning/said.ts";

/** So many sentences the opening of a talk takes, in which the houses are named. */
const OPENING = 6;

/**
 * Numbers that were named as houses, in hundredths: anywhere by what is said of them, in the opening
 * also bare ones before the name of their street and those in a row with it, `18, 20 and 22 Chestnut`.
 */
export function housesNamed(talk: Talk): ReadonlySet<number> {
  const rows = talk.said.flatMap((mark) => (isNumber(talk, mark) ? [rowOf(talk, mark)] : []));
  return new Set(rows.filter((row) => isOfHouses(talk, row)).flatMap((row) => row.map(feetOf)));
}

function isNumber(talk: Talk, mark: Said): boolean {
  if (mark.what === "other") return /^a (house|count)/.test(mark.why);
  return mark.what === "distance" && !/\b(feet|foot|ft)\b/.test(wordsOf(talk, mark.from, mark.to));
}

function feetOf(mark: Said): number {
  if (mark.what === "other") return mark.value * 100;
  return mark.what === "distance" ? mark.distance.from : 0;
}

function isOfHouses(talk: Talk, row: readonly Said[]): boolean {
  const named = row.some((mark) => mark.what === "other" && /^a house/.test(mark.why));
  return named || isOfStreet(talk, row);
}

const STREET_NAME =
  /\b(street|st|avenue|ave|lane|ln|road|rd|drive|dr|court|ct|alley|way|place|pl|terrace|ter|circle|boulevard|loop|trail|hollow|crossing|row)\b/;

const STREET_END = new RegExp(`${STREET_NAME.source}$`);

/** In the opening a name stands behind it, and it is that of a street or of several houses. */
function isOfStreet(talk: Talk, row: readonly Said[]): boolean {
  const [last] = row;
  if (last?.what !== "distance" || last.sentence > OPENING) return false;
  const before = wordsOf(talk, last.from - 2, last.from);
  if (/\bat$/.test(before)) return false;
  // `Ferry Road, 62. Shared by 62, 64 and 68.`
  const first = row.at(-1) ?? last;
  const lead = wordsOf(talk, first.from - 2, first.from);
  if (
    STREET_END.test(lead) ||
    /\b(shared by|serves|serving|shared with|houses|numbers|units)$/.test(lead)
  )
    return true;
  const [name, next] = talk.speech.words.slice(last.to, last.to + 2);
  const named = name?.capital === true && /^[a-z]/.test(name.text);
  return named && (row.length > 1 || STREET_NAME.test(`${name.text} ${next?.text ?? ""}`));
}

/** The number and those before it with nothing between, the last first. */
function rowOf(talk: Talk, mark: Said): Said[] {
  const row = [mark];
  for (let at = mark.at - 1; at >= 0; at -= 1) {
    const [old, next] = [talk.said[at], talk.said[at + 1]];
    if (old === undefined || next === undefined || !isNumber(talk, old)) break;
    if (!/^(and|or|&|)$/.test(wordsOf(talk, old.to, next.from))) break;
    row.push(old);
  }
  return row;
}
