import { type ClauseWords, measureAt } from "../number/measure.ts";
import { spokenNumber } from "../number/spoken-number.ts";
import type { Word } from "../transcript/word.ts";
import { withConstructions } from "../vocabulary/construction.ts";
import { withEndings } from "../vocabulary/endings.ts";
import type { Mark, Meaning } from "../vocabulary/mark.ts";
import { withJoining, withNameless } from "../vocabulary/nameless.ts";
import { clockMark, sideAt } from "../vocabulary/side.ts";
import { TURN_WORDS } from "../vocabulary/talk.ts";
import { BEND, BEND_ANGLES, MATERIAL_WORDS_SPOKEN, THING_WORDS } from "../vocabulary/things.ts";

interface Phrase {
  readonly words: readonly string[];
  readonly meaning: Meaning;
}

const PHRASES: ReadonlyMap<string, readonly Phrase[]> = byFirstWord([
  ...THING_WORDS.map(([text, thing]) => phrase(text, { what: "thing", thing })),
  ...MATERIAL_WORDS_SPOKEN.map(([text, material]) => phrase(text, { what: "material", material })),
  ...TURN_WORDS.map(([text, turn]) => phrase(text, { what: "turn", turn })),
]);

function phrase(text: string, meaning: Meaning): Phrase {
  return { words: text.split(" "), meaning };
}

