import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import type { LetterBlock } from "#lib/domain/paper/letter.ts";
import {
  type Columns,
  groups,
  isLongTable,
  isNote,
  partingOf,
  sideBySide,
} from "./block-groups.ts";
import {
  aboveHeading,
  airOf,
  type BlockManner,
  columnWidth,
  leading,
  set,
  spaced,
  styles,
} from "./block-manner.ts";
import { Pictures, StripBlock } from "./picture-blocks.tsx";
import { List, Table } from "./table-block.tsx";

// How high these are at least is known without drawing them: block-heights.ts follows every change.

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
  return sideBySide(groups(blocks, manner), manner).flatMap((entry, index) => {
    if ("kept" in entry)
      return [
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
        <View key={index} wrap={false}>
          {entry.kept.map((one, place) =>
            "left" in one ? (
              // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
              <Beside key={place} {...one} manner={manner} special={special} />
            ) : (
              // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
              <Group key={place} group={one.group} manner={manner} special={special} />
            ),
          )}
        </View>,
      ];
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
  return group.map((block, place) => {
    const next = group[place + 1];
    const noted = block.kind === "table" && isNote(next);
    if (isNote(block) && place > 0) return null;
    return (
      <Block
        // biome-ignore lint/suspicious/noArrayIndexKey: the blocks of a letter never move
        key={place}
        block={block}
        note={noted && next !== undefined ? <Block block={next} {...manners} /> : null}
        {...manners}
      />
    );
  });
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

function Block({
  block,
  note = null,
  manner,
  special,
}: Manners & { readonly block: LetterBlock; readonly note?: ReactNode }) {
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
            ...spaced(manner, { marginBottom: 4 }),
            marginTop: aboveHeading(manner),
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
      return <Table block={block} note={note} manner={manner} />;
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
