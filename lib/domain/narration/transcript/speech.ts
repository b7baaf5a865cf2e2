import type { Cue } from "./cues.ts";
import { heardRight, joinedNumbers } from "./misheard.ts";
import type { NarrationFormat } from "./said-line.ts";
import { inEnglish } from "./spanish.ts";
import { cutWithoutPoints } from "./without-points.ts";
import type { Word } from "./word.ts";

export interface Speech {
  /** All that was said, in one piece, from which quotes are cut. */
  readonly spoken: string;
  readonly words: readonly Word[];
}

/** A silence as long as this ends a sentence. */
const PAUSE = 1_200;
/** A line as short as this was ended on purpose, not wrapped. */
const WRAPPED = 56;

type Break = "none" | "clause" | "sentence" | "question" | "breath";

interface Piece {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly time: number | null;
  readonly line: number;
  /** The name of a pipe stands behind it. */
  readonly size: boolean;
  readonly who: string | null;
}

/** What was said, cut into words, clauses, sentences and breaths. */
export function speechOf(cues: readonly Cue[], format: NarrationFormat): Speech {
  const pieces: (Piece | Break)[] = [];
  const wrapped = isWrapped(cues);
  let spoken = "";
  let before: Cue | null = null;
  let stranger = false;
  for (const cue of cues) {
    const pause = before ? breakBetween(before, cue, { format, wrapped }) : "none";
    if (before) spoken += " ";
    const said = saidIn(cue, spoken.length, stranger && pause !== "breath");
    pieces.push(pause, ...said.pieces);
    stranger = said.stranger;
    spoken += cue.text.replace(/\s/g, " ");
    before = cue;
  }
  return { spoken, words: wordsOf(pieces, isUnpunctuated(spoken)) };
}

/** What those who see the pipe say in a cue, and whether somebody else speaks at its end. */
function saidIn(
  cue: Cue,
  offset: number,
  before: boolean,
): { readonly pieces: (Piece | Break)[]; readonly stranger: boolean } {
  const pieces: (Piece | Break)[] = [];
  let stranger = before;
  for (const turn of turnsIn(cue)) {
    if (turn.who !== null) {
      stranger = isStranger(turn.who);
      pieces.push("sentence");
    }
    if (!stranger) pieces.push(...piecesOf(cue, turn, offset));
  }
  return { pieces, stranger };
}

interface SpokenTurn {
  /** As labeled; null where the text names nobody. */
  readonly who: string | null;
  readonly from: number;
  readonly to: number;
}

const LABEL =
  /\[([\p{L}\d ]{1,20})\]:?|(?<=^|\n)\s*((?:Tech|Technician|Operator|Owner|Homeowner|Customer|Client|Helper|Neighbor|Tenant|Realtor|Agent|Buyer|Seller|Manager|Inspector|Plumber|Man|Woman|Speaker)(?: \d)?):(?=\s)/gu;

/** `[Owner] How long? [Tech] Fourteen two.`: who says which words of a cue. */
function turnsIn({ text }: Cue): SpokenTurn[] {
  const turns: { who: string | null; from: number; to: number }[] = [];
  let from = 0;
  let who: string | null = null;
  for (const found of text.matchAll(LABEL)) {
    turns.push({ who, from, to: found.index });
    who = found[1] ?? found[2] ?? null;
    from = found.index + found[0].length;
  }
  turns.push({ who, from, to: text.length });
  return turns.filter((turn) => turn.to > turn.from);
}

/** Who stands by and asks, without seeing what the technician sees. */
function isStranger(who: string): boolean {
  return /owner|customer|client|neighbo|tenant|resident|lady|wife|husband|realtor|agent|buyer|seller|manager/i.test(
    who,
  );
}

/** Captions made by a machine: hardly a point or comma in them. */
function isUnpunctuated(spoken: string): boolean {
  const words = spoken.split(" ").length;
  return (spoken.match(/[.,;!?]/g) ?? []).length * 30 < words;
}

function breakBetween(
  before: Cue,
  next: Cue,
  { format, wrapped }: { readonly format: NarrationFormat; readonly wrapped: boolean },
): Break {
  if (format === "timed-lines") return "breath";
  if (format === "plain") {
    const apart = next.line - before.line > 1 || !wrapped;
    return apart || before.text.length < WRAPPED || isListLine(next.text) ? "breath" : "none";
  }
  if (next.start === null || before.end === null) return "breath";
  if (next.start - before.end < PAUSE) return "none";
  return isInMidPhrase(before.text, next.text) ? "none" : "breath";
}

