import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import { NATURAL } from "./block-heights.ts";
import type { BlockOf } from "./block-manner.ts";
import type { LetterSetting } from "./letter-settings.ts";
import { leastLines } from "./shaped-lines.ts";

// How high the ending of a letter is at least, in points: as letter-ending.tsx draws it:
// what is made lower there is made lower here, or a letter may be set in another way than it should.

/** The lines at the foot of a slip to sign on, without the room above them. */
const SIGNED = 2.5 + 8 * NATURAL;
const SMALL = 9 * 1.35;

/** The signature or the slip; 0 for what else a letter has. */
export function endingHeight(block: LetterBlock, letter: Letter, setting: LetterSetting): number {
  if (block.kind === "signature") return signatureHeight(block, setting);
  if (block.kind !== "answer-slip") return 0;
  return setting.slip === "short" ? shortSlip(block, setting) : longSlip(block, letter, setting);
}

function signatureHeight(
  { lines }: BlockOf<"signature">,
  { air, slip }: Pick<LetterSetting, "air" | "slip">,
): number {
  if (slip === "short") return 4 + 10 * air + 20 + 3.5 + 9.5 * 1.35;
  const [by = "", ...contact] = lines;
  const shown = (air === 1 ? lines : [by, contact.join("")]).filter((line) => line !== "");
  return 2 + 10 * air + 10.5 * NATURAL + 16 + 20 * air + 3.5 + shown.length * 9.5 * 1.35;
}

function longSlip(
  { choices }: BlockOf<"answer-slip">,
  letter: Letter,
  { air }: LetterSetting,
): number {
  const close = air < 1;
  const to = leastLines(letter.from.join(", "), { size: 9, width: 468 });
  const head = 4 + 14 * air + 3.75 + 8 * NATURAL + (close ? 3 : 8) + 13 * NATURAL;
  const about = (close ? 3 : 6) + (1 + to) * SMALL + (close ? 4 : 8);
  const room = close ? { size: 9.5, width: 211 } : { size: 10.5, width: 451 };
  const heights = choices.map((text) => leastLines(text, room) * room.size * 1.35 + 2);
  const note = (close ? 3 : 8) + 8 * NATURAL + (close ? 15 : 38);
  return head + about + rowsOf(heights, close) + note + (close ? 14 : 20) + SIGNED;
}

function shortSlip({ choices }: BlockOf<"answer-slip">, { air }: LetterSetting): number {
  const head = 4 + 14 * air + 8 * NATURAL + 12 * NATURAL + 1 + SMALL + 3;
  const one = 9.5 * 1.35 + 1;
  // Few choices may stand in one row.
  const rows = choices.length > 3 ? Math.ceil(choices.length / 2) : Math.min(1, choices.length);
  return head + rows * one + 4 + 15 + 14 + SIGNED;
}

/** Heights one below the other, or two in a row. */
function rowsOf(heights: readonly number[], twoInRow: boolean): number {
  const rows = heights.flatMap((height, at) => {
    if (!twoInRow) return [height];
    return at % 2 === 0 ? [Math.max(height, heights[at + 1] ?? 0)] : [];
  });
  return rows.reduce((sum, each) => sum + each, 0);
}