/** `it goes on up to`, `they run clear to`, `out at`: where something stops, if a distance follows. */
const GOES_ON =
  /^(?:(?:it|they|that|this|which|and|keeps?|kept) )*(?:run|runs|ran|running|go|goes|going|went|continue|continues|carries|carry|carried|extend|extends|stretch|stretches|last|lasts|keep|keeps|kept|stay|stays|stayed|hold|holds|holding|reach|reaches|follow|follows|followed|there|quit|stop)(?: (?:on|up|down|back|clear|all the way|out|over|in|along|from there|from here|until about|us|me|with us|with me|like that|like this|that way|this way|so|going|coming|water))* (?:to|till|until|through|thru)(?: (?:about|around|maybe|like))?(?= |$)|^(?:(?:and|we're|i'm|it's|then|comes?|back) )*(?:out|clear|gone|dry|done|over)(?: (?:of it|of that|again))? (?:at|by|around)(?= |$)/;

/** `grease clear out to fifty`, right behind what is named. */
const BARE_TO =
  /^(?:(?:all|the|way|clear|right|on|back|up|out|down|over|from|there|here) )*(?:to|till|until)(?: (?:about|around|the))?(?= |$)/;

/** Longest first; of equal ones the first listed. */
function byFirstWord(phrases: readonly Phrase[]): Map<string, Phrase[]> {
  const map = new Map<string, Phrase[]>();
  for (const one of phrases) {
    const first = one.words[0] ?? "";
    map.set(first, [...(map.get(first) ?? []), one]);
  }
  for (const list of map.values()) list.sort((a, b) => b.words.length - a.words.length);
  return map;
}

/** Everything that the words mean, clause by clause, in the order of speaking. */
export function marksIn(words: readonly Word[]): Mark[] {
  const marks: Mark[] = [];
  for (let from = 0; from < words.length; ) {
    const clause = words[from]?.clause;
    let to = from;
    while (to < words.length && words[to]?.clause === clause) to += 1;
    for (const mark of marksInClause(clauseAt(words, from, to), isInside(words, from)))
      marks.push({ ...mark, from: mark.from + from, to: mark.to + from });
    from = to;
  }
  const hours = withHours(withHoursFirst(withChoices(marks, words), words), words);
  const read = withSameSide(hours, words);
  return withEndings(
    withJoining(withNameless(withConstructions(read, words), words), words),
    words,
  );
}

/** So many words before and behind a clause can tell what a number in it is. */
const AROUND = 10;

function clauseAt(words: readonly Word[], from: number, to: number): ClauseWords {
  const { breath, sentence } = words[from] ?? { breath: -1, sentence: -1 };
  const said = words.slice(from, to);
  return {
    said,
    words: said.map((word) => word.text),
    lead: textOf(
      words.slice(Math.max(0, from - AROUND), from).filter((word) => word.breath === breath),
    ),
    follow: textOf(words.slice(to, to + AROUND).filter((word) => word.sentence === sentence)),
  };
}

function textOf(words: readonly Word[]): string {
  return words.map((word) => word.text).join(" ");
}

/** The sentence began before this word. */
function isInside(words: readonly Word[], from: number): boolean {
  return from > 0 && words[from - 1]?.sentence === words[from]?.sentence;
}

/** Something was named in the same breath, which a side may belong to. */
const NAMED =
  /\b(wye|tee|tap|lateral|connection|branch|saddle|break in|tie in|crack|hole|roots|joint|in|running|active|capped|dead|live)( \w+){0,2}$/;

/** `cracked at twelve`, where the footage was read off before: an hour of the clock. */
function withHours(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  return marks.map((mark, at): Mark => {
    if (mark.what !== "distance" || mark.distance.weight > 2) return mark;
    const { from, to, kind } = mark.distance;
    const hour = from % 100 === 0 && from >= 100 && from <= 1200 && to === null && kind === "at";
    if (!hour || words[mark.from - 1]?.text !== "at") return mark;
    const sentence = words[mark.from]?.sentence;
    const before = marks.slice(0, at).filter((old) => words[old.from]?.sentence === sentence);
    const read = before.some((old) => old.what === "distance" && old.distance.from > from + 300);
    const seen = before.at(-1)?.what === "thing" && mark.from - (before.at(-1)?.to ?? 0) <= 2;
    return read && seen ? clockMark(from / 100, mark.from, mark.to) : mark;
  });
}

/**
 * `At nine, a lateral. Eight feet.`, `from ten to two, cracked, thirteen feet`: told with the hour
 * first, where the breath goes on to a find and ends in what is plainly a footage.
 */
function withHoursFirst(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  return marks.map((mark, at): Mark => {
    if (mark.what !== "distance" || mark.distance.weight > 2) return mark;
    const { from, to, kind, choice } = mark.distance;
    const hours = isHour(from) && (to === null || isHour(to)) && kind === "at" && !choice;
    if (!hours || !/^(at|from)$/.test(words[mark.from - 1]?.text ?? "")) return mark;
    const breath = words[mark.from]?.breath;
    const own = marks.filter((other) => words[other.from]?.breath === breath);
    const [first, last] = own.filter((other) => other.what === "distance");
    const found = marks.slice(at + 1).find(({ what }) => what === "thing");
    const ends =
      first === mark &&
      last?.what === "distance" &&
      last.distance.weight > 2 &&
      last.distance.kind === "at" &&
      own.every((other) => other.what !== "thing" || other.from < last.from) &&
      found !== undefined &&
      found.from < last.from;
    return ends ? clockMark(middleHour(from / 100, (to ?? from) / 100), mark.from, mark.to) : mark;
  });
}

function isHour(value: number): boolean {
  return value % 100 === 0 && value >= 100 && value <= 1_200;
}

/** Going clockwise from the one to the other. */
function middleHour(from: number, to: number): number {
  const middle = from + ((to - from + 12) % 12) / 2;
  return middle >= 13 ? middle - 12 : middle;
}

/** `your second wye, same side`: the side of the last tie-in that had one. */
function withSameSide(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  let side: number | null = null;
  return marks.flatMap((mark): Mark[] => {
    if (mark.what === "clock" && mark.clock % 6 !== 0) side = mark.clock;
    const next = words[mark.to]?.text ?? "";
    if (mark.what !== "turn" || mark.turn !== "same" || side === null) return [mark];
    return next === "side" && words[mark.to - 1]?.text === "same"
      ? [clockMark(side, mark.from, mark.to + 1)]
      : [mark];
  });
}

/** Feet apart, in hundredths, within which `forty-five, forty-six foot` is one guess. */
const GUESS = 200;

/** Two distances in one breath, a foot or two apart, are a guess between them. */
function withChoices(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const joined: Mark[] = [];
  for (const mark of marks) {
    while (isRoughBefore(joined, mark, words)) joined.splice(lastNumber(joined), 1);
    const last = joined.at(-1);
    const together = last && words[last.from]?.sentence === words[mark.from]?.sentence;
    if (last && isOfLength(last, mark)) joined[joined.length - 1] = { ...mark, from: last.from };
    else if (last && isReadClosely(last, mark))
      joined[joined.length - 1] = { ...mark, from: last.from };
    else if (last && together && isGuess(last, mark) && !isCountedOff(last, mark, words))
      joined[joined.length - 1] = guess(last, mark);
    else joined.push(mark);
  }
  return joined;
}

type Measured = Extract<Mark, { what: "distance" }>;

/** `coming up on fifteen, fifteen point three`: the same foot, read off closely. */
function isReadClosely(last: Mark, mark: Mark): boolean {
  if (last.what !== "distance" || mark.what !== "distance" || mark.from !== last.to) return false;
  const apart = mark.distance.from - last.distance.from;
  const whole = last.distance.to === null && last.distance.from % 100 === 0;
  return whole && mark.distance.to === null && apart > 0 && apart < 100;
}

/** `maybe three, four feet of it`: the first is of the same length. */
function isOfLength(last: Mark, mark: Mark): boolean {
  if (last.what !== "distance" || mark.what !== "distance" || mark.from !== last.to) return false;
  const apart = mark.distance.from - last.distance.from;
  return (
    mark.distance.kind === "extent" && last.distance.weight <= 2 && apart > 0 && apart <= GUESS
  );
}

/** So many words on, a foot just read off may be read off closely. */
const CLOSELY = 10;

function lastNumber(marks: readonly Mark[]): number {
  return marks.findLastIndex(({ what }) => what === "distance");
}

/** `eight — eight what? — eight point three`, `forty-eight and, what is that, forty-eight six`: nothing else told between. */
function isRoughBefore(marks: readonly Mark[], mark: Mark, words: readonly Word[]): boolean {
  const at = lastNumber(marks);
  const last = marks[at];
  if (last?.what !== "distance" || mark.what !== "distance" || mark.distance.kind !== "at")
    return false;
  if (words[last.from]?.breath !== words[mark.from]?.breath || mark.from - last.to > CLOSELY)
    return false;
  if (last.distance.from === 0 || last.distance.from % 100 !== 0 || last.distance.to !== null)
    return false;
  const apart = mark.distance.from - last.distance.from;
  const between = marks
    .slice(at + 1)
    .every((other) => other.what === "turn" && !/^(correction|scratch)$/.test(other.turn));
  return mark.distance.to === null && apart > 0 && apart < 100 && between && mark.from > last.to;
}

const FEET = /\b(feet|foot|ft)\b/;

/**
 * `thirty-two, thirty-four`, `four feet, five feet`: read off one after another as the camera goes;
 * a guess says so, or has its feet once: `forty-five, forty-six foot`.
 */
function isCountedOff(last: Mark, mark: Mark, words: readonly Word[]): boolean {
  const [first, second] = [last, mark].map(({ from, to }) =>
    FEET.test(textOf(words.slice(from, to))),
  );
  const sentence = words[mark.from]?.sentence;
  const around = textOf(
    words
      .slice(Math.max(0, mark.from - 8), mark.to + 4)
      .filter((word) => word.sentence === sentence),
  );
  return (
    first === second &&
    !/\b(or|maybe|about|around|like|say|somewhere|roughly|call|probably|guess|ish|at|between|think)\b/.test(
      around,
    )
  );
}

function isGuess(last: Mark, mark: Mark): last is Measured {
  if (last.what !== "distance" || mark.what !== "distance" || mark.from !== last.to) return false;
  const apart = mark.distance.from - last.distance.from;
  const points = last.distance.to === null && mark.distance.to === null;
  const places = last.distance.kind === "at" && mark.distance.kind === "at";
  return points && places && apart > 0 && apart <= GUESS && last.distance.from % 100 === 0;
}

function guess(last: Measured, mark: Mark): Mark {
  const to = mark.what === "distance" ? mark.distance.from : null;
  return { ...last, to: mark.to, distance: { ...last.distance, to, choice: true } };
}

function marksInClause(clause: ClauseWords, inside: boolean): Mark[] {
  const { words } = clause;
  const angle = inside ? angleAlone(clause) : null;
  if (angle) return [angle];
  // `another wye, right, four inch clay`: a side by itself, not the `Right,` that begins a sentence.
  if (words.length === 1 && (inside || NAMED.test(clause.lead))) {
    if (words[0] === "right") return [clockMark(3, 0, 1)];
    if (words[0] === "left") return [clockMark(9, 0, 1)];
  }
  const marks: Mark[] = [];
  for (let at = 0; at < words.length; ) {
    const mark = markAt(clause, at, marks.at(-1));
    if (mark) marks.push(mark);
    at = mark?.to ?? at + 1;
  }
  return marks;
}

function markAt(clause: ClauseWords, at: number, last: Mark | undefined): Mark | null {
  const side = sideAt(clause.words, at);
  // `on the right here` names a side; `right here` by itself does not.
  if (side && /^(right|left)$/.test(clause.words[at] ?? "") && clause.words[at - 1] === "the")
    return side;
  const ends = goesOnTo(clause, at, last);
  if (ends) return ends;
  const said = endInstead(clause, phraseAt(clause.words, at));
  const measured = measureAt(clause, at);
  if (said && measured) return said.to > measured.to ? said : measured;
  return said ?? measured ?? side;
}

/** `two and a half, ninety, then straight`: an angle by itself behind the footage. */
function angleAlone({ words, lead }: ClauseWords): Mark | null {
  const number = spokenNumber(words, 0);
  if (number?.to !== words.length || !BEND_ANGLES.has(number.value / 100)) return null;
  const before = lead.split(" ");
  const last = before
    .map((_, at) => spokenNumber(before, at))
    .find((found) => found?.to === before.length);
  const read = last != null && number.value - last.value > GUESS_FAR;
  return read ? { what: "thing", thing: BEND, from: 0, to: words.length } : null;
}

/** A next footage, hundredths of a foot, is hardly so far on within one sentence. */
const GUESS_FAR = 1_000;

function goesOnTo(clause: ClauseWords, at: number, last: Mark | undefined): Mark | null {
  const words = clause.words.slice(at, at + 10).join(" ");
  const named = last?.what === "thing" && at - last.to <= 1;
  if (named && at === last.to && words === "end")
    return { what: "turn", turn: "closes", from: at, to: at + 1 };
  const found = GOES_ON.exec(words) ?? (named ? BARE_TO.exec(words) : null);
  if (!found) return null;
  const to = at + found[0].split(" ").length;
  const behind = measureAt(clause, to);
  return behind?.what === "distance" ? { what: "turn", turn: "closes", from: at, to } : null;
}

/** Who goes there is the camera, or whoever speaks of it. */
const GOES_ITSELF =
  /\b(i|i'm|i'll|we|we're|we'll|let's|me|us|you|camera|her|it's|pull\w*|push\w*|com(e|ing)|go|going|drag\w*|bring\w*|roll\w*|back)( [\w']+)?$/;

/** `sand, and it’s that way … back to about thirty`: no pipe changes to a footage. */
function endInstead(clause: ClauseWords, said: Mark | null): Mark | null {
  if (said?.what !== "turn" || said.turn !== "change") return said;
  const { words } = clause;
  if (!/^(back|going|goes|go) (to|into)$/.test(words.slice(said.from, said.to).join(" ")))
    return said;
  const on = /^(about|around|maybe|like|right|just)$/.test(words[said.to] ?? "") ? 1 : 0;
  if (measureAt(clause, said.to + on)?.what !== "distance") return said;
  return GOES_ITSELF.test(words.slice(0, said.from).join(" ")) ? said : { ...said, turn: "closes" };
}

function phraseAt(words: readonly string[], at: number): Mark | null {
  const found = PHRASES.get(words[at] ?? "")?.find((one) =>
    one.words.every((word, index) => words[at + index] === word),
  );
  return found ? { ...found.meaning, from: at, to: at + found.words.length } : null;
}
