import type { Cue } from "./cues.ts";
import type { NarrationFormat } from "./draft.ts";

/** A spoken word, as the rest of this room reads it. */
export interface Word {
  /** Small letters, no hyphens; a number as digits stands as it was written. */
  readonly text: string;
  /** Where it stands in what was spoken. */
  readonly from: number;
  readonly to: number;
  /** Thousandths of a second; null in text without times. */
  readonly time: number | null;
  /** Clauses and sentences are numbered through from 0. */
  readonly clause: number;
  readonly sentence: number;
  /** Written with a capital. */
  readonly capital: boolean;
}

export interface Speech {
  /** All that was said, in one piece, from which quotes are cut. */
  readonly spoken: string;
  readonly words: readonly Word[];
}

/** A silence as long as this ends a sentence. */
const PAUSE = 1_200;
/** A line as short as this was ended on purpose, not wrapped. */
const WRAPPED = 56;

type Break = "none" | "clause" | "sentence";

interface Piece {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  readonly time: number | null;
}

/** What was said, cut into words, clauses and sentences. */
export function speechOf(cues: readonly Cue[], format: NarrationFormat): Speech {
  const pieces: (Piece | Break)[] = [];
  let spoken = "";
  let before: Cue | null = null;
  for (const cue of cues) {
    if (before) {
      pieces.push(breakBetween(before, cue, format));
      spoken += " ";
    }
    pieces.push(...piecesOf(cue, spoken.length));
    spoken += cue.text.replace(/\s/g, " ");
    before = cue;
  }
  return { spoken, words: wordsOf(pieces) };
}

function breakBetween(before: Cue, next: Cue, format: NarrationFormat): Break {
  if (format === "timed-lines") return "sentence";
  if (format === "plain") {
    const apart = next.line - before.line > 1;
    return apart || before.text.length < WRAPPED || isListLine(next.text) ? "sentence" : "none";
  }
  if (next.start === null || before.end === null) return "sentence";
  return next.start - before.end >= PAUSE ? "sentence" : "none";
}

function isListLine(text: string): boolean {
  return /^\s*([-•*]|\d+(\.\d+)?\s)/.test(text);
}

const PART =
  /\d+:\d\d|\d+\+\d+(?:\.\d+)?|\d+(?:\.\d+)?|\.\d+|(?<=\d\s*)['’′](?![a-z])|(?<=\d\s*)["”″]|(?:''|’’)|[a-z]+(?:['’][a-z]+)*['’]?|%|#|[.?!;]+|,|[:…—–]|--|(?<=\s)-(?=\s)|(?<=\d)-(?=\d)|\n/gi;

function piecesOf(cue: Cue, offset: number): (Piece | Break)[] {
  const span = cue.start === null || cue.end === null ? null : cue.end - cue.start;
  return [...cue.text.matchAll(PART)].map((found) => {
    const [text] = found;
    if (/^(\.{2,}|[,:…—–]|--|-)$/.test(text))
      return betweenDigits(cue.text, found.index) ?? "clause";
    if (/^[.?!;]+$/.test(text)) return "sentence";
    if (text === "\n") return "none";
    const share = found.index / Math.max(1, cue.text.length);
    const from = offset + found.index;
    const time = cue.start === null ? null : Math.round(cue.start + share * (span ?? 0));
    return { text, from, to: from + text.length, time };
  });
}

/** `41-47` is from 41 to 47; the dash is read as the word `to`. */
function betweenDigits(text: string, index: number): Piece | null {
  const dash = /^[-–]$/.test(text[index] ?? "");
  return dash && /\d$/.test(text.slice(0, index)) && /^\d/.test(text.slice(index + 1))
    ? { text: "to", from: -1, to: -1, time: null }
    : null;
}

const FILLERS = new Set(["uh", "um", "uhm", "er", "erm", "hmm", "mm", "ah", "eh"]);

function wordsOf(pieces: readonly (Piece | Break)[]): Word[] {
  const words: Word[] = [];
  let clause = 0;
  let sentence = 0;
  let fresh: Break = "none";
  let filler = false;
  for (const piece of pieces) {
    if (typeof piece === "string") {
      // "at, uh, forty": the second comma belongs to the filler.
      if (!(filler && piece === "clause")) fresh = stronger(fresh, piece);
      continue;
    }
    filler = FILLERS.has(piece.text.toLowerCase());
    if (filler) continue;
    if (words.length > 0 && fresh !== "none") clause += 1;
    if (words.length > 0 && fresh === "sentence") sentence += 1;
    fresh = "none";
    words.push(wordOf(piece, words.at(-1), { clause, sentence }));
  }
  return words;
}

function wordOf(
  piece: Piece,
  before: Word | undefined,
  place: { readonly clause: number; readonly sentence: number },
): Word {
  const inText = piece.from >= 0;
  return {
    text: plainWord(piece.text),
    from: inText ? piece.from : (before?.to ?? 0),
    to: inText ? piece.to : (before?.to ?? 0),
    time: piece.time ?? before?.time ?? null,
    ...place,
    capital: /^[A-Z]/.test(piece.text),
  };
}

function stronger(a: Break, b: Break): Break {
  if (a === "sentence" || b === "sentence") return "sentence";
  return a === "clause" || b === "clause" ? "clause" : "none";
}

/** Short forms that stay as they are; elsewhere `’s` is dropped: `the joint’s open`. */
const KEEP_S = /^(that|it|there|here|what|let|he|she|who|where|how|this)'s$/;

function plainWord(text: string): string {
  const plain = text
    .toLowerCase()
    .replace(/[’′]/g, "'")
    .replace(/[”″]|''/g, '"');
  if (plain === "'" || plain === '"') return plain === "'" ? "foot" : "inches";
  if (/^[a-z]+in'$/.test(plain)) return `${plain.slice(0, -1)}g`;
  const bare = plain.replace(/'$/, "");
  return KEEP_S.test(bare) ? bare : bare.replace(/'s$/, "");
}
