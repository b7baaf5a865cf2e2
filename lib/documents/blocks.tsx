import { Image, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import { textWidth } from "#lib/domain/say/text-width.ts";
import { planStrip } from "#lib/domain/strip/strip-plan.ts";
import { columnShares } from "./columns.ts";
import { INK } from "./ink.ts";
import type { PrintPicture } from "./pictures.ts";
import { StripSvg } from "./strip-svg.tsx";

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

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

const styles = StyleSheet.create({
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
  return sideBySide(groups(blocks), manner).flatMap((entry, index) => {
    if ("left" in entry)
      // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
      return [<Beside key={index} {...entry} manner={manner} special={special} />];
    const { group } = entry;
    return [
      // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
      ...(isLongTable(group) ? [<View key={`before ${index}`} minPresenceAhead={64} />] : []),
      // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
      <View key={index} {...partingOf(group)}>
        <Group group={group} manner={manner} special={special} />
      </View>,
    ];
  });
}

interface Manners {
  readonly manner: BlockManner;
  readonly special: (block: LetterBlock) => ReactNode;
}

function Group({ group, ...manners }: Manners & { readonly group: readonly LetterBlock[] }) {
  return group.map((block, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
    <Block key={place} block={block} {...manners} />
  ));
}

/** Two columns that no page's end parts, and what stays with them beneath. */
interface Columns {
  readonly left: readonly LetterBlock[];
  readonly right: readonly LetterBlock[];
  readonly under: readonly LetterBlock[];
}

function Beside({ left, right, under, manner, special }: Manners & Columns) {
  const width = columnWidth(manner);
  const half = { ...manner, width };
  return (
    <View wrap={false}>
      <View style={styles.beside}>
        <View style={{ width }}>
          <Group group={left} manner={half} special={special} />
        </View>
        <View style={{ width }}>
          <Group group={right} manner={half} special={special} />
        </View>
      </View>
      <Group group={under} manner={manner} special={special} />
    </View>
  );
}

function columnWidth({ width }: BlockManner): number {
  return (width - COLUMN_GAP) / 2;
}

type Entry = { readonly group: readonly LetterBlock[] } | Columns;

/** Groups in their order, with those in columns that the manner sets so. */
function sideBySide(all: readonly LetterBlock[][], manner: BlockManner): Entry[] {
  const done: Entry[] = [];
  let run: LetterBlock[][] = [];
  let kind: "words" | "cautions" | null = null;
  const close = () => {
    done.push(...(kind === "words" ? inColumns(run, manner) : inPairs(run)));
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

function inPairs(run: readonly LetterBlock[][]): Entry[] {
  return run.flatMap((group, at): Entry[] => {
    if (at % 2 === 1) return [];
    const next = run[at + 1];
    if (next === undefined) return [{ group }];
    return [{ left: group.slice(0, 1), right: next.slice(0, 1), under: next.slice(1) }];
  });
}

/** The run in two columns of about one height; a short one stays as it is. */
function inColumns(all: readonly LetterBlock[][], manner: BlockManner): Entry[] {
  const first = manner.columns === "all" ? 0 : all.findIndex(([one]) => one?.kind === "heading");
  const run = first < 0 ? [] : all.slice(first);
  const headings = run.filter(([one]) => one?.kind === "heading").length;
  const few = manner.columns === "all" ? run.length < 3 : headings < 2;
  if (few) return all.map((group) => ({ group }));
  const heights = run.map((group) => group.reduce((sum, each) => sum + wordLines(each, manner), 0));
  const sum = (part: readonly number[]) => part.reduce((all, each) => all + each, 0);
  const tallest = heights.map((_, at) =>
    Math.max(sum(heights.slice(0, at + 1)), sum(heights.slice(at + 1))),
  );
  const cut = tallest.indexOf(Math.min(...tallest)) + 1;
  return [
    ...all.slice(0, first).map((group) => ({ group })),
    { left: run.slice(0, cut).flat(), right: run.slice(cut).flat(), under: [] },
  ];
}

/** About how many lines a block takes in a column. */
function wordLines(block: LetterBlock, manner: BlockManner): number {
  const lines = (text: string, indent: number) =>
    Math.ceil(textWidth(text, manner.size, false) / (columnWidth(manner) - indent)) + 0.3;
  if (block.kind === "amount") return 2.7;
  if (block.kind === "heading") return lines(block.text, 0) + 0.8;
  if (block.kind === "paragraph") return lines(block.text, 0);
  if (block.kind === "list") return block.lines.reduce((sum, each) => sum + lines(each, 13), 0.3);
  return block.kind === "caution" ? lines(block.title, 11) + lines(block.text, 11) + 0.4 : 0;
}

/** A table that may break begins where its head and two rows have room. */
function isLongTable(group: readonly LetterBlock[]): boolean {
  const [only] = group;
  return group.length === 1 && only?.kind === "table" && !isShort(only);
}

/** Where a page may end: not within a group, nor right after a heading. */
function partingOf(group: readonly LetterBlock[]) {
  const [only] = group;
  const whole =
    (only?.kind === "table" && isShort(only)) || (only?.kind === "list" && only.lines.length <= 4);
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
      return (
        <Text
          style={{
            ...styles.paragraph,
            ...set(manner, { lineHeight: 1.4, marginBottom: 7 }),
            ...(block.lead === true ? styles.lead : {}),
          }}
        >
          {block.text}
        </Text>
      );
    case "heading":
      return (
        <Text
          style={{
            ...styles.heading,
            ...spaced(manner, { marginTop: 9, marginBottom: 4 }),
            fontSize: manner.size + 1.5 * airOf(manner),
          }}
          minPresenceAhead={48}
        >
          {block.text}
        </Text>
      );
    case "list":
      return <List block={block} manner={manner} />;
    case "table":
      return <Table block={block} manner={manner} />;
    case "amount":
      return (
        <View style={spaced(manner, { marginTop: 2, marginBottom: 9 })} wrap={false}>
          <Text style={{ ...styles.amountWords, fontSize: manner.size }}>{block.words}</Text>
          <Text style={{ ...styles.amountFigure, fontSize: 16 + 6 * airOf(manner) }}>
            {block.amount}
          </Text>
        </View>
      );
    case "caution":
      return (
        <View style={{ ...styles.caution, ...spaced(manner, { marginBottom: 6 }) }} wrap={false}>
          <Text style={{ ...styles.cautionTitle, fontSize: manner.size }}>{block.title}</Text>
          <Text
            style={{ ...styles.cautionText, ...leading(manner, 1.35), fontSize: manner.size - 0.5 }}
          >
            {block.text}
          </Text>
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

function airOf({ air = 1 }: BlockManner): number {
  return air;
}

/** Margins, closer where the manner is. */
function spaced(manner: BlockManner, margins: Readonly<Record<string, number>>) {
  const entries = Object.entries(margins).map(([name, size]) => [name, size * airOf(manner)]);
  return Object.fromEntries(entries) as Record<string, number>;
}

/** A line height of 1.4 goes down to 1.25 where words are set closely. */
function leading(manner: BlockManner, lineHeight: number) {
  return { lineHeight: 1.2 + (lineHeight - 1.2) * airOf(manner) };
}

/** Running words in the manner's size. */
function set(
  manner: BlockManner,
  { lineHeight, ...margins }: { readonly lineHeight: number; readonly marginBottom?: number },
) {
  return {
    fontSize: manner.size,
    ...leading(manner, lineHeight),
    ...spaced(manner, { ...margins }),
  };
}

function List({
  block,
  manner,
}: {
  readonly block: BlockOf<"list">;
  readonly manner: BlockManner;
}) {
  return (
    <View style={spaced(manner, { marginBottom: 5 })}>
      {block.lines.map((line, index) => (
        <View
          // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a list never move
          key={index}
          style={{ ...styles.point, ...spaced(manner, { marginBottom: 3 }) }}
          wrap={false}
        >
          <Text style={{ ...styles.dash, ...set(manner, { lineHeight: 1.4 }) }}>–</Text>
          <Text style={{ ...styles.pointText, ...set(manner, { lineHeight: 1.4 }) }}>{line}</Text>
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
    <View style={{ ...styles.table, ...spaced(manner, { marginTop: 2, marginBottom: 9 }) }}>
      {titled && (
        <View style={styles.head} wrap={false} minPresenceAhead={26} fixed>
          {block.head.map((title, column) => cell(title, column, "headCell"))}
        </View>
      )}
      {keepTotals(block).map((rows, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a table never move
        <View key={index} wrap={false}>
          {rows.map(({ row, place }) => (
            <View
              key={place}
              style={{ ...rowStyle(place), ...spaced(manner, { paddingVertical: 2.5 }) }}
            >
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
    height: manner.stripHeight ?? 250,
  });
  return (
    <View style={spaced(manner, { marginTop: 6, marginBottom: 10 })} wrap={false}>
      <StripSvg plan={plan} />
      <Text style={styles.caption}>{`${caption} ${manner.stripNote}`}</Text>
    </View>
  );
}

const PICTURE_GAP = 14;
/** Stills are for recognizing, not for show: at most this wide and high, in points. */
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
