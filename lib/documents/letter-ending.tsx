import { StyleSheet, Text, View } from "@react-pdf/renderer";
import type { Letter, LetterBlock } from "#lib/domain/paper/letter.ts";
import type { LetterWords } from "#lib/domain/paper/words-en.ts";
import { INK } from "./ink.ts";
import type { LetterSetting } from "./letter-settings.ts";

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

const ending = StyleSheet.create({
  signature: { marginTop: 12 },
  signedBeside: { flexDirection: "row", columnGap: 14 },
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
  cutBeside: { fontSize: 8, color: INK.soft, marginRight: 6 },
  cutRest: {
    flex: 1,
    borderTopWidth: 0.75,
    borderTopColor: INK.soft,
    borderStyle: "dashed",
    marginTop: 5,
  },
  slipReference: { fontSize: 9, fontWeight: 400, color: INK.soft },
  choices: { flexDirection: "row", flexWrap: "wrap" },
  choicesApart: { flexDirection: "row", flexWrap: "wrap", justifyContent: "space-between" },
  halfChoice: { width: 228 },
  halfShort: { width: 234, marginRight: 0, paddingRight: 8 },
  choiceBeside: { flexDirection: "row", marginBottom: 1, marginRight: 16, maxWidth: 450 },
  boxShort: { width: 15, fontSize: 10.5 },
  choiceHalf: { flex: 1 },
  choiceShort: { flexShrink: 1, fontSize: 9.5, lineHeight: 1.35 },
  noteBeside: { fontSize: 8, color: INK.soft, marginRight: 6, marginTop: 6 },
  noteRest: { flex: 1, height: 15, borderBottomWidth: 0.4, borderBottomColor: INK.soft },
  choice: { flexDirection: "row", marginBottom: 2 },
  box: { width: 17, fontSize: 12 },
  choiceText: { flex: 1, fontSize: 10.5, lineHeight: 1.35 },
  lines: { flexDirection: "row" },
  field: { borderTopWidth: 0.5, borderTopColor: INK.ink, marginRight: 14 },
  fieldLabel: { fontSize: 8, color: INK.soft, marginTop: 2 },
  noteLabel: { fontSize: 8, color: INK.soft, marginTop: 8 },
  noteLine: { borderBottomWidth: 0.4, borderBottomColor: INK.soft },
});

// How high these are at least is known without drawing them: ending-heights.ts follows every change.

/** How a letter ends: who signs it, and the slip to cut off and answer on. */
export function Ending({
  block,
  letter,
  words,
  setting,
}: {
  readonly block: LetterBlock;
  readonly letter: Letter;
  readonly words: LetterWords;
  readonly setting: LetterSetting;
}) {
  const { air, slip } = setting;
  if (block.kind === "signature") {
    const Signed = slip === "short" ? ShortSignature : Signature;
    return <Signed block={block} closing={letter.closing} air={air} />;
  }
  if (block.kind !== "answer-slip") return null;
  const Slip = slip === "short" ? ShortSlip : LongSlip;
  return <Slip block={block} letter={letter} words={words} air={air} />;
}

interface Signed {
  readonly block: BlockOf<"signature">;
  readonly closing: string;
  readonly air: number;
}

/** On a line: phone and email stand in the letterhead and on the slip. */
function ShortSignature({ block: { lines }, closing, air }: Signed) {
  return (
    <View style={{ ...ending.signedBeside, marginTop: 4 + 10 * air }} wrap={false}>
      <Text style={ending.signText}>{closing}</Text>
      <View style={{ marginTop: 20 }}>
        <View style={ending.signLine} />
        <Text style={ending.signText}>{lines[0]}</Text>
      </View>
    </View>
  );
}

function Signature({ block, closing, air }: Signed) {
  const [by = "", ...contact] = block.lines;
  const lines = air === 1 ? block.lines : [by, contact.join("  ·  ")];
  return (
    <View style={{ ...ending.signature, marginTop: 2 + 10 * air, marginBottom: 6 }} wrap={false}>
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

interface SlipProps {
  readonly block: BlockOf<"answer-slip">;
  readonly letter: Letter;
  readonly words: LetterWords;
  readonly air: number;
}

function LongSlip({ block, letter, words, air }: SlipProps) {
  const close = air < 1;
  const { frame } = words;
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
        <Text style={ending.slipMetaLine}>{`${frame.slipTo}: ${letter.from.join(", ")}`}</Text>
      </View>
      <View style={close ? ending.choicesApart : {}}>
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
      <SignedLines letter={letter} words={words} above={close ? 14 : 20} />
    </View>
  );
}

/** The same in as few lines: what it is about in its head, and what is written beside its label. */
function ShortSlip({ block, letter, words, air }: SlipProps) {
  const { frame } = words;
  const isHalf = block.choices.length > 3;
  return (
    <View style={{ ...ending.slip, marginTop: 4 + 14 * air }} wrap={false}>
      <View style={ending.lines}>
        <Text style={ending.cutBeside}>{frame.slipCut}</Text>
        <View style={ending.cutRest} />
      </View>
      <View style={{ ...ending.slipHead, marginBottom: 1 }}>
        <Text style={{ ...ending.slipTitle, fontSize: 12 }}>
          {frame.slipTitle}
          <Text style={ending.slipReference}>{`   ${letter.reference}`}</Text>
        </Text>
        <Text style={ending.slipBy}>
          {block.returnBy === "" ? "" : frame.slipBy(block.returnBy)}
        </Text>
      </View>
      <Text style={{ ...ending.slipMetaLine, marginBottom: 3 }}>
        {`${frame.slipTo}: ${letter.from.join(", ")}`}
      </Text>
      <View style={ending.choices}>
        {block.choices.map((choice) => (
          <View
            key={choice}
            style={{ ...ending.choiceBeside, ...(isHalf ? ending.halfShort : {}) }}
          >
            <Text style={ending.boxShort}>☐</Text>
            <Text style={{ ...ending.choiceShort, ...(isHalf ? ending.choiceHalf : {}) }}>
              {choice}
            </Text>
          </View>
        ))}
      </View>
      <View style={{ ...ending.lines, marginTop: 4 }}>
        <Text style={ending.noteBeside}>{frame.slipNote}</Text>
        <View style={ending.noteRest} />
      </View>
      <SignedLines letter={letter} words={words} above={14} />
    </View>
  );
}

function SignedLines({
  letter,
  words,
  above,
}: {
  readonly letter: Letter;
  readonly words: LetterWords;
  /** Room to write in, in points. */
  readonly above: number;
}) {
  const { frame } = words;
  return (
    <View style={{ ...ending.lines, marginTop: above }}>
      <Field label={`${frame.slipName}: ${letter.to[0] ?? ""}`} width={170} />
      <Field label={frame.slipSignature} width={150} />
      <Field label={frame.slipDate} width={60} />
      <Field label={frame.slipPhone} width={60} last />
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
