import { StyleSheet } from "@react-pdf/renderer";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import { INK } from "./ink.ts";
import type { PrintPicture } from "./pictures.ts";

export type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

/** What blocks look like: letters have room, sheets of a packet are for reference. */
export interface BlockManner {
  readonly width: number;
  readonly size: number;
  readonly tableSize: number;
  readonly stripNote: string;
  /** By the id of the stored file; without them captions stand alone. */
  readonly pictures?: ReadonlyMap<string, PrintPicture>;
  /** How closely it is set: 1 is roomy, 0.5 close. Type is never scaled by it. */
  readonly air?: number;
  /** Height that a strip should keep to; it leaves room for words on its page. */
  readonly stripHeight?: number;
  /** Cautions stand two beside each other. */
  readonly pairs?: boolean;
  /** Words alone stand in two columns: all of them, or sections with a heading each; or none. */
  readonly columns?: "all" | "sections" | "none";
}

const COLUMN_GAP = 18;

export const styles = StyleSheet.create({
  beside: { flexDirection: "row", justifyContent: "space-between" },
  paragraph: {},
  lead: { fontWeight: 600 },
  heading: { fontWeight: 600, lineHeight: 1.2 },
  point: { flexDirection: "row" },
  dash: { width: 13, color: INK.soft },
  pointText: { flex: 1 },
  table: {},
  head: {
    flexDirection: "row",
    borderBottomWidth: 0.75,
    borderBottomColor: INK.ink,
    paddingBottom: 3,
  },
  row: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: INK.faint,
  },
  cell: { paddingRight: 8, lineHeight: 1.25 },
  headCell: { paddingRight: 8, color: INK.soft, lineHeight: 1.2 },
  number: { textAlign: "right" },
  caution: {
    borderLeftWidth: 2,
    borderLeftColor: INK.ink,
    paddingLeft: 9,
    marginTop: 2,
  },
  cautionTitle: { fontWeight: 600, lineHeight: 1.3 },
  cautionText: {},
  amountWords: { color: INK.soft, marginBottom: 1 },
  amountFigure: { fontWeight: 600 },
  total: { borderBottomWidth: 0 },
  firstTotal: { borderTopWidth: 0.75, borderTopColor: INK.ink, marginTop: -0.4 },
  pictures: { flexDirection: "row", marginBottom: 8 },
  caption: { fontSize: 8.5, color: INK.soft, marginTop: 2, lineHeight: 1.3 },
});

export function columnWidth({ width }: BlockManner): number {
  return (width - COLUMN_GAP) / 2;
}

export function airOf({ air = 1 }: BlockManner): number {
  return air;
}

/** Margins, closer where the manner is. */
export function spaced(manner: BlockManner, margins: Readonly<Record<string, number>>) {
  const entries = Object.entries(margins).map(([name, size]) => [name, size * airOf(manner)]);
  return Object.fromEntries(entries) as Record<string, number>;
}

/** Room above a heading: never so little that it hangs on the words before it. */
export function aboveHeading(manner: BlockManner): number {
  return Math.max(4.5, 9 * airOf(manner));
}

/** A line height of 1.4 goes down to 1.25 where words are set closely. */
export function leading(manner: BlockManner, lineHeight: number) {
  return { lineHeight: 1.2 + (lineHeight - 1.2) * airOf(manner) };
}

/** Running words in the manner's size. */
export function set(
  manner: BlockManner,
  { lineHeight, ...margins }: { readonly lineHeight: number; readonly marginBottom?: number },
) {
  return {
    fontSize: manner.size,
    ...leading(manner, lineHeight),
    ...spaced(manner, { ...margins }),
  };
}
