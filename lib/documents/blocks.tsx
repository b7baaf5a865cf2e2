import { Image, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import { columnShares } from "./columns.ts";
import { INK } from "./ink.ts";
import type { PrintPicture } from "./pictures.ts";
import { StripSvg } from "./strip-svg.tsx";

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

/** A strip in a letter should leave room for words on its page. */
const STRIP_HEIGHT = 250;

/** What blocks look like: letters have room, sheets of a packet are for reference. */
export interface BlockManner {
  readonly width: number;
  readonly size: number;
  readonly tableSize: number;
  readonly stripNote: string;
  /** By the id of the stored file; without them captions stand alone. */
  readonly pictures?: ReadonlyMap<string, PrintPicture>;
}

const styles = StyleSheet.create({
  paragraph: { lineHeight: 1.4, marginBottom: 7 },
  heading: { fontWeight: 600, marginTop: 9, marginBottom: 4, lineHeight: 1.2 },
  list: { marginBottom: 5 },
  point: { flexDirection: "row", marginBottom: 3 },
  dash: { width: 13, color: INK.soft, lineHeight: 1.4 },
  pointText: { flex: 1, lineHeight: 1.4 },
  table: { marginTop: 2, marginBottom: 9 },
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
    paddingVertical: 2.5,
  },
  cell: { paddingRight: 8, lineHeight: 1.25 },
  headCell: { paddingRight: 8, color: INK.soft, lineHeight: 1.2 },
  number: { textAlign: "right" },
  caution: {
    borderLeftWidth: 2,
    borderLeftColor: INK.ink,
    paddingLeft: 9,
    marginTop: 2,
    marginBottom: 6,
  },
  cautionTitle: { fontWeight: 600, lineHeight: 1.3 },
  cautionText: { lineHeight: 1.35 },
  amount: { marginTop: 2, marginBottom: 9 },
  amountWords: { color: INK.soft, marginBottom: 1 },
  amountFigure: { fontSize: 22, fontWeight: 600 },
  total: { borderBottomWidth: 0 },
  firstTotal: { borderTopWidth: 0.75, borderTopColor: INK.ink, marginTop: -0.4 },
  strip: { marginTop: 6, marginBottom: 10 },
  pictures: { flexDirection: "row", marginBottom: 8 },
  caption: { fontSize: 8.5, color: INK.soft, marginTop: 2, lineHeight: 1.3 },
});

/** Blocks that letters and sheets have in common; the rest is drawn by `special`. */
export function Blocks({
  blocks,
  manner,
  special,
}: {
  readonly blocks: readonly LetterBlock[];
  readonly manner: BlockManner;
  readonly special: (block: LetterBlock) => ReactNode;
}) {
  return groups(blocks).flatMap((group, index) => [
    // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
    ...(isLongTable(group) ? [<View key={`before ${index}`} minPresenceAhead={64} />] : []),
    // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
    <View key={index} {...partingOf(group)}>
      {group.map((block, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
        <Block key={place} block={block} manner={manner} special={special} />
      ))}
    </View>,
  ]);
}

/** A table that may break begins where its head and two rows have room. */
function isLongTable(group: readonly LetterBlock[]): boolean {
  const [only] = group;
  return group.length === 1 && only?.kind === "table" && !isShort(only);
}

/** Where a page may end: not within a group, nor right after a heading. */
function partingOf(group: readonly LetterBlock[]) {
  const [only] = group;
  const whole = only?.kind === "table" && isShort(only);
  if (group.length > 1 || whole) return { wrap: false };
  return group[0]?.kind === "heading" ? { minPresenceAhead: 70 } : {};
}

/**
 * A heading stays with what it heads, and a sentence with the list that it announces, unless that is
 * so long that it must break itself. A signature stays with the words or the drawing before it: it
 * never stands alone on a page.
 */
function groups(blocks: readonly LetterBlock[]): LetterBlock[][] {
  const done: LetterBlock[][] = [];
  for (const block of blocks) {
    const last = done.at(-1);
    if (last && staysWith(last, block)) last.push(block);
    else done.push([block]);
  }
  return done;
}

function staysWith(group: readonly LetterBlock[], block: LetterBlock): boolean {
  const last = group.at(-1);
  if (last === undefined) return false;
  if (block.kind === "signature") return SIGNED.includes(last.kind);
  if (group.length > 1) return false;
  const announces = last.kind === "paragraph" && last.text.endsWith(":");
  return (last.kind === "heading" || (announces && block.kind === "list")) && isShort(block);
}

/** What a signature may follow on the same page; long tables and lists break by themselves. */
const SIGNED: readonly LetterBlock["kind"][] = ["paragraph", "caution", "strip", "pictures"];

function isShort(block: LetterBlock): boolean {
  if (block.kind === "table") return block.rows.length <= 5;
  if (block.kind === "list") return block.lines.length <= 7;
  return ["paragraph", "amount", "strip"].includes(block.kind);
}

