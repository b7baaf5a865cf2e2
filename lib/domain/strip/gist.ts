import { crowded } from "./crowds.ts";
import type { FileDrawing, StripMark, StripSpot } from "./drawing.ts";

/** A drawing of so many marks and spots goes with every page as it is. */
const SENT_WHOLE = 400;

/** At the first zoom so many marks of a kind beside each other are enough to see where they are. */
const APART = 40;

/**
 * What a page needs to draw the whole line once: of a long line, the marks without their sentences,
 * what is too close drawn as one. The rest is asked for when somebody looks closer.
 */
export interface StripGist {
  readonly drawing: FileDrawing;
  /** Nothing was left out. */
  readonly whole: boolean;
}

/** More marks than are laid out and drawn within a frame. */
const HEAVY = 150;

/** Whether laying the drawing out anew takes longer than a frame. */
export function isHeavy({ onPipe, above, below, holds, work }: FileDrawing): boolean {
  return lengths([onPipe, above, below, holds, work]) > HEAVY;
}

function lengths(lists: readonly (readonly unknown[])[]): number {
  return lists.reduce((sum, list) => sum + list.length, 0);
}

/** The gist of a drawing. */
export function gistOf(drawing: FileDrawing): StripGist {
  const { onPipe, above, below, holds, work, spots } = drawing;
  if (lengths([onPipe, above, below, holds, work, spots]) <= SENT_WHOLE)
    return { drawing, whole: true };
  const drawn = crowded(drawing, Math.ceil(drawing.extent / APART));
  const bare = (marks: readonly StripMark[]) => marks.map(withoutWords);
  return {
    whole: false,
    drawing: {
      ...drawn,
      onPipe: bare(drawn.onPipe),
      above: bare(drawn.above),
      below: bare(drawn.below),
      holds: bare(drawn.holds),
      work: bare(drawn.work),
      runs: drawn.runs.map((run) => ({ ...run, sentence: "" })),
      spots: [],
      choices: [],
    },
  };
}

function withoutWords({ crowd, ...mark }: StripMark): StripMark {
  if (crowd === undefined) return { ...mark, sentence: "" };
  return { ...mark, sentence: "", crowd: { count: crowd.count, ids: [] } };
}

/** What a drawing says of one thing that was chosen. */
export interface StripChosen {
  readonly id: string;
  readonly sentence: string;
  readonly spot: StripSpot | null;
}

/** What a drawing knows of one thing; null where it has no such thing. */
export function chosenOn(drawing: FileDrawing, id: string): StripChosen | null {
  const { onPipe, above, below, holds, work, spots, beside } = drawing;
  const mark = [...onPipe, ...above, ...below, ...holds, ...work].find((one) => one.id === id);
  const spot = spots.find((one) => one.id === id) ?? null;
  const said = mark ?? spot ?? beside.find((one) => one.id === id);
  return said === undefined ? null : { id, sentence: said.sentence, spot };
}
