import type { Letter } from "#lib/domain/paper/letter.ts";
import type { BlockManner } from "./block-manner.ts";

/** How closely words and drawings of a letter may be set; a drawing’s words keep their size. */
export type LetterSetting = Required<
  Pick<BlockManner, "size" | "tableSize" | "air" | "stripHeight" | "pairs" | "columns">
> & {
  /** A short slip takes fewer lines, for a letter that it brings onto one page. */
  readonly slip: "long" | "short";
};

/** Its cautions beside each other: none of them alone at the head of a page. */
const ROOMY: LetterSetting = {
  ...{ size: 10.5, tableSize: 9.5, air: 1 },
  ...{ stripHeight: 230, pairs: true, columns: "none", slip: "long" },
};
const CLOSE: LetterSetting = { ...ROOMY, size: 10, tableSize: 9, air: 0.35 };

/** The roomiest first. */
export const LETTER_SETTINGS: readonly LetterSetting[] = [
  ROOMY,
  CLOSE,
  { ...CLOSE, size: 8.75, tableSize: 8.25, air: 0.25, columns: "sections" },
];

/** For a letter of words alone, which keeps to one page where it is legible there. */
export const PLAIN_SETTINGS: readonly LetterSetting[] = [
  ROOMY,
  CLOSE,
  { ...CLOSE, size: 9.5, tableSize: 8.75, air: 0.2, slip: "short" },
  { ...CLOSE, size: 9, tableSize: 8.5, air: 0.3, columns: "sections", slip: "short" },
];

/** Whether a letter has nothing but words: no drawing, no picture. */
export function isPlain({ blocks }: Letter): boolean {
  return blocks.every(({ kind }) => kind !== "strip" && kind !== "pictures");
}
