import { type Cue, cuesOf, timeOf } from "./cues.ts";
import type { NarrationFormat, TranscriptProblem } from "./said-line.ts";

export interface Transcript {
  readonly format: NarrationFormat;
  readonly cues: readonly Cue[];
  readonly problems: readonly TranscriptProblem[];
}

/**
 * Reads a transcript: WebVTT, SRT, lines that begin with a time (m:ss or h:mm:ss), or plain text.
 * What cannot be read is named by its line; its words are kept all the same, without a time.
 */
export function parseTranscript(text: string): Transcript {
  const lines = text.replace(/^\uFEFF/, "").split(/\r\n|\n|\r/);
  const format = formatOf(lines);
  if (format === "webvtt" || format === "srt") return { format, ...cuesOf(lines, format) };
  if (format === "timed-lines") return { format, cues: timedLines(lines), problems: [] };
  return { format, cues: plainLines(lines), problems: [] };
}

function formatOf(lines: readonly string[]): NarrationFormat {
  if (/^WEBVTT([ \t]|$)/.test(lines[0] ?? "")) return "webvtt";
  if (lines.some((line) => line.includes("-->"))) return "srt";
  const said = lines.filter((line) => line.trim() !== "");
  const timed = said.filter((line) => timedLine(line) !== null);
  return timed.length > 0 && timed.length * 4 >= said.length ? "timed-lines" : "plain";
}

/** `1:05 wye left`, `[01:05] wye left`, `(0:01:05) - wye left`, `1:05.2 Tech: wye left`. */
const TIMED_LINE =
  /^\s*[[(]?((?:\d{1,3}:)?\d{1,3}:[0-5]\d(?:[.,]\d{1,3})?)[\])]?(?:\s*[-–—:|]\s*|\s+|$)(.*)$/;

/** `Dale Hobart   0:11`: who speaks, and when; the words stand below. */
const SPEAKER_LINE =
  /^\s*(\p{L}[\p{L}.'’ -]{0,30}?)(?:\s{2,}|\t|\s+[-–—|@]?\s*)[[(]?((?:\d{1,3}:)?\d{1,3}:[0-5]\d)[\])]?\s*$/u;

function timedLine(line: string): { start: number; text: string } | null {
  const speaker = SPEAKER_LINE.exec(line);
  const begins = timeOf(speaker?.[2] ?? "");
  if (speaker && begins !== null)
    return {
      start: begins,
      text: `[${(speaker[1] ?? "").replace(/[^\p{L} ]/gu, "").slice(0, 20)}]`,
    };
  const found = TIMED_LINE.exec(line);
  const start = timeOf(found?.[1] ?? "");
  return found && start !== null ? { start, text: found[2] ?? "" } : null;
}

function timedLines(lines: readonly string[]): Cue[] {
  const cues: Cue[] = [];
  for (const [index, line] of lines.entries()) {
    const timed = timedLine(line);
    const last = cues.at(-1);
    if (timed) cues.push({ start: timed.start, end: null, text: timed.text, line: index + 1 });
    else if (line.trim() === "") continue;
    else if (last) cues[cues.length - 1] = { ...last, text: `${last.text}\n${line}` };
    else cues.push({ start: null, end: null, text: line, line: index + 1 });
  }
  return cues.map((cue, index) => ({ ...cue, end: endOf(cue, cues[index + 1]) }));
}

/** Speech runs at about fifteen letters a second; a line cannot last beyond the next one's time. */
function endOf(cue: Cue, next: Cue | undefined): number | null {
  if (cue.start === null) return null;
  const spoken = cue.start + cue.text.length * 65;
  return next?.start == null || next.start <= cue.start ? spoken : Math.min(spoken, next.start);
}

function plainLines(lines: readonly string[]): Cue[] {
  return lines.flatMap((line, index) =>
    line.trim() === "" ? [] : [{ start: null, end: null, text: line, line: index + 1 }],
  );
}
