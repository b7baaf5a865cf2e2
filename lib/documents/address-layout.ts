import { faceMetrics } from "./fonts.ts";
import { DocumentRefused } from "./printable.ts";
import { FOLD, NUMBER_TEN, visibleBox } from "./window.ts";

/** Where each line of the address prints: tops of lines and size, in points. */
export interface AddressLayout {
  readonly left: number;
  readonly size: number;
  readonly lines: readonly { readonly text: string; readonly top: number }[];
}

/** Height of a line of the typeface over its size. */
const LINE = 1.424;
/** USPS: not below 8 points. */
const SMALLEST = 8;

const SIZES: readonly { readonly upTo: number; readonly size: number; readonly leading: number }[] =
  [
    { upTo: 3, size: 11, leading: 14 },
    { upTo: 4, size: 10.5, leading: 12.6 },
    { upTo: 5, size: 9.5, leading: 10 },
  ];

/**
 * Sets the address so that every line stays in the window with its clearance, whichever way the
 * folded sheet slides: smaller type for long lines, down to 8 points; a still longer first line is
 * broken in two where there is room. Throws DocumentRefused, with words, for what cannot be set.
 */
export function addressLayout(to: readonly string[]): AddressLayout {
  const box = visibleBox(NUMBER_TEN, FOLD);
  const width = box.right - box.left;
  const lines = breakLong(to, width);
  const fit = SIZES.find(({ upTo }) => lines.length <= upTo);
  if (!fit) throw new DocumentRefused(`The address of ${to[0] ?? ""} has more than five lines.`);
  const widest = Math.max(...lines.map(ems), 1);
  const size = Math.min(fit.size, Math.floor((width / widest) * 10) / 10);
  if (size < SMALLEST) {
    throw new DocumentRefused(
      `The address of ${to[0] ?? ""} has a line too long for the envelope’s window. Shorten it in the list of parties.`,
    );
  }
  const block = (lines.length - 1) * fit.leading + size * LINE;
  const top = box.top + (box.bottom - box.top - block) / 2;
  return {
    left: box.left,
    size,
    lines: lines.map((text, index) => ({ text, top: top + index * fit.leading })),
  };
}

function ems(text: string): number {
  return faceMetrics("regular").ems(text);
}

function breakLong(to: readonly string[], width: number): readonly string[] {
  const [name = "", ...rest] = to;
  if (ems(name) * SMALLEST <= width || to.length > 4) return to;
  const words = name.split(" ");
  const first: string[] = [];
  while (words.length > 1 && ems([...first, words[0]].join(" ")) * SMALLEST <= width) {
    first.push(words.shift() ?? "");
  }
  return first.length === 0 ? to : [first.join(" "), words.join(" "), ...rest];
}
