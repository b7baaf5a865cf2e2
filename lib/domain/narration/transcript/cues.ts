import type { TranscriptProblem } from "./said-line.ts";

/** A piece of a transcript that was said in one go. */
export interface Cue {
  /** Thousandths of a second; null where no readable time stood. */
  readonly start: number | null;
  readonly end: number | null;
  readonly text: string;
  /** The line on which the words begin, from 1. */
  readonly line: number;
}

/** As the standard has it: two or more digits of hours if any, point before exactly three digits. */
const STRICT_VTT = /^(?:\d{2,}:)?[0-5]\d:[0-5]\d\.\d{3}$/;
const STRICT_SRT = /^\d{2,}:[0-5]\d:[0-5]\d,\d{3}$/;
const LENIENT = /^(?:(\d+):)?(\d{1,3}):([0-5]\d)(?:[.,](\d{1,3}))?$/;

/** `1:02`, `01:02.500`, `1:01:02,500` → thousandths of a second; null if it is no time. */
export function timeOf(text: string): number | null {
  const found = LENIENT.exec(text.trim());
  if (!found) return null;
  const [, hours = "0", minutes = "0", seconds = "0", part = ""] = found;
  if (found[1] !== undefined && Number(minutes) > 59) return null;
  const whole = (Number(hours) * 60 + Number(minutes)) * 60 + Number(seconds);
  return whole * 1000 + Number(part.padEnd(3, "0"));
}

interface Block {
  /** From 1. */
  readonly line: number;
  readonly lines: readonly string[];
}

/**
 * The cues of a WebVTT or SRT file, with what is wrong by line. Notes and styles are left out;
 * tags and entities are taken out of the words. A cue with a bad time keeps its words.
 */
export function cuesOf(
  lines: readonly string[],
  format: "webvtt" | "srt",
): { cues: Cue[]; problems: TranscriptProblem[] } {
  const problems: TranscriptProblem[] = [];
  const cues: Cue[] = [];
  if (format === "webvtt" && !/^\s*$|^[A-Za-z-]+: /.test(lines[1] ?? ""))
    problems.push({ line: 2, message: "A blank line should follow WEBVTT" });
  let last = 0;
  for (const block of blocksOf(lines)) {
    if (format === "webvtt" && isAside(block)) continue;
    const read = cueOf(block, format);
    problems.push(...read.problems);
    for (const cue of read.cues) {
      if (cue.start !== null && cue.start < last)
        problems.push({ line: cue.line, message: "This time is earlier than the one above it" });
      last = Math.max(last, cue.start ?? 0);
      cues.push(cue);
    }
  }
  return { cues: withSilences(withoutRolled(cues)), problems };
}

/**
 * Captions that roll keep showing the line before below or above the new one: only what is new was
 * said then. A line once more is a repeat only where most captions begin with the line before.
 */
function withoutRolled(cues: readonly Cue[]): Cue[] {
  const rolls = cues.filter((cue, at) => at > 0 && startsWithLast(cue, cues[at - 1]));
  if (rolls.length * 2 < cues.length || cues.length < ROLLING) return [...cues];
  return cues.flatMap((cue, at) => {
    if (at === 0 || !startsWithLast(cue, cues[at - 1])) return [cue];
    const text = cue.text.split("\n").slice(1).join("\n").trim();
    return text === "" ? [] : [{ ...cue, text }];
  });
}

/** Between two that follow closely there are at most so many thousandths of a second. */
const CLOSE = 100;
/** A caption is spoken in at most so many times what its letters take on the whole, and this on top. */
const SLOWER = 1.4;
const ON_TOP = 500;

/**
 * Captions that each stand until the next comes, or longer, hide where nobody spoke: what a caption
 * takes longer than its letters is silence behind it. Where most leave gaps, their ends are true.
 */
function withSilences(cues: readonly Cue[]): Cue[] {
  const untils = cues.map(({ end }, at) => {
    const next = cues[at + 1]?.start ?? null;
    return end !== null && next !== null && next - end < CLOSE ? next : null;
  });
  if (untils.filter((until) => until !== null).length * 4 < cues.length * 3) return [...cues];
  const paces = cues.flatMap(({ start, text }, at) => {
    const until = untils[at] ?? null;
    return start !== null && until !== null && until > start && text.length >= PACED
      ? [(until - start) / text.length]
      : [];
  });
  const usual = paces.sort((a, b) => a - b)[Math.floor(paces.length / 2)];
  const pace = usual === undefined ? undefined : Math.min(usual, SLOWEST);
  return cues.map((cue, at) => {
    const until = untils[at] ?? null;
    if (pace === undefined || cue.start === null || until === null || until <= cue.start)
      return cue;
    const spoken = cue.start + cue.text.length * pace * SLOWER + ON_TOP;
    return { ...cue, end: Math.round(Math.min(until, spoken)) };
  });
}