/** Nobody ends a sentence with these: the phrase goes on in the next caption, however long it took. */
const DANGLING =
  /(^|\s)(at|the|a|an|of|from|about|into|point|my|your|our|their|another|between|el|los|las|del|con|un|una|hasta|desde),?$/i;
/** `no permit i looked at`, and somebody begins anew. */
const BEGINNING =
  /^(and|but|so|it|it's|i|i'm|we|we're|there|there's|that's|okay|alright|now|then|you|this is|here's)\b/i;
/** Nor begins one with what only follows a number. */
const CONTINUING =
  /^(point|and a (half|quarter|third)|and three quarters|and change|feet|foot|ft|inch|inches|percent|o'clock|y medi[ao]|pies|pulgadas|punto|(back |up |down |on |on up |on back )?(to|till|until|through) (about |around |like |maybe )?(\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|oh))/i;

/** A caption that ends in tens, and one that begins with what belongs to them: `twenty` | `three six`. */
const TENS = /\b(twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)$/i;
/** `two taps across from each other` is a count. */
const UNIT =
  /^(one|two|three|four|five|six|seven|eight|nine)\b(?! (of (them|those|these)|(?!(feet|theres|thats|its|is|was|has|heres)\b)(\w+ )?(\w+s|more|big|little|old|small|inch))\b)/i;

function isInMidPhrase(before: string, next: string): boolean {
  const [end, begin] = [before.trim(), next.trim()];
  return (
    (DANGLING.test(end) && !BEGINNING.test(begin)) ||
    CONTINUING.test(begin) ||
    (TENS.test(end) && UNIT.test(begin))
  );
}

/** Most lines of plain text are long and end within a sentence: they were wrapped, not ended on purpose. */
function isWrapped(cues: readonly Cue[]): boolean {
  const long = cues.filter(({ text }) => text.length >= WRAPPED);
  const ended = cues.filter(({ text }) => /[.!?]\s*$/.test(text));
  return long.length * 2 >= cues.length - 1 && ended.length * 2 <= cues.length;
}

function isListLine(text: string): boolean {
  return /^\s*([-•*@]|\d+(\.\d+)?\s)/.test(text);
}

/** What a size in inches is told of. */
const PIPE = /^(vcp|pvc|abs|clay|ci|cast|pipe|line|tee|wye|tap|concrete|iron|plastic)\b/i;

/** Words, numbers as they are written, and what cuts a sentence; longest kinds first. */
const PART = new RegExp(
  [
    String.raw`\d{1,2}\/\d{1,2}\/\d{2,4}|\d{1,2}\.\d{1,2}\.\d{2,4}|\d{1,2}-\d{1,2}-\d{2,4}`,
    String.raw`\(?\d{3}\)?[-. ]\d{3}[-.]\d{4}|\d{3}-\d{4}`,
    String.raw`\b[a-z]{1,4}-\d+(?:-\d+)*\b`,
    String.raw`\d+:\d\d(?::\d\d)?`,
    String.raw`\d+\+\d+(?:\.\d+)?`,
    String.raw`\d+(?:st|nd|rd|th)\b`,
    String.raw`\d+x\d+`,
    String.raw`\d+\/\d+|[½¼¾]`,
    String.raw`\d{1,3}(?:,\d{3})+`,
    String.raw`\d+['’]s\b`,
    String.raw`\d+(?:\.\d+)?|\.\d+`,
    String.raw`(?<=\d\s?)(?:in|ft)\.`,
    String.raw`\bnos?\.(?=\s?\d)`,
    String.raw`\b(?:approx|mr|mrs|ms|dr|est|ave|st|long|lat|conn|inv|jt)\.(?=\s)`,
    String.raw`\bc\/o\b|\bw\/`,
    String.raw`(?<=\d\s*)['’′](?!\p{L})|(?<=\d\s*)["”″]|(?:''|’’)`,
    String.raw`\bh2o\b`,
    String.raw`\p{L}+(?:['’]\p{L}+)*['’]?`,
    ">{2,}",
    "[%#$@>→]",
    String.raw`[.?!;¿¡]+|,|[:…—–()\]]|--|(?<=\s)-(?=\s)|(?<=\d\s?['’′"”″]?)-(?=\d)|\n`,
  ].join("|"),
  "giu",
);

function piecesOf(cue: Cue, turn: SpokenTurn, offset: number): (Piece | Break)[] {
  const span = cue.start === null || cue.end === null ? null : cue.end - cue.start;
  const text = cue.text.slice(0, turn.to);
  const parts = new RegExp(PART.source, PART.flags);
  parts.lastIndex = turn.from;
  return [...text.matchAll(parts)].flatMap((found): (Piece | Break)[] => {
    const [part] = found;
    const behind = text.slice(found.index + part.length).trimStart();
    const cut = cutBy(part);
    if (cut) return cutAt(text, found.index, { cut, line: cue.line });
    const share = found.index / Math.max(1, cue.text.length);
    const from = offset + found.index;
    const time = cue.start === null ? null : Math.round(cue.start + share * (span ?? 0));
    const size = PIPE.test(behind);
    const piece = {
      text: part,
      from,
      to: from + part.length,
      time,
      line: cue.line,
      size,
      who: turn.who,
    };
    if (/^outta$/i.test(part)) return ["out", "of"].map((word) => ({ ...piece, text: word }));
    // `6 in. Clay` ends a sentence, `6 in. clay` does not.
    const ends = /^(in|ft)\.$/i.test(part) && /^\p{Lu}/u.test(behind);
    return ends ? [piece, "sentence"] : [piece];
  });
}

/** What a mark cuts where it stands: nothing within a length or a range. */
function cutAt(
  text: string,
  index: number,
  { cut, line }: { readonly cut: Break; readonly line: number },
): (Piece | Break)[] {
  if (cut !== "clause") return [cut];
  if (text[index] === "," && joinsFeet(text, index)) return [];
  // `22-1/2`
  if (/^-[1-7]\/[2348]\b/.test(text.slice(index))) return [];
  return [betweenDigits(text, index, line) ?? cut];
}

/** What a mark between words cuts; null for a word. */
function cutBy(part: string): Break | null {
  if (/^(\.{2,}|[,:…—–()\]]|--|-)$/.test(part)) return "clause";
  // `>> eight >> eight what`: somebody else speaks.
  if (/^>{2,}$/.test(part)) return "sentence";
  if (/^[.?!;¿¡]+$/.test(part)) return part.includes("?") ? "question" : "sentence";
  return part === "\n" ? "none" : null;
}

