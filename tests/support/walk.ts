import { expect } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Walks from the house to the main, written as what is said, a caption a line, and then the rows
// that an experienced person would keep: `=> crack 22; roots ?`.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;
/** A footage is read off after the camera has gone on for a while. */
const READS =
  /\b(eight|nine|ten|eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)\b/i;

export interface Walk {
  readonly said: readonly string[];
  readonly rows: readonly string[];
}

/** One walk a paragraph. */
export function walksIn(text: string): Walk[] {
  return text
    .trim()
    .split(/\n\s*\n/)
    .map((paragraph) => {
      const lines = paragraph.split("\n").map((line) => line.trim());
      const rows = lines.at(-1)?.replace(/^=>\s*/, "") ?? "";
      return { said: lines.slice(0, -1), rows: rows.split("; ") };
    });
}

/** That the walk makes these rows, said with points and, as a machine captions it, without. */
export function expectRows({ said, rows }: Walk): void {
  for (const way of [said, said.map(bare)]) {
    const drafted = draftLog(captions(way), RUN).drafts.map(
      ({ kind, fault, counter }) => `${fault ?? kind} ${counter === null ? "?" : counter / 100}`,
    );
    expect(drafted.map((row, at) => asTold(row, rows[at])).sort()).toEqual([...rows].sort());
  }
}

/** A row of which no footage is expected, without its own. */
function asTold(row: string, expected = ""): string {
  return expected.endsWith(" ?") ? row.replace(/ \S+$/, " ?") : row;
}

function bare(line: string): string {
  return line.toLowerCase().replace(/[.,!?;…—]/g, "");
}

function captions(said: readonly string[]): string {
  let second = 0;
  const lines = ["In at the cleanout, counter's zero.", ...said, "Ninety, that's the main."];
  const cues = lines.map((line, at) => {
    if (at > 0) second += READS.test(line) ? 60 : 15;
    return `${clock(second)} --> ${clock(second + 8)}\n${line}\n`;
  });
  return `WEBVTT\n\n${cues.join("\n")}`;
}

function clock(second: number): string {
  const [minutes, seconds] = [Math.floor(second / 60), second % 60];
  return `00:${String(minutes).padStart(2, "0")}:${String(seconds).padStart(2, "0")}.000`;
}
