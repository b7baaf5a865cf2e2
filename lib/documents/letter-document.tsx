import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import type { AddressLayout } from "./address-layout.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";
import { Ending } from "./letter-ending.tsx";
import type { LetterSetting } from "./letter-settings.ts";
import { noonOf } from "./noon.ts";
import { type PageCount, PageMark } from "./page-marks.tsx";
import type { PrintPicture } from "./pictures.ts";
import { exposedBox, FOLD, NUMBER_TEN } from "./window.ts";

const LEFT = 72;
/** How wide the words of a letter are, in points. */
export const BODY_WIDTH = 468;
const HEADER = 46;
const FOOTER = 55;
/** How much of a page a letter may fill, from above to below. */
export const PAGE_ROOM = 792 - HEADER - FOOTER;
/** Words of the letter begin below everything that the window may show. */
const BODY_TOP = exposedBox(NUMBER_TEN, FOLD).bottom + 16;
/** What of its first page the letterhead and the window take. */
export const FIRST_ROOM = BODY_TOP - HEADER;
/** Right of the window, whichever way the sheet has slid. */
const ASIDE_LEFT = exposedBox(NUMBER_TEN, FOLD).right + 9;

/** How large its subject is set. */
export const SUBJECT = 15;

const styles = StyleSheet.create({
  page: {
    paddingTop: HEADER,
    paddingBottom: FOOTER,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10.5,
    color: INK.ink,
  },
  headRule: {
    position: "absolute",
    top: 40,
    left: LEFT,
    width: BODY_WIDTH,
    borderTopWidth: 1.5,
    borderTopColor: INK.ink,
  },
  senderName: { position: "absolute", top: 49, left: LEFT, fontSize: 17, fontWeight: 600 },
  senderLine: { position: "absolute", left: LEFT, fontSize: 9, color: INK.soft },
  address: { position: "absolute" },
  aside: { position: "absolute", left: ASIDE_LEFT, width: LEFT + BODY_WIDTH - ASIDE_LEFT },
  asideLabel: { fontSize: 8, color: INK.soft },
  asideValue: { fontSize: 10, marginBottom: 6 },
  foldTick: {
    position: "absolute",
    left: 20,
    width: 12,
    borderTopWidth: 0.5,
    borderTopColor: INK.soft,
  },
  subject: { fontSize: SUBJECT, fontWeight: 600, lineHeight: 1.2, marginBottom: 12 },
  greeting: { marginBottom: 8 },
  second: { borderTopWidth: 1.5, borderTopColor: INK.ink, paddingTop: 5, marginBottom: 16 },
  secondFrom: { fontSize: 13, fontWeight: 600, marginBottom: 2 },
  secondAbout: { fontSize: 9, color: INK.soft },
  footRule: {
    position: "absolute",
    bottom: 50,
    left: LEFT,
    width: BODY_WIDTH,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
  },
  footer: { position: "absolute", bottom: 34, left: LEFT, fontSize: 8.5, color: INK.soft },
});

/** Where a later page says whose letter it is, and where each page says which it is. */
const CONTINUED = { top: 30, left: LEFT, width: BODY_WIDTH };
const PAGE_NUMBER = { bottom: 34, left: LEFT, width: BODY_WIDTH };

/** How high a fact beside the address is, with its label. */
const ASIDE_FACT = 32;

interface Setting {
  readonly pictures: ReadonlyMap<string, PrintPicture>;
  readonly setting: LetterSetting;
  readonly count: PageCount;
}

/**
 * One letter as a document of its own, so that its pages count from 1. In two languages the second
 * text begins on a page of its own, without a window.
 */
export function LetterDocument({
  letter,
  address,
  pictures,
  setting,
  count,
}: Setting & {
  readonly letter: Letter;
  readonly address: AddressLayout;
}) {
  const day = noonOf(letter.day);
  const { also } = letter;
  return (
    <Document
      title={`${letter.subject} (${letter.reference})`}
      author={letter.from[0] ?? ""}
      language={letter.language}
      creationDate={day}
      modificationDate={day}
    >
      <LetterPage letter={letter} pictures={pictures} setting={setting} count={count}>
        <Letterhead from={letter.from} />
        <Window layout={address} />
        <Aside letter={letter} />
        <View style={{ ...styles.foldTick, top: FOLD * 72 }} />
        <View style={{ ...styles.foldTick, top: FOLD * 144 }} />
        <View style={{ height: FIRST_ROOM }} />
      </LetterPage>
      {also === undefined ? null : (
        <LetterPage letter={also} pictures={pictures} setting={setting} count={count}>
          <SecondHead
            paper={also}
            about={[`${LETTER_WORDS[also.language].frame.date} ${also.date}`, also.reference]}
          />
        </LetterPage>
      )}
    </Document>
  );
}

