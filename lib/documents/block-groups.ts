import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import { textWidth } from "#lib/domain/say/text-width.ts";
import { type BlockManner, columnWidth } from "./block-manner.ts";
import { columnShares } from "./columns.ts";

/** Two columns that no page's end parts, and what stays with them beneath. */
export interface Columns {
  readonly left: readonly LetterBlock[];
  readonly right: readonly LetterBlock[];
  readonly under: readonly LetterBlock[];
}

type Group = { readonly group: readonly LetterBlock[] };

/** Cautions two beside each other, that no page's end parts. */
interface Kept {
  readonly kept: readonly (Group | Columns)[];
}

type Entry = Group | Columns | Kept;

/** Groups in their order, with those in columns that the manner sets so. */
export function sideBySide(all: readonly LetterBlock[][], manner: BlockManner): Entry[] {
  const done: Entry[] = [];
  let run: LetterBlock[][] = [];
  let kind: "words" | "cautions" | "facts" | null = null;
  const close = () => {
    if (kind === "facts") done.push(...factColumns(run, manner));
    else done.push(...(kind === "words" ? inColumns(run, manner) : inPairs(run)));
    run = [];
  };
  for (const group of all) {
    const next = runKind(group, manner);
    if (next !== kind) close();
    kind = next;
    if (next === null) done.push({ group });
    else run.push(group);
  }
  close();
  return done;
}

function runKind(group: readonly LetterBlock[], { columns = "none", pairs = false }: BlockManner) {
  // A heading alone heads a table or a drawing: it stays with that.
  const alone = group.length === 1 && group[0]?.kind === "heading";
  const words = !alone && group.every(isWords);
  if (columns === "all" && words) return "words";
  if (pairs && isCaution(group)) return "cautions";
  if (pairs && !alone && isFacts(group)) return "facts";
  return columns === "sections" && words ? "words" : null;
}

const WORDS: readonly LetterBlock["kind"][] = ["heading", "paragraph", "list", "caution", "amount"];

function isWords({ kind }: LetterBlock): boolean {
  return WORDS.includes(kind);
}

/** A caution, with the signature that may stay with it. */
function isCaution([first, second]: readonly LetterBlock[]): boolean {
  return first?.kind === "caution" && (second === undefined || second.kind === "signature");
}

/** A heading with names and values, or with words, that can stand in half the width. */
function isFacts([first, ...rest]: readonly LetterBlock[]): boolean {
  return first?.kind === "heading" && rest.every((each) => isWords(each) || isFactTable(each));
}

/** Names and values: without titles, or so few that half the width does. */
function isFactTable(block: LetterBlock): block is Extract<LetterBlock, { kind: "table" }> {
  if (block.kind !== "table" || block.head.length !== 2) return false;
  return block.head.every((title) => title === "") || isShort(block);
}

/** So many lines stand in columns that no page's end parts. */
const MOST_LINES = 25;

/**
 * Facts, and words beside them, in two columns of about one height. Without facts, sections of words
 * stand in columns where the manner sets them so, and otherwise stay as they are.
 */
function factColumns(run: readonly LetterBlock[][], manner: BlockManner): Entry[] {
  if (!run.some((group) => group.some(isFactTable)))
    return manner.columns === "sections" ? inColumns(run, manner) : run.map((group) => ({ group }));
  const split = run.length < 2 ? null : cutOf(run, manner);
  if (split === null || split.lines > MOST_LINES) return run.map((group) => ({ group }));
  return [{ left: run.slice(0, split.at).flat(), right: run.slice(split.at).flat(), under: [] }];
}

function inPairs(run: readonly LetterBlock[][]): Entry[] {
  const kept = run.flatMap((group, at): (Group | Columns)[] => {
    if (at % 2 === 1) return [];
    const next = run[at + 1];
    if (next === undefined) return [{ group }];
    return [{ left: group.slice(0, 1), right: next.slice(0, 1), under: next.slice(1) }];
  });
  return kept.length === 0 ? [] : [{ kept }];
}

/** Columns are worth it where they are no higher than this part of the same in full width. */
const WORTH = 0.85;

/**
 * The run in two columns of about one height; a short one stays as it is, and sections that columns
 * hardly make lower.
 */
function inColumns(all: readonly LetterBlock[][], manner: BlockManner): Entry[] {
  const first = manner.columns === "all" ? 0 : all.findIndex(([one]) => one?.kind === "heading");
  const run = first < 0 ? [] : all.slice(first);
  const headings = run.filter(([one]) => one?.kind === "heading").length;
  const few = manner.columns === "all" ? run.length < 3 : headings < 2;
  if (few) return all.map((group) => ({ group }));
  const { at, lines } = cutOf(run, manner);
  const over = run.flat().reduce((sum, each) => sum + wordLines(each, manner, manner.width), 0);
  if (manner.columns === "sections" && lines > over * WORTH) return all.map((group) => ({ group }));
  return [
    ...all.slice(0, first).map((group) => ({ group })),
    { left: run.slice(0, at).flat(), right: run.slice(at).flat(), under: [] },
  ];
}