function Block({
  block,
  manner,
  special,
}: {
  readonly block: LetterBlock;
  readonly manner: BlockManner;
  readonly special: (block: LetterBlock) => ReactNode;
}) {
  switch (block.kind) {
    case "paragraph":
      return <Text style={{ ...styles.paragraph, fontSize: manner.size }}>{block.text}</Text>;
    case "heading":
      return (
        <Text style={{ ...styles.heading, fontSize: manner.size + 1.5 }} minPresenceAhead={48}>
          {block.text}
        </Text>
      );
    case "list":
      return <List block={block} manner={manner} />;
    case "table":
      return <Table block={block} manner={manner} />;
    case "amount":
      return (
        <View style={styles.amount} wrap={false}>
          <Text style={{ ...styles.amountWords, fontSize: manner.size }}>{block.words}</Text>
          <Text style={styles.amountFigure}>{block.amount}</Text>
        </View>
      );
    case "caution":
      return (
        <View style={styles.caution} wrap={false}>
          <Text style={{ ...styles.cautionTitle, fontSize: manner.size }}>{block.title}</Text>
          <Text style={{ ...styles.cautionText, fontSize: manner.size - 0.5 }}>{block.text}</Text>
        </View>
      );
    case "strip":
      return <StripBlock block={block} manner={manner} />;
    case "pictures":
      return <Pictures block={block} manner={manner} />;
    default:
      return special(block);
  }
}

function List({
  block,
  manner,
}: {
  readonly block: BlockOf<"list">;
  readonly manner: BlockManner;
}) {
  return (
    <View style={styles.list}>
      {block.lines.map((line, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a list never move
        <View key={index} style={styles.point} wrap={false}>
          <Text style={{ ...styles.dash, fontSize: manner.size }}>–</Text>
          <Text style={{ ...styles.pointText, fontSize: manner.size }}>{line}</Text>
        </View>
      ))}
    </View>
  );
}

function Table({
  block,
  manner,
}: {
  readonly block: BlockOf<"table">;
  readonly manner: BlockManner;
}) {
  const shares = columnShares(block, { width: manner.width, size: manner.tableSize });
  const titled = block.head.some((title) => title !== "");
  const cell = (text: string, column: number, kind: "cell" | "headCell") => (
    <Text
      key={column}
      style={{
        ...styles[kind],
        fontSize: kind === "cell" ? manner.tableSize : manner.tableSize - 0.5,
        ...(block.numeric.includes(column) ? styles.number : {}),
        width: `${shares[column] ?? 0}%`,
        ...(column === shares.length - 1 ? { paddingRight: 0 } : {}),
        ...(column === 0 && !titled ? { color: INK.soft } : {}),
      }}
    >
      {text}
    </Text>
  );
  return (
    <View style={styles.table}>
      {titled && (
        <View style={styles.head} wrap={false} minPresenceAhead={26} fixed>
          {block.head.map((title, column) => cell(title, column, "headCell"))}
        </View>
      )}
      {keepTotals(block).map((rows, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a table never move
        <View key={index} wrap={false}>
          {rows.map(({ row, place }) => (
            <View key={place} style={rowStyle(place)}>
              {row.map((text, column) => cell(text, column, "cell"))}
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

interface PlacedRow {
  readonly row: readonly string[];
  /** Counts from the first sum: below 0 it is an ordinary row. */
  readonly place: number;
}

/** Rows that must not be parted by a page's end: each its own, sums with the row before them. */
function keepTotals({ rows, totals }: BlockOf<"table">): PlacedRow[][] {
  const placed = rows.map((row, index) => ({ row, place: index - rows.length + totals }));
  const parted = totals === 0 ? placed.length : placed.length - totals - 1;
  const last = placed.slice(parted);
  return [...placed.slice(0, parted).map((row) => [row]), ...(last.length > 0 ? [last] : [])];
}

/** `place` counts from the first sum: below 0 it is an ordinary row. */
function rowStyle(place: number) {
  if (place < 0) return styles.row;
  const first = place === 0 ? styles.firstTotal : {};
  return { ...styles.row, ...styles.total, ...first, fontWeight: 600 as const };
}

function StripBlock({
  block,
  manner,
}: {
  readonly block: BlockOf<"strip">;
  readonly manner: BlockManner;
}) {
  const { drawing, caption } = block;
  const plan = planStrip(drawing, {
    width: manner.width,
    scale: null,
    from: 0,
    to: drawing.extent,
    height: STRIP_HEIGHT,
  });
  return (
    <View style={styles.strip} wrap={false}>
      <StripSvg plan={plan} />
      <Text style={styles.caption}>{`${caption} ${manner.stripNote}`}</Text>
    </View>
  );
}

const PICTURE_GAP = 14;
/** Stills are for recognising, not for show: at most this wide and high, in points. */
const PICTURE_WIDTH = 230;
const PICTURE_HEIGHT = 150;

/** Two beside each other; a pair is not parted by a page's end. */
function Pictures({
  block,
  manner,
}: {
  readonly block: BlockOf<"pictures">;
  readonly manner: BlockManner;
}) {
  const width = Math.min(PICTURE_WIDTH, (manner.width - PICTURE_GAP) / 2);
  const { pictures } = block;
  const pairs = pictures.flatMap((_, at) => (at % 2 === 0 ? [pictures.slice(at, at + 2)] : []));
  return pairs.map((pair) => (
    <View key={pair[0]?.caption ?? ""} style={styles.pictures} wrap={false}>
      {pair.map(({ uploadId, caption }) => (
        <View key={caption} style={{ width, marginRight: PICTURE_GAP }}>
          <Still picture={manner.pictures?.get(uploadId)} width={width} />
          <Text style={styles.caption}>{caption}</Text>
        </View>
      ))}
    </View>
  ));
}

function Still({
  picture,
  width,
}: {
  readonly picture: PrintPicture | undefined;
  readonly width: number;
}) {
  if (picture === undefined) return null;
  const scale = Math.min(width / picture.width, PICTURE_HEIGHT / picture.height);
  const size = { width: picture.width * scale, height: picture.height * scale };
  return <Image src={{ data: picture.jpeg, format: "jpg" }} style={size} />;
}