function LetterPage({
  letter,
  pictures,
  setting,
  count,
  children,
}: Setting & { readonly letter: Letter; readonly children: ReactNode }) {
  const words = LETTER_WORDS[letter.language];
  const [name = ""] = letter.to;
  let own = 0;
  const manner: BlockManner = {
    ...setting,
    width: BODY_WIDTH,
    stripNote: words.frame.notToScale,
    pictures,
  };
  const { size, air } = setting;
  return (
    <Page size="LETTER" style={styles.page}>
      {children}
      <Text style={{ ...styles.subject, marginBottom: 4 + 8 * air }}>{letter.subject}</Text>
      <Text style={{ ...styles.greeting, fontSize: size }}>{letter.greeting}</Text>
      <Blocks
        blocks={letter.blocks}
        manner={manner}
        special={(block) => (
          <Ending block={block} letter={letter} words={words} setting={setting} />
        )}
      />
      <PageMark
        place={CONTINUED}
        align="left"
        words={() => {
          own += 1;
          return own > 1 ? `${name}  ·  ${letter.reference}` : "";
        }}
      />
      <View fixed style={styles.footRule} />
      <Text fixed style={styles.footer}>
        {letter.footer}
      </Text>
      <PageMark
        place={PAGE_NUMBER}
        align="right"
        words={() => {
          count.page += 1;
          return words.frame.page(count.page, count.total);
        }}
      />
    </Page>
  );
}

/** Over the second text of a paper in two languages: from whom, to whom, and that it is the same. */
export function SecondHead({
  paper,
  about,
}: {
  readonly paper: Pick<Letter, "from" | "to" | "language">;
  readonly about: readonly string[];
}) {
  const { frame } = LETTER_WORDS[paper.language];
  const [from = ""] = paper.from;
  const [to = ""] = paper.to;
  return (
    <View style={styles.second}>
      <Text style={styles.secondFrom}>{from}</Text>
      <Text style={styles.secondAbout}>
        {[frame.sameText, `${frame.to}: ${to}`, ...about].join("  ·  ")}
      </Text>
    </View>
  );
}

/** The sender at the head of a page that goes into a window envelope. */
export function Letterhead({ from }: { readonly from: readonly string[] }) {
  const [name = "", ...lines] = from;
  return (
    <>
      <View style={styles.headRule} />
      <Text style={styles.senderName}>{name}</Text>
      {lines.map((line, index) => (
        <Text key={line} style={{ ...styles.senderLine, top: 76 + index * 12.5 }}>
          {line}
        </Text>
      ))}
    </>
  );
}

/** The address where the envelope's window shows it. */
export function Window({ layout }: { readonly layout: AddressLayout }) {
  return layout.lines.map(({ text, top }) => (
    <Text key={top} style={{ ...styles.address, left: layout.left, top, fontSize: layout.size }}>
      {text}
    </Text>
  ));
}

function Aside({ letter }: { readonly letter: Letter }) {
  const words = LETTER_WORDS[letter.language];
  const { also } = letter;
  const facts = [
    [words.frame.date, letter.date],
    [words.frame.reference, letter.reference],
    ...(letter.answerBy === "" ? [] : [[words.frame.answerBy, letter.answerBy]]),
    ...(also === undefined ? [] : [LETTER_WORDS[also.language].frame.alsoHere]),
  ];
  return (
    <View style={{ ...styles.aside, top: also === undefined ? 176 : 176 - ASIDE_FACT }}>
      {facts.map(([label, value]) => (
        <View key={label}>
          <Text style={styles.asideLabel}>{label}</Text>
          <Text style={styles.asideValue}>{value}</Text>
        </View>
      ))}
    </View>
  );
}
