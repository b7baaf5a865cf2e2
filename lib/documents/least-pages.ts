import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import { leastHeights, NATURAL } from "./block-heights.ts";
import { endingHeight } from "./ending-heights.ts";
import { BODY_WIDTH, FIRST_ROOM, PAGE_ROOM, SUBJECT } from "./letter-document.tsx";
import type { LetterSetting } from "./letter-settings.ts";
import { leastLines } from "./shaped-lines.ts";

/** Margins that a page's end may swallow. */
const SWALLOWED = 10;
/** So high a part that no page's end parts might be higher than a page, which is another matter. */
const TOO_HIGH = 500;

/**
 * The fewest pages that a letter can take in a setting: a bound, never more than it is drawn with,
 * found without drawing it.
 */
export function leastPages(letter: Letter, setting: LetterSetting): number {
  const own = pagesOf(letter, setting, FIRST_ROOM);
  return letter.also === undefined ? own : own + pagesOf(letter.also, setting, 0);
}

function pagesOf(letter: Letter, setting: LetterSetting, above: number): number {
  const manner = { ...setting, width: BODY_WIDTH, stripNote: "" };
  const special = (block: LetterBlock) => endingHeight(block, letter, setting);
  const stacked = leastHeights(letter.blocks, manner, special);
  if (stacked.some(({ height, whole }) => whole && height > TOO_HIGH)) return 1;
  const lines = leastLines(letter.subject, { size: SUBJECT, width: BODY_WIDTH, strong: true });
  const head = above + lines * SUBJECT * 1.2 + 4 + 8 * setting.air + NATURAL * setting.size + 8;
  const height = stacked.reduce((sum, each) => sum + each.height, head);
  return Math.max(1, Math.ceil(height / (PAGE_ROOM + SWALLOWED)));
}
