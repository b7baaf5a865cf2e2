import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import type { LetterWords } from "#lib/domain/paper/words-en.ts";
import type { AddressLayout } from "./address-layout.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";
import type { LetterSetting } from "./letter-settings.ts";
import { noonOf } from "./noon.ts";
import type { PrintPicture } from "./pictures.ts";
import { exposedBox, FOLD, NUMBER_TEN } from "./window.ts";

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

const LEFT = 72;
const BODY_WIDTH = 468;
const HEADER = 46;
/** Words of the letter begin below everything that the window may show. */
const BODY_TOP = exposedBox(NUMBER_TEN, FOLD).bottom + 16;
/** Right of the window, whichever way the sheet has slid. */
const ASIDE_LEFT = exposedBox(NUMBER_TEN, FOLD).right + 9;

const styles = StyleSheet.create({
  page: {
    paddingTop: HEADER,
    paddingBottom: 55,
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
  subject: { fontSize: 15, fontWeight: 600, lineHeight: 1.2, marginBottom: 12 },
  greeting: { marginBottom: 8 },
  second: { borderTopWidth: 1.5, borderTopColor: INK.ink, paddingTop: 5, marginBottom: 16 },
  secondFrom: { fontSize: 13, fontWeight: 600, marginBottom: 2 },
  secondAbout: { fontSize: 9, color: INK.soft },
  continued: { position: "absolute", top: 30, left: LEFT, fontSize: 8.5, color: INK.soft },
  footRule: {
    position: "absolute",
    bottom: 50,
    left: LEFT,
    width: BODY_WIDTH,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
  },
  footer: { position: "absolute", bottom: 34, left: LEFT, fontSize: 8.5, color: INK.soft },
  pageNumber: {
    position: "absolute",
    bottom: 34,
    left: LEFT,
    width: BODY_WIDTH,
    textAlign: "right",
    fontSize: 8.5,
    color: INK.soft,
  },
});

/** How high a fact beside the address is, with its label. */
const ASIDE_FACT = 32;

interface Setting {
  readonly pictures: ReadonlyMap<string, PrintPicture>;
  readonly setting: LetterSetting;
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
      <LetterPage letter={letter} pictures={pictures} setting={setting}>
        <Letterhead from={letter.from} />
        <Window layout={address} />
        <Aside letter={letter} />
        <View style={{ ...styles.foldTick, top: FOLD * 72 }} />
        <View style={{ ...styles.foldTick, top: FOLD * 144 }} />
        <View style={{ height: BODY_TOP - HEADER }} />
      </LetterPage>
      {also === undefined ? null : (
        <LetterPage letter={also} pictures={pictures} setting={setting}>
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
  children,
}: Setting & { readonly letter: Letter; readonly children: ReactNode }) {
  const words = LETTER_WORDS[letter.language];
  const [name = ""] = letter.to;
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
        special={(block) => <Ending block={block} letter={letter} words={words} air={air} />}
      />
      <Text
        fixed
        style={styles.continued}
        render={({ subPageNumber }) => (subPageNumber > 1 ? `${name}  ·  ${letter.reference}` : "")}
      />
      <View fixed style={styles.footRule} />
      <Text fixed style={styles.footer}>
        {letter.footer}
      </Text>
      <Text
        fixed
        style={styles.pageNumber}
        render={({ pageNumber, totalPages }) => words.frame.page(pageNumber, totalPages)}
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

const ending = StyleSheet.create({
  signature: { marginTop: 12, marginBottom: 6 },
  closing: { marginBottom: 36 },
  signLine: { borderTopWidth: 0.5, borderTopColor: INK.ink, width: 230, marginBottom: 3 },
  signText: { fontSize: 9.5, lineHeight: 1.35 },
  slip: { marginTop: 18, paddingTop: 0 },
  cutRow: { borderTopWidth: 0.75, borderTopColor: INK.soft, borderStyle: "dashed" },
  cut: { fontSize: 8, color: INK.soft, marginTop: 3 },
  slipHead: { flexDirection: "row", justifyContent: "space-between" },
  slipTitle: { fontSize: 13, fontWeight: 600 },
  slipBy: { fontSize: 10, fontWeight: 600, marginTop: 3 },
  slipMetaLine: { fontSize: 9, color: INK.soft, lineHeight: 1.35 },
  choices: { flexDirection: "row", flexWrap: "wrap", justifyContent: "space-between" },
  halfChoice: { width: 228 },
  choice: { flexDirection: "row", marginBottom: 2 },
  box: { width: 17, fontSize: 12 },
  choiceText: { flex: 1, fontSize: 10.5, lineHeight: 1.35 },
  lines: { flexDirection: "row" },
  field: { borderTopWidth: 0.5, borderTopColor: INK.ink, marginRight: 14 },
  fieldLabel: { fontSize: 8, color: INK.soft, marginTop: 2 },
  noteLabel: { fontSize: 8, color: INK.soft, marginTop: 8 },
  noteLine: { borderBottomWidth: 0.4, borderBottomColor: INK.soft },
});

function Ending({
  block,
  letter,
  words,
  air,
}: {
  readonly block: LetterBlock;
  readonly letter: Letter;
  readonly words: LetterWords;
  readonly air: number;
}) {
  if (block.kind === "signature")
    return <Signature block={block} closing={letter.closing} air={air} />;
  if (block.kind === "answer-slip")
    return <Slip block={block} letter={letter} words={words} air={air} />;
  return null;
}

function Signature({
  block,
  closing,
  air,
}: {
  readonly block: BlockOf<"signature">;
  readonly closing: string;
  readonly air: number;
}) {
  const [by = "", ...contact] = block.lines;
  const lines = air === 1 ? block.lines : [by, contact.join("  ·  ")];
  return (
    <View style={{ ...ending.signature, marginTop: 2 + 10 * air }} wrap={false}>
      <Text style={{ ...ending.closing, marginBottom: 16 + 20 * air }}>{closing}</Text>
      <View style={ending.signLine} />
      {lines.map((line) => (
        <Text key={line} style={ending.signText}>
          {line}
        </Text>
      ))}
    </View>
  );
}

function Slip({
  block,
  letter,
  words,
  air,
}: {
  readonly block: BlockOf<"answer-slip">;
  readonly letter: Letter;
  readonly words: LetterWords;
  readonly air: number;
}) {
  const { frame } = words;
  const sendTo = letter.from.join(", ");
  const close = air < 1;
  return (
    <View style={{ ...ending.slip, marginTop: 4 + 14 * air }} wrap={false}>
      <View style={ending.cutRow} />
      <Text style={{ ...ending.cut, marginBottom: close ? 3 : 8 }}>{frame.slipCut}</Text>
      <View style={{ ...ending.slipHead, marginBottom: close ? 3 : 6 }}>
        <Text style={ending.slipTitle}>{frame.slipTitle}</Text>
        <Text style={ending.slipBy}>
          {block.returnBy === "" ? "" : frame.slipBy(block.returnBy)}
        </Text>
      </View>
      <View style={{ marginBottom: close ? 4 : 8 }}>
        <Text
          style={ending.slipMetaLine}
        >{`${frame.slipAbout}: ${letter.subject}, ${letter.reference}`}</Text>
        <Text style={ending.slipMetaLine}>{`${frame.slipTo}: ${sendTo}`}</Text>
      </View>
      <View style={close ? ending.choices : {}}>
        {block.choices.map((choice) => (
          <View key={choice} style={{ ...ending.choice, ...(close ? ending.halfChoice : {}) }}>
            <Text style={ending.box}>☐</Text>
            <Text style={{ ...ending.choiceText, fontSize: close ? 9.5 : 10.5 }}>{choice}</Text>
          </View>
        ))}
      </View>
      <Text style={{ ...ending.noteLabel, marginTop: close ? 3 : 8 }}>{frame.slipNote}</Text>
      <View style={{ ...ending.noteLine, height: close ? 15 : 19 }} />
      {close ? null : <View style={{ ...ending.noteLine, height: 19 }} />}
      <View style={{ ...ending.lines, marginTop: close ? 14 : 20 }}>
        <Field label={`${frame.slipName}: ${letter.to[0] ?? ""}`} width={170} />
        <Field label={frame.slipSignature} width={150} />
        <Field label={frame.slipDate} width={60} />
        <Field label={frame.slipPhone} width={60} last />
      </View>
    </View>
  );
}

function Field({
  label,
  width,
  last = false,
}: {
  readonly label: string;
  readonly width: number;
  readonly last?: boolean;
}) {
  const grow = last ? { flex: 1, marginRight: 0 } : { width };
  return (
    <View style={{ ...ending.field, ...grow }}>
      <Text style={ending.fieldLabel}>{label}</Text>
    </View>
  );
}