/** Nobody takes longer for a letter, thousandths of a second. */
const SLOWEST = 110;
/** Shorter captions tell no pace, letters. */
const PACED = 15;

/** Fewer captions show no habit. */
const ROLLING = 4;

function startsWithLast(cue: Cue, before: Cue | undefined): boolean {
  const last = before?.text.split("\n").at(-1)?.trim();
  return last !== undefined && cue.text.split("\n")[0]?.trim() === last;
}

function blocksOf(lines: readonly string[]): Block[] {
  const blocks: { line: number; lines: string[] }[] = [];
  let open = false;
  for (const [index, line] of lines.entries()) {
    if (line.trim() === "" && !(line !== "" && isTiming(lines[index - 1] ?? ""))) open = false;
    else if (open) blocks.at(-1)?.lines.push(line);
    else {
      blocks.push({ line: index + 1, lines: [line] });
      open = true;
    }
  }
  return blocks;
}

function isAside({ line, lines: [first = ""], lines }: Block): boolean {
  if (line === 1 && first.startsWith("WEBVTT")) return !lines.some(isTiming);
  return /^(NOTE|STYLE|REGION)([ \t]|$)/.test(first) && !lines.some(isTiming);
}

/** Times with an arrow; an arrow that is too short is still seen where digits stand before it. */
function isTiming(line: string): boolean {
  return line.includes("-->") || /^\s*\d[\d:.,]*\s*-+>/.test(line);
}

/** A block holds one cue; where a blank line was forgotten, several. */
function cueOf(
  block: Block,
  format: "webvtt" | "srt",
): { cues: Cue[]; problems: TranscriptProblem[] } {
  const at = block.lines.flatMap((line, index) => (isTiming(line) ? [index] : []));
  const problems: TranscriptProblem[] = [];
  const cues: Cue[] = [];
  if (at.length === 0) {
    problems.push({ line: block.line, message: "No time stamp above this text" });
    cues.push(wordsOnly(block));
  }
  for (const [nth, index] of at.entries()) {
    const until = at[nth + 1] ?? block.lines.length;
    const timing = timingOf(block.lines[index] ?? "", format);
    const line = block.line + index;
    problems.push(...timing.messages.map((message) => ({ line, message })));
    if (nth > 0) problems.push({ line, message: "A blank line is missing above this time stamp" });
    const text = spoken(withoutNumber(block.lines.slice(index + 1, until), until, block));
    if (text === "") problems.push({ line, message: "No text below this time stamp" });
    else cues.push({ start: timing.start, end: timing.end, text, line: line + 1 });
  }
  return { cues, problems };
}

/** The next cue's number is no word of this one. */
function withoutNumber(lines: readonly string[], until: number, block: Block): readonly string[] {
  const more = until < block.lines.length;
  return more && /^\d+$/.test(lines.at(-1)?.trim() ?? "") ? lines.slice(0, -1) : lines;
}

function wordsOnly(block: Block): Cue {
  const [first = "", ...rest] = block.lines;
  const lines = /^\d+$/.test(first.trim()) && rest.length > 0 ? rest : block.lines;
  return { start: null, end: null, text: spoken(lines), line: block.line };
}

function timingOf(
  line: string,
  format: "webvtt" | "srt",
): { start: number | null; end: number | null; messages: string[] } {
  const [left = "", right = ""] = line.split(/-{1,3}>/);
  const endText = right.trim().split(/\s+/)[0] ?? "";
  const strict = format === "webvtt" ? STRICT_VTT : STRICT_SRT;
  const start = timeOf(left);
  const end = timeOf(endText);
  const messages = [left.trim(), endText].flatMap((time) => messageFor(time, strict));
  if (!line.includes("-->")) messages.push("The arrow should be written -->");
  else if (!(/\s$/.test(left) && /^\s/.test(right)))
    messages.push("There should be a space on both sides of the arrow");
  if (start !== null && end !== null && end <= start) {
    messages.push("This ends before it starts");
    return { start, end: null, messages };
  }
  return { start, end, messages };
}

function messageFor(time: string, strict: RegExp): string[] {
  if (strict.test(time)) return [];
  if (timeOf(time) === null) return [`“${time}” is not a valid time`];
  return [`“${time}” is not in this file type’s format; it was read anyway`];
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  nbsp: " ",
  quot: '"',
  apos: "'",
  lrm: "",
  rlm: "",
};

/** Words without tags (`<v Ann>`, `<i>`, `{\an8}`) and entities. */
function spoken(lines: readonly string[]): string {
  return lines
    .join("\n")
    .replace(/<v(?:\.[^ >\n]*)? ([^>\n]+)>/g, "[$1] ")
    .replace(/<[^>\n]*>|\{\\[^}\n]*\}/g, "")
    .replace(/&#(\d{1,6});/g, (_all, code: string) => String.fromCodePoint(Number(code)))
    .replace(/&([a-z]+);/g, (all, name: string) => ENTITIES[name] ?? all)
    .trim();
}
