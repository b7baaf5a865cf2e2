import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import { type Columns, groups, sideBySide } from "./block-groups.ts";
import {
  aboveHeading,
  airOf,
  type BlockManner,
  type BlockOf,
  columnWidth,
} from "./block-manner.ts";
import { columnShares } from "./columns.ts";
import { leastLines } from "./shaped-lines.ts";

// How high blocks are at least, in points: the same sizes and margins as they are drawn with
// (blocks.tsx, table-block.tsx, picture-blocks.tsx), the fewest lines that their words can take.
// What is left out only makes a bound lower.

/** The typeface's own height of a line, where none is set, in sizes of its letters. */
export const NATURAL = 1.424;

type Special = (block: LetterBlock) => number;

/** What stands one below the other: how high at least, and whether a page's end may part it. */
export interface Stacked {
  readonly height: number;
  readonly whole: boolean;
}

/** Everything that Blocks draws, from above to below. */
export function leastHeights(
  blocks: readonly LetterBlock[],
  manner: BlockManner,
  special: Special,
): Stacked[] {
  const groupHeight = (group: readonly LetterBlock[], inside = manner) =>
    total(group.map((block) => leastHeight(block, inside, special)));
  const beside = ({ left, right, under }: Columns) => {
    const half = { ...manner, width: columnWidth(manner) };
    return Math.max(groupHeight(left, half), groupHeight(right, half)) + groupHeight(under);
  };
  return sideBySide(groups(blocks, manner), manner).map((entry) => {
    if ("kept" in entry) {
      const each = entry.kept.map((one) => ("left" in one ? beside(one) : groupHeight(one.group)));
      return { height: total(each), whole: true };
    }
    if ("left" in entry) return { height: beside(entry), whole: true };
    return { height: groupHeight(entry.group), whole: entry.group.length > 1 };
  });
}

function leastHeight(block: LetterBlock, manner: BlockManner, special: Special): number {
  const { width, size } = manner;
  const air = airOf(manner);
  switch (block.kind) {
    case "paragraph": {
      const strong = block.lead === true;
      return wordsHeight(block.text, manner, { strong }) + 7 * air;
    }
    case "heading": {
      const large = size + 1.5 * air;
      const lines = leastLines(block.text, { size: large, width, strong: true });
      return aboveHeading(manner) + lines * large * 1.2 + 4 * air;
    }
    case "list":
      return total(block.lines.map((line) => wordsHeight(line, manner, { indent: 13 }) + 3 * air));
    case "table":
      return tableHeight(block, manner);
    case "amount":
      return 2 * air + NATURAL * (size + 16 + 6 * air) + 9 * air;
    case "caution":
      return cautionHeight(block, manner);
    case "strip":
      return stripHeight(block, manner);
    case "pictures":
      return 0;
    default:
      return special(block);
  }
}

function wordsHeight(
  text: string,
  manner: BlockManner,
  { indent = 0, strong = false }: { readonly indent?: number; readonly strong?: boolean },
): number {
  const { size } = manner;
  const lines = leastLines(text, { size, width: manner.width - indent, strong });
  return lines * size * (1.2 + 0.2 * airOf(manner));
}

function cautionHeight({ title, text }: BlockOf<"caution">, manner: BlockManner): number {
  const { size } = manner;
  const [air, width] = [airOf(manner), manner.width - 11];
  const titles = leastLines(title, { size, width, strong: true });
  const lines = leastLines(text, { size: size - 0.5, width });
  return titles * size * 1.3 + lines * (size - 0.5) * (1.2 + 0.15 * air) + 2 + 6 * air;
}

function tableHeight(block: BlockOf<"table">, manner: BlockManner): number {
  const { width, tableSize } = manner;
  const air = airOf(manner);
  const shares = columnShares(block, { width, size: tableSize });
  const last = shares.length - 1;
  const tallest = (row: readonly string[], size: number) =>
    Math.max(
      0,
      ...row.map((text, column) => {
        const room = ((shares[column] ?? 0) / 100) * width - (column === last ? 0 : 8);
        return leastLines(text, { size, width: room });
      }),
    );
  const head = tallest(block.head, tableSize - 0.5) * (tableSize - 0.5) * 1.2;
  const rows = block.rows.map((row) => tallest(row, tableSize) * tableSize * 1.25 + 5 * air);
  // The room below is a note’s room above, where one follows.
  return 11 * air + (head > 0 ? head + 3 : 0) + total(rows);
}

function stripHeight({ drawing }: BlockOf<"strip">, manner: BlockManner): number {
  const { width, stripHeight: height = 250 } = manner;
  const plan = planStrip(drawing, { width, scale: null, from: 0, to: drawing.extent, height });
  return plan.height + 16 * airOf(manner);
}

function total(heights: readonly number[]): number {
  return heights.reduce((sum, each) => sum + each, 0);
}
