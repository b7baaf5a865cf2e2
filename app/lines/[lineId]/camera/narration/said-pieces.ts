import { formatCell } from "#app/_components/grid/cell.ts";
import type { SaidLine } from "#lib/domain/narration/transcript/said-line.ts";
import type { DraftView } from "./draft-columns.ts";

/** Words of one line, with the rows that rest on them. */
export interface SaidPiece {
  /** Where it begins in all that was said. */
  readonly from: number;
  readonly text: string;
  /** Keys of rows; none where nothing was drafted from the words. */
  readonly keys: readonly string[];
}

export interface SaidPart {
  readonly from: number;
  /** `2:58`; empty where the transcript has no times. */
  readonly time: string;
  readonly pieces: readonly SaidPiece[];
}

const VIDEO = { key: "second", title: "", kind: "video" } as const;

/** What was said, line by line, cut where the words of a row begin or end. */
export function saidParts(
  lines: readonly SaidLine[],
  views: readonly Pick<DraftView, "key" | "span">[],
): SaidPart[] {
  return lines.map((line) => ({
    from: line.from,
    time: line.second === null ? "" : formatCell(VIDEO, Math.floor(line.second)),
    pieces: piecesOf(line, views),
  }));
}

function piecesOf(line: SaidLine, views: readonly Pick<DraftView, "key" | "span">[]): SaidPiece[] {
  const edges = views
    .flatMap(({ span }) => [span.from, span.to])
    .filter((edge) => edge > line.from && edge < line.to);
  const cuts = [...new Set([line.from, ...edges, line.to])].sort((a, b) => a - b);
  return cuts.slice(0, -1).map((from, at) => {
    const to = cuts[at + 1] ?? line.to;
    const keys = views.filter(({ span }) => span.from < to && span.to > from).map(({ key }) => key);
    return { from, text: line.text.slice(from - line.from, to - line.from), keys };
  });
}