/** `seventy-four feet, eight inches` is one length. */
function joinsFeet(text: string, index: number): boolean {
  return (
    /\b(feet|foot|ft)\.?\s?$/i.test(text.slice(0, index)) &&
    /^,\s+(?:and\s+)?[\w-]+(?:\s[\w-]+)?\s+inch(es)?\b/i.test(text.slice(index))
  );
}

/** `41-47` is from 41 to 47; the dash is read as the word `to`. */
function betweenDigits(text: string, index: number, line: number): Piece | null {
  const dash = /^[-–]$/.test(text[index] ?? "") && !/^\s?[1-7]\/[2348]/.test(text.slice(index + 1));
  const joins =
    /\d\s?['’′"”″]?\s?$/.test(text.slice(0, index)) && /^\s?\d/.test(text.slice(index + 1));
  return dash && joins
    ? { text: "to", from: -1, to: -1, time: null, line, size: false, who: null }
    : null;
}

const FILLERS = new Set(["uh", "um", "uhm", "er", "erm", "hmm", "mm", "ah", "eh"]);

function wordsOf(pieces: readonly (Piece | Break)[], unpunctuated: boolean): Word[] {
  const words: Word[] = [];
  const asked = new Set<number>();
  let fresh: Break = "none";
  let filler = false;
  for (const piece of pieces) {
    if (piece === "question") asked.add(words.at(-1)?.sentence ?? -1);
    if (typeof piece === "string") {
      // "at, uh, forty": the second comma belongs to the filler.
      if (!(filler && piece === "clause")) fresh = stronger(fresh, piece);
      continue;
    }
    filler = FILLERS.has(piece.text.toLowerCase());
    if (filler) continue;
    const last = words.at(-1);
    words.push(wordOf(piece, last, last ? placeAfter(last, fresh) : FIRST));
    fresh = "none";
  }
  const heard = heardRight(
    joinedNumbers(words).map((word) => ({ ...word, asks: asked.has(word.sentence) })),
  );
  const english = inEnglish(heard);
  return unpunctuated ? cutWithoutPoints(english) : english;
}

type WordPlace = Pick<Word, "clause" | "sentence" | "breath">;

const FIRST: WordPlace = { clause: 0, sentence: 0, breath: 0 };

function placeAfter({ clause, sentence, breath }: WordPlace, cut: Break): WordPlace {
  const strength = STRENGTH.indexOf(cut);
  const counts = (least: Break) => (strength >= STRENGTH.indexOf(least) ? 1 : 0);
  return {
    clause: clause + counts("clause"),
    sentence: sentence + counts("sentence"),
    breath: breath + counts("breath"),
  };
}

function wordOf(piece: Piece, before: Word | undefined, place: WordPlace): Word {
  const inText = piece.from >= 0;
  return {
    text: isInches(piece, before) ? "inch" : plainWord(piece.text),
    from: inText ? piece.from : (before?.to ?? 0),
    to: inText ? piece.to : (before?.to ?? 0),
    time: piece.time ?? before?.time ?? null,
    line: piece.line,
    ...place,
    capital: /^\p{Lu}/u.test(piece.text),
    possessive: /\d['’]s$|\p{L}['’]s?$/iu.test(piece.text) && !/in['’]$/i.test(piece.text),
    asks: false,
    who: piece.who,
  };
}

/** `6 in clay`: a size, cut out as such by what stands around it. */
function isInches(piece: Piece, before: Word | undefined): boolean {
  return piece.text === "in" && piece.size && /\d$/.test(before?.text ?? "");
}

const STRENGTH: readonly Break[] = ["none", "clause", "sentence", "question", "breath"];

function stronger(a: Break, b: Break): Break {
  return STRENGTH.indexOf(a) > STRENGTH.indexOf(b) ? a : b;
}

/** As they are written short, and as they are said in full. */
const IN_FULL: ReadonlyMap<string, string> = new Map([
  ["no.", "number"],
  ["nos.", "numbers"],
  ["in.", "inch"],
  ["ft.", "feet"],
  ["approx.", "approximately"],
  ["approx", "approximately"],
  ["c/o", "cleanout"],
  ["w/", "with"],
  ["@", "at"],
  ["jt", "joint"],
  ["jts", "joints"],
  ["med", "medium"],
  ["lat", "lateral"],
  ["lats", "laterals"],
  ["conn", "connection"],
  ["svc", "service"],
  ["h2o", "water"],
  ["inv", "invert"],
  ["frac", "fracture"],
  ["circ", "circumferential"],
  ["hvy", "heavy"],
  ["mod", "moderate"],
  ["sev", "severe"],
  ["infil", "infiltration"],
  ["obst", "obstruction"],
  [">", "to"],
  ["→", "to"],
  ["½", "1/2"],
  ["¼", "1/4"],
  ["¾", "3/4"],
  ["decimal", "point"],
  ["display", "counter"],
  ["readout", "counter"],
  ["niner", "nine"],
  ["fiver", "five"],
  ["an'", "and"],
  ["'n'", "and"],
  ["n'", "and"],
]);

/** Short forms that are written without their mark and can be nothing else. */
const UNMARKED = new Map(
  "that's there's here's what's who's how's i'm i've you're you've we've they're they've don't doesn't didn't isn't wasn't aren't weren't can't couldn't wouldn't shouldn't hasn't haven't hadn't ain't y'all"
    .split(" ")
    .map((word) => [word.replace("'", ""), word]),
);

/** Short forms that stay as they are; elsewhere `’s` is dropped: `the joint’s open`. */
const KEEP_S = /^(that|it|there|here|what|let|he|she|who|where|how|this)'s$/;

/** `comin`, `runnin`: written as it is said, without the mark. */
const SAID_SHORT =
  /^(com|go|runn|dripp|lay|ly|sitt|hang|hold|stick|pok|leak|seep|look|gett|push|pull|start|stopp|break|crack|dropp|sagg|feed|ty|mov|turn|see|show|feel|say|fall|pour|squirt|feel|flow|stand|grow|work|catch|mak|tak|giv|read|count|back|head|keep|try|tell|talk|think|us|do|be|flush)in$/;

function plainWord(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"');
  if (plain === "'" || plain === '"') return plain === "'" ? "foot" : "inches";
  const full = IN_FULL.get(plain) ?? UNMARKED.get(plain);
  if (full !== undefined) return full;
  if (/^\d{1,3}(,\d{3})+$/.test(plain)) return plain.replaceAll(",", "");
  if (/^[a-z]+in'$/.test(plain) || SAID_SHORT.test(plain)) return `${plain.replace(/'$/, "")}g`;
  const bare = plain.replace(/'$/, "");
  return KEEP_S.test(bare) ? bare : bare.replace(/'s$/, "");
}