/** After which group columns part so that the taller one is as short as can be, and how many lines it has. */
function cutOf(run: readonly LetterBlock[][], manner: BlockManner): { at: number; lines: number } {
  const heights = run.map((group) => group.reduce((sum, each) => sum + wordLines(each, manner), 0));
  const sum = (part: readonly number[]) => part.reduce((all, each) => all + each, 0);
  const tallest = heights.map((_, at) =>
    Math.max(sum(heights.slice(0, at + 1)), sum(heights.slice(at + 1))),
  );
  const lines = Math.min(...tallest);
  return { at: tallest.indexOf(lines) + 1, lines };
}

/** About how many lines a block takes in a width, a column’s where nothing else is said. */
function wordLines(
  block: LetterBlock,
  manner: BlockManner,
  width: number = columnWidth(manner),
): number {
  const lines = (text: string, indent: number) =>
    Math.ceil(textWidth(text, manner.size, false) / (width - indent)) + 0.3;
  if (block.kind === "amount") return 2.7;
  if (block.kind === "heading") return lines(block.text, 0) + 0.8;
  if (block.kind === "paragraph") return lines(block.text, 0);
  if (block.kind === "list") return block.lines.reduce((sum, each) => sum + lines(each, 13), 0.3);
  if (isFactTable(block)) return factLines(block, manner, width);
  return block.kind === "caution" ? lines(block.title, 11) + lines(block.text, 11) + 0.4 : 0;
}

function factLines(
  block: Extract<LetterBlock, { kind: "table" }>,
  { tableSize: size }: BlockManner,
  width: number,
): number {
  const shares = columnShares(block, { width, size });
  const rowLines = (row: readonly string[]) =>
    row.map((text, column) =>
      Math.ceil(
        textWidth(text, size, false) / Math.max(1, ((shares[column] ?? 0) / 100) * width - 8),
      ),
    );
  return block.rows.reduce((sum, row) => sum + Math.max(1, ...rowLines(row)) + 0.3, 0.5);
}

/** A table that may break begins where its head and two rows have room. */
export function isLongTable([first, second]: readonly LetterBlock[]): boolean {
  const alone = second === undefined || isNote(second);
  return alone && first?.kind === "table" && !isShort(first);
}

/** A paragraph that explains the table before it. */
export function isNote(block: LetterBlock | undefined): boolean {
  return block?.kind === "paragraph" && block.note === true;
}

/** Where a page may end: not within a group, nor right after a heading. */
export function partingOf(group: readonly LetterBlock[]) {
  const [only] = group;
  const whole =
    (only?.kind === "table" && isShort(only)) || (only?.kind === "list" && only.lines.length <= 4);
  if (isLongTable(group)) return {};
  if (group.length > 1 || whole) return { wrap: false };
  return group[0]?.kind === "heading" ? { minPresenceAhead: 70 } : {};
}

/**
 * A heading stays with what it heads, and a sentence with the list that it announces, unless that is
 * so long that it must break itself. A signature stays with the words or the drawing before it: it
 * never stands alone on a page.
 */
export function groups(
  blocks: readonly LetterBlock[],
  { pairs = false }: Pick<BlockManner, "pairs"> = {},
): LetterBlock[][] {
  const done: LetterBlock[][] = [];
  for (const block of blocks) {
    const last = done.at(-1);
    if (last && staysWith(last, block, pairs)) last.push(block);
    else done.push([block]);
  }
  return done;
}

function staysWith(group: readonly LetterBlock[], block: LetterBlock, pairs: boolean): boolean {
  const last = group.at(-1);
  if (last === undefined) return false;
  if (block.kind === "signature") return SIGNED.includes(last.kind);
  if (isNote(block)) return last.kind === "table";
  if (group.length > 1) return false;
  if (pairs && last.kind === "heading" && isFactTable(block))
    return block.rows.length <= MOST_FACTS;
  const announces = last.kind === "paragraph" && last.text.endsWith(":");
  return (last.kind === "heading" || (announces && block.kind === "list")) && isShort(block);
}

/** Names and values that stay with their heading in half the width. */
const MOST_FACTS = 12;

/** What a signature may follow on the same page; long tables and lists break by themselves. */
const SIGNED: readonly LetterBlock["kind"][] = ["paragraph", "caution", "strip", "pictures"];

function isShort(block: LetterBlock): boolean {
  if (block.kind === "table") return block.rows.length <= 5;
  if (block.kind === "list") return block.lines.length <= 7;
  return ["paragraph", "amount", "strip"].includes(block.kind);
}
