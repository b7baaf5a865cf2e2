import {
  inClause,
  inSentence,
  isTurn,
  type Of,
  type Said,
  spanAt,
  type Talk,
  talkWith,
  wordsOf,
} from "../meaning/said.ts";
import { isPlain } from "../vocabulary/plain-words.ts";
import { beginOf, endOf } from "./begins-anew.ts";
import { housesNamed } from "./houses.ts";

/**
 * A number is a footage by the company that it keeps. Spoken with feet and a place, with the
 * counter or to the tenth it says so itself; a bare one stands among few words: what was found,
 * sides, sizes, where the camera goes, and the small words of any sentence. Beside a name, a person
 * or anything else that no pipe has, nobody can tell, and it is set aside.
 */
export function withoutStrangers(talk: Talk): Talk {
  const known = knownWords(talk);
  const houses = housesNamed(talk);
  const lines = linesOfNotes(talk, known);
  const said: Said[] = [];
  for (const mark of talk.said) {
    const bare = mark.what === "distance" && mark.distance.kind === "at" && mark.distance.from > 0;
    const alike = isAlike(talk, mark, said.at(-1)) && !hasUnit(talk, mark);
    const house = bare && houses.has(mark.distance.from) && isNamedAgain(talk, mark, known);
    const told = lines.has(mark.at) || (bare && keepsCompany(talk, mark, known));
    if (!bare || (!alike && !house && told)) said.push(mark);
    else said.push(asideOf(mark));
  }
  return talkWith(talk.speech, said);
}

/** The number of a house once more, bare, and nothing found right behind it: `so, 18`, `that’s 21`, `20 enters`. */
/** `In at 68`: the house where the camera went in; nothing is told there. */
function isWayIn(talk: Talk, mark: Said, lead: string): boolean {
  return (
    /^(we |i |and |so )*(went |going |came |are |am |was |were |'re )?(in|out|here|up|over) at$/.test(
      lead,
    ) &&
    inClause(talk, mark.clause).every(
      ({ what, from }) => what === "turn" || what === "distance" || from === mark.from,
    )
  );
}

