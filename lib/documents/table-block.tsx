import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { airOf, type BlockManner, type BlockOf, set, spaced, styles } from "./block-manner.ts";
import { columnShares } from "./columns.ts";
import { INK } from "./ink.ts";

export function List({
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

/** A note stands under its table, and on the page where that ends. */
export function Table({
  block,
  note = null,
  manner,
}: {
  readonly block: BlockOf<"table">;
  readonly note?: ReactNode;
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
  const groups = keepTotals(block);
  return (
    <View
      style={{
        ...styles.table,
        ...spaced(manner, { marginTop: 2, marginBottom: note === null ? 9 : 0 }),
        // Set closely, its titles would hang on the words before it.
        ...(titled && airOf(manner) < 0.4 ? { marginTop: 4 } : {}),
      }}
    >
      {titled && (
        <View style={styles.head} wrap={false} minPresenceAhead={26} fixed>
          {block.head.map((title, column) => cell(title, column, "headCell"))}
        </View>
      )}
      {groups.map((rows, index) => (
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
          {note !== null && index === groups.length - 1 && (
            <View style={spaced(manner, { marginTop: 9 })}>{note}</View>
          )}
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