const DOES =
  /^(has|had|have|is|isn't|enters|comes|ties|goes|drains|should|would|might|must|just|ran|runs|never|also)$/;

function isNamedAgain(talk: Talk, mark: Of<"distance">, known: ReadonlySet<number>): boolean {
  const span = spanAt(talk, mark.clause);
  const lead = wordsOf(talk, Math.max(span.from, mark.from - 5), mark.from);
  if (isHouseJustNow(talk, mark)) return true;
  if (
    hasUnit(talk, mark) ||
    isReadOut(talk, mark, lead) ||
    (PLACES.test(lead) && !isWayIn(talk, mark, lead))
  )
    return false;
  if (DOES.test(wordsOf(talk, mark.to, mark.to + 1))) return true;
  const next = talk.said
    .slice(mark.at + 1, mark.at + 4)
    .find(({ what }) => !/^(turn|clock|diameter)$/.test(what));
  // `Fifteen. Wye, left side.`
  const opens =
    next !== undefined &&
    /^(thing|material)$/.test(next.what) &&
    known.has(next.from) &&
    next.sentence - mark.sentence <= 1;
  return !(FIRST.test(lead) && opens && (next.clause !== mark.clause || isJustBehind(mark, next)));
}

/** `House forty-one. We’re at forty-one, you sent us for forty-one.` */
function isHouseJustNow(talk: Talk, mark: Of<"distance">): boolean {
  return talk.said
    .slice(0, mark.at)
    .some(
      (old) =>
        old.what === "other" &&
        /^a house/.test(old.why) &&
        old.value * 100 === mark.distance.from &&
        mark.sentence - old.sentence <= 1 &&
        inSentence(talk, mark.sentence).every(({ what }) => what !== "thing"),
    );
}

/** So many lines of notes begin with their footage where somebody writes so. */
const LINES = 3;

/** `17 reducer to 4"`, `38 hard stop`: in notes most of whose lines begin with a footage, each does. */
function linesOfNotes(talk: Talk, known: ReadonlySet<number>): ReadonlySet<number> {
  const { words } = talk.speech;
  const first = talk.said.filter(
    (mark): mark is Of<"distance"> =>
      mark.what === "distance" &&
      mark.time === null &&
      mark.distance.kind === "at" &&
      words[mark.from]?.breath !== words[mark.from - 1]?.breath,
  );
  const plain = first.filter((mark) => keepsCompany(talk, mark, known));
  const most = plain.length >= LINES && plain.length * 2 > first.length;
  return new Set(most ? first.map(({ at }) => at) : []);
}

function asideOf(mark: Of<"distance">): Said {
  const { at, clause, sentence, until, time, from, to } = mark;
  const value = mark.distance.from / 100;
  return { what: "other", value, why: UNTOLD, at, clause, sentence, until, time, from, to };
}

/**
 * `five five five, oh one, forty-seven`, `they had it as thirty-two Fern, but it’s thirty-four`:
 * right behind a number that is none, of the same kind.
 */
function isAlike(talk: Talk, mark: Said, before: Said | undefined): boolean {
  if (before?.what !== "other" || before.sentence !== mark.sentence) return false;
  // `that’s 88, twelve five`: read off to the tenth
  if (mark.what === "distance" && mark.distance.from % 100 !== 0) return false;
  if (before.to === mark.from) {
    const row =
      mark.what === "distance" && Math.abs(mark.distance.from - before.value * 100) <= ROW;
    return (
      /^(a reference|a date|a count|nothing)/.test(before.why) ||
      (row && /^a house/.test(before.why))
    );
  }
  const between = wordsOf(talk, before.to, mark.from);
  // `one percent fall, maybe one and a half`
  if (OF_THE_PIPE.test(before.why) && EVEN.test(between)) return true;
  return /^(a house|nothing)/.test(before.why) && INSTEAD.test(between);
}

/** `houses 16, 18, 20`: neighbors’ numbers lie as near as this, in hundredths. */
const ROW = 1_200;

const INSTEAD = /^([\w']+ ){0,2}(but|not|and) (it's|that's|it is)$|^(and|or|not)$/;

const EVEN =
  /^(percent|%|degrees|fall|grade|slope|blocked|closed|full|of it|deep|so|pretty much|almost| )*(or|maybe|or maybe|or even|even|maybe even|call it|if not|or like|could be)( like| about| more like)?$/;

const UNTOLD = "nothing said beside it makes it a footage";

/** `twenty-eight, fifty percent roots`: numbers that measure what is seen there. */
const OF_THE_PIPE = /percentage|part of|a size|degrees|depth|length of pipe/;

/** Marks that tell of the pipe; what is chat, denied or hoped for does not speak for a number. */
function knownWords(talk: Talk): ReadonlySet<number> {
  const known = new Set<number>();
  for (const mark of talk.said) {
    if (isTurn(mark, "nothing", "record", "record-comment")) continue;
    if (mark.what === "other" && !OF_THE_PIPE.test(mark.why)) continue;
    for (let at = mark.from; at < mark.to; at += 1) known.add(at);
  }
  return known;
}

function keepsCompany(talk: Talk, mark: Of<"distance">, known: ReadonlySet<number>): boolean {
  const span = spanAt(talk, mark.clause);
  const begins = beginOf(talk, mark, span.from);
  const lead = wordsOf(talk, Math.max(begins, mark.from - 5), mark.from);
  const ends = endOf(talk, mark, span.to);
  const strange = (at: number) => {
    const inside = at >= begins && at < ends;
    return inside && !known.has(at) && !isPlain(talk.speech.words[at]?.text ?? "");
  };
  if (isReadOut(talk, mark, lead) || isRunOn(talk, mark, known)) return true;
  if (isOnWay(talk, mark) || isSaidAgain(talk, mark)) return !isSubject(talk, mark);
  if (hasUnit(talk, mark)) {
    // `a fifty foot lot`
    if (strange(mark.to) && talk.speech.words[mark.to - 1]?.text === "foot") return false;
    if (!PLACES.test(lead) && isOfAnother(lead, strange, mark)) return false;
    return !isOfStranger(talk, mark, { known, lead, strange });
  }
  if (strange(mark.to) || isSomethingElse(talk, mark)) return false;
  if (AT.test(lead))
    return !PEOPLE.test(lead) && !isAtHouse(mark, lead) && isOfPipe(talk, mark, { known, strange });
  return standsAmong(talk, mark, { known, lead, strange });
}

/** So many words behind a find its footage may stand. */
const RUN_ON = 14;
/** Nearer than this, hundredths of a foot, tenths may be of anything. */
const CLOSE = 300;

/** `somebody stuck a pipe in and mortared it twenty-seven nine`: to the tenth, and the last thing said was a find. */
function isRunOn(talk: Talk, mark: Of<"distance">, known: ReadonlySet<number>): boolean {
  if (mark.distance.from % 100 === 0 || mark.distance.from < CLOSE) return false;
  const last = talk.said
    .slice(0, mark.at)
    .findLast(({ what }) => /^(thing|material|distance)$/.test(what));
  return (
    last !== undefined &&
    /^(thing|material)$/.test(last.what) &&
    known.has(last.from) &&
    last.sentence === mark.sentence &&
    mark.from - last.to <= RUN_ON
  );
}

/** `eighty-three up to seventy`, `forty-four back to forty-nine`: along the pipe from one to the other. */
function isOnWay(talk: Talk, mark: Of<"distance">): boolean {
  if (mark.distance.to === null || mark.distance.choice) return false;
  return /\b(back|up|down|on|clear|over|all the way|coming) (to|till|until|through)\b/.test(
    wordsOf(talk, mark.from, mark.to),
  );
}

/** So many sentences on, the footage read off last is still that where the camera stands. */
const STILL_THERE = 2;

/** `Twenty-eight, there’s a cleanout. I bet it’s under the deck, twenty-eight feet.` */
function isSaidAgain(talk: Talk, mark: Of<"distance">): boolean {
  const last = talk.said
    .slice(0, mark.at)
    .findLast((old): old is Of<"distance"> => old.what === "distance");
  return (
    last !== undefined &&
    hasUnit(talk, mark) &&
    !/\b(every|each|per)$/.test(wordsOf(talk, mark.from - 1, mark.from)) &&
    last.distance.from === mark.distance.from &&
    mark.distance.to === null &&
    mark.sentence - last.sentence <= STILL_THERE
  );
}

function isSomethingElse(talk: Talk, mark: Of<"distance">): boolean {
  return (
    isListed(talk, mark) ||
    isSubject(talk, mark) ||
    isHouse(talk, mark) ||
    isSizeInstead(talk, mark) ||
    isHourAgain(talk, mark)
  );
}

interface Around {
  readonly known: ReadonlySet<number>;
  /** The words before it in its clause. */
  readonly lead: string;
  /** No word of the pipe, nor of any sentence. */
  readonly strange: (at: number) => boolean;
}

/** Something of the pipe is told in its sentence, or nothing strange stands around it. */
function isOfPipe(
  talk: Talk,
  mark: Said,
  { known, strange }: Pick<Around, "known" | "strange">,
): boolean {
  const told = inSentence(talk, mark.sentence).some(
    (other) =>
      (/^(thing|material|clock|diameter)$/.test(other.what) && known.has(other.from)) ||
      isTurn(other, "record"),
  );
  return told || ![1, 2, 3, 4, 5].some((off) => strange(mark.from - off));
}

/** A bare number among words of the pipe, where a footage stands. */
function standsAmong(talk: Talk, mark: Of<"distance">, { known, lead, strange }: Around): boolean {
  const found = inClause(talk, mark.clause).filter(
    ({ what, from }) => TELLS.test(what) && known.has(from),
  );
  if (isSizeStep(mark, found)) return false;
  const placed = PLACES.test(lead);
  if (placed && found.length > 0) return !strange(mark.from - 2);
  if (
    FIRST.test(lead) &&
    found.some((other) => isJustBehind(mark, other) || isShown(talk, mark, other))
  )
    return true;
  for (let off = 1; off <= BESIDE; off += 1)
    if (strange(mark.from - off) || strange(mark.to - 1 + off)) return false;
  return placed || STANDS.test(lead) || found.some((other) => isBeside(mark, other));
}

/** So many words on each side tell what a number is. */
const BESIDE = 4;
const TELLS = /^(thing|material|clock|turn)$/;

/** Where a footage stands: first of its clause, or behind words that read it off. */
const STANDS =
  /^((and|so|now|then|okay|ok|alright|well|um|uh|oh|yeah|yep|right|here|there|about|around|maybe|roughly|like|just|only|almost|nearly|el|la|los|en|but|let's|see|next|past|another|one|with|on|up|in|out|log|that)( |$))*$|\b(is|was|be|are|i'm|we're|you're|it's|that's|there's|that'll|here's|now|s|'s|got|get|gets|i have|we have|see|make|makes|only|just|then|and|or|still|put down|write down|footage|distance|location|on|over|under|out|about|around|roughly|joint|spot|place|hub|bell|(shy|short|north|south|tick|hair) of)( (it|that|her|us|this|about|around|maybe|roughly|like|just|right|almost|nearly|the|uh|um))*$/;

/** `12 wye L 6x4 -> 415`: read off first, then at once what is there. */
function isJustBehind(mark: Said, other: Said): boolean {
  return other.what !== "turn" && other.from >= mark.to && other.from - mark.to <= 2;
}

/** `fifty and here’s new pipe, PVC`: read off, and what is there is shown. */
function isShown(talk: Talk, mark: Said, other: Said): boolean {
  return (
    /^(thing|material)$/.test(other.what) &&
    other.from > mark.to &&
    /^(and |so |now |then |okay |oh |well |right )*(here's|there's|here is|there is|here comes|we've got|you've got|i've got|we got|you got|i got|i see|you see|we're in|we're into|might be|could be|may be|looks like|that's an?|it's an?|this is an?)\b/.test(
      wordsOf(talk, mark.to, other.from),
    )
  );
}

function isBeside(mark: Said, other: Said): boolean {
  return (
    (other.to <= mark.from && mark.from - other.to <= 2) ||
    (other.from >= mark.to && other.from - mark.to <= 1)
  );
}

/** `forty-two, forty-four and forty-eight`, `one, two, three`: houses, or counting. */
function isListed(talk: Talk, mark: Of<"distance">): boolean {
  const marks = inSentence(talk, mark.sentence);
  if (marks.some((other) => other.what === "thing" && other.thing.many)) return false;
  let from = mark.at;
  let to = mark.at;
  while (joins(talk, from - 1)) from -= 1;
  while (joins(talk, to)) to += 1;
  const many = talk.said.slice(from, to + 1).reduce((sum, one) => sum + numbersIn(one), 0);
  return to > from && many > 2;
}

function numbersIn(mark: Said): number {
  return mark.what === "distance" && mark.distance.choice ? 2 : 1;
}

/** Nothing but `and` between a bare number and the next. */
function joins(talk: Talk, at: number): boolean {
  const [one, next] = [talk.said[at], talk.said[at + 1]];
  if (one?.what !== "distance" || next?.what !== "distance") return false;
  if (one.sentence !== next.sentence || hasUnit(talk, one) || hasUnit(talk, next)) return false;
  return /^(and|or|)$/.test(wordsOf(talk, one.to, next.from));
}

/** `twenty-seven isn’t on this line`, `seventeen has the same`: a house; no footage has or refuses. */
function isSubject(talk: Talk, mark: Said): boolean {
  const [, next] = [mark, talk.said[mark.at + 1]];
  const to = next?.what === "distance" && isCoordinated(talk, next) ? next.to : mark.to;
  const rest = wordsOf(talk, to, Math.min(to + 3, spanAt(talk, mark.clause).to));
  if (
    /^(isn't|doesn't|don't|didn't|won't|can't|wasn't|hasn't|never|does|did|might|could|would|said|says|out here|across the)\b/.test(
      rest,
    )
  )
    return true;
  if (isCoordinated(talk, mark) && THEY.test(rest)) return true;
  const tells = inClause(talk, mark.clause).some(
    (other) => other.at > mark.at && /^(thing|material)$/.test(other.what),
  );
  return /^(has|have|had)\b/.test(rest) && !tells;
}

/** `thirty-two and thirty-four are the two in back`, `sixteen through twenty-four all tie in`: several do what people do. */
const THEY =
  /^((are|were) (the|both|all|on|in|next|rentals?|houses|mine|theirs|his|hers)|(all |both |each )?(share|tie|tied|have|belong|go|drain|use|want|pay|live|come|get|got|had|are))\b/;

function isCoordinated(talk: Talk, mark: Said): boolean {
  const [before, next] = [talk.said[mark.at - 1], talk.said[mark.at + 1]];
  const joint = /^(and|&|through|thru|or)$/;
  const pair =
    (before !== undefined && joint.test(wordsOf(talk, before.to, mark.from))) ||
    (next?.what === "distance" && joint.test(wordsOf(talk, mark.to, next.from)));
  const range = mark.what === "distance" && mark.distance.to !== null;
  const from = pair && before?.what === "distance" ? before.from : mark.from;
  return (pair || range) && !PLACES.test(wordsOf(talk, from - 2, from));
}

/** `the next house up is twenty-one`, `it’s the second door, seventeen`. */
const HOUSES =
  /\b((?:gray|grey|white|blue|green|yellow|red|brick|tan|brown|corner|end) one|house|door|address|neighbor|duplex|apartment|residence|home)('s)?( (?!at\b)[\w']+){0,4}$/;
const NOT_HOUSES =
  /\b(from|of|off|to|toward|towards|at|into|behind|outside|past|under|leaving|inside|in) (the|her|his|their|our|your|this|that) (\w+ )?(house|door|home)\b/;

function isHouse(talk: Talk, mark: Said): boolean {
  const { words } = talk.speech;
  const lead = words.slice(Math.max(0, mark.from - 8), mark.from);
  const own = lead.filter(({ sentence }) => sentence === mark.sentence).map(({ text }) => text);
  return HOUSES.test(own.join(" ")) && !NOT_HOUSES.test(own.join(" "));
}

const FIRST =
  /^((and|so|now|then|okay|ok|alright|well|um|uh|oh|yeah|at|about|around|maybe|anyway|anyhow|here) ?)*$/;

/** `goes from four to six`: pipe sizes, where nothing found there says otherwise. */
function isSizeStep({ distance }: Of<"distance">, found: readonly Said[]): boolean {
  const { from, to } = distance;
  if (to === null || !SIZES.has(from) || !SIZES.has(to)) return false;
  return !found.some(({ what }) => /^(thing|clock)$/.test(what));
}

/** `three inch, no, four` */
function isSizeInstead(talk: Talk, mark: Of<"distance">): boolean {
  const [size, turn] = [talk.said[mark.at - 2], talk.said[mark.at - 1]];
  return (
    size?.what === "diameter" &&
    size.sentence === mark.sentence &&
    isTurn(turn, "correction", "negation") &&
    SIZES.has(mark.distance.from)
  );
}

/** So many sentences on, its number alone is still the hour just told. */
const HOUR_BACK = 2;

/** `on the left like nine o’clock, he says don’t forget the clock, so yeah nine`: the hour once more. */
function isHourAgain(talk: Talk, mark: Of<"distance">): boolean {
  const last = talk.said
    .slice(0, mark.at)
    .findLast(({ what }) => what === "clock" || what === "distance");
  return (
    last?.what === "clock" &&
    last.clock * 100 === mark.distance.from &&
    mark.distance.to === null &&
    mark.sentence - last.sentence <= HOUR_BACK &&
    /\b(clock|o'clock|oclock)\b/.test(wordsOf(talk, last.from, mark.from))
  );
}

/** Pipe sizes of laterals and mains, inches in hundredths. */
const SIZES = new Set([200, 300, 400, 500, 600, 800, 1_000, 1_200]);

/** `on the counter`, `12.4`, `from the main`. */
function isReadOut(talk: Talk, mark: Of<"distance">, lead: string): boolean {
  if (mark.distance.base === "main") return true;
  if (/\b(counter|footage|reads|reading|reel)( (is|at|says|reads|shows|on|about|now))*$/.test(lead))
    return true;
  const own = wordsOf(talk, mark.from, mark.to);
  if (/\bpoint\b|\d\.\d|\d\+\d|\bfrom\b|\boff\b/.test(own)) return true;
  if (/^(flat|even|on the (nose|dot|button))\b/.test(wordsOf(talk, mark.to, mark.to + 3)))
    return true;
  if (mark.distance.from % 100 !== 0 && FIRST.test(lead)) return true;
  return /^(on|even on) (the |my )?(counter|footage|screen|reel|monitor)\b/.test(
    wordsOf(talk, mark.to, mark.to + 4),
  );
}

function hasUnit(talk: Talk, { from, to }: Said): boolean {
  return /\b(feet|foot|ft|footer)\b/.test(wordsOf(talk, from, to));
}

/** `gravel at thirty-nine`, `goes on till thirty`: only a house or an hour could stand there too. */
const AT = /\b(at|till|until)( (about|around|like|maybe|roughly|right|just|exactly|uh|um))*$/;
const PEOPLE =
  /\b(somebody|someone|neighbors?|folks|lady|guy|man|woman|customer|tenants?|owners?|people|family|parked|live|lives|meet|meeting|temperature|battery|pressure|light|lights|quoted|running|slope|grade|jetting|jetter|he's|he|she's|she|they|they're)\b/;

/** `we’re in the cleanout at twelve`; one that is passed is read off to the tenth. */
function isAtHouse({ distance }: Of<"distance">, lead: string): boolean {
  return (
    distance.from % 100 === 0 &&
    /\b(?<!\b(out|up) )(in|into|at|from|through|by|inside) (the |our |a |my )?([\w']+ )?cleanout at$/.test(
      lead,
    )
  );
}

/** `the trench’d be twelve feet`, `that maple’s twelve feet`: how far something else is. */
function isOfAnother(lead: string, strange: (at: number) => boolean, mark: Said): boolean {
  return (
    /\b(is|are|be|was|been|needs?|sits?|stands?|runs?|wants?|about|maybe|like|only|some)$/.test(
      lead,
    ) && [1, 2, 3, 4].some((off) => strange(mark.from - off))
  );
}

/** `frost goes down six feet`, `their snake won’t go past sixty feet`: behind a stranger, and nothing of the pipe told with it. */
function isOfStranger(talk: Talk, mark: Of<"distance">, { known, strange }: Around): boolean {
  const found = inSentence(talk, mark.sentence).some(
    (other) =>
      /^(thing|material|clock)$/.test(other.what) &&
      known.has(other.from) &&
      Math.max(other.from - mark.to, mark.from - other.to) <= BESIDE,
  );
  return !found && [1, 2, 3, 4, 5].some((off) => strange(mark.from - off));
}

const PLACES =
  /\b(at|around|near|between|past|mark|call it|say|by|until|till|to|from|through|reached|hit|hitting|passed|passing|approaching|up on|down to|closing in on)( (about|around|like|maybe|roughly|right|just|exactly|uh|um|the))*$/;
