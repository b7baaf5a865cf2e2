import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { AccountPaper, PaymentSlip } from "#lib/domain/paper/paper-frame.ts";
import { type AddressLayout, addressLayout } from "./address-layout.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { type Drawn, fewestPages } from "./fewest-pages.ts";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { Letterhead, SecondHead, Window } from "./letter-document.tsx";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";
import { exposedBox, FOLD, NUMBER_NINE, NUMBER_TEN, SLIP, visibleBox } from "./window.ts";

/** `withoutSlip` names the papers that are too long for a sheet with the payment slip due to them. */
interface PrintedAccounts {
  readonly bytes: Uint8Array;
  readonly withoutSlip: readonly string[];
}

/**
 * Invoices and statements as one PDF in Letter size, each from a fresh page with its own page
 * numbers, for #10 window envelopes. The same papers give the same bytes. Slow: for the worker
 * process only. Throws DocumentRefused with words where one cannot be printed as it is.
 */
export async function renderAccounts(papers: readonly AccountPaper[]): Promise<PrintedAccounts> {
  const [first] = papers;
  if (!first) throw new RangeError("Cannot render accounts: none given");
  await readyFonts();
  const parts: Part[] = [];
  const withoutSlip: string[] = [];
  for (const paper of papers) {
    const { hasSlip, ...part } = await accountPart(paper);
    parts.push(part);
    if (paper.slip !== undefined && !hasSlip) withoutSlip.push(part.title);
  }
  const joined = await joinParts(parts, {
    title: papers.length === 1 ? first.subject : `${papers.length} accounts`,
    author: first.from[0] ?? "",
    subject: papers.map(({ reference }) => reference).join(", "),
    language: first.language,
    day: first.day,
  });
  return { bytes: await joined.save(), withoutSlip };
}

/** One invoice or statement of account as a part of a document: behind the letter that encloses it, say. */
export async function accountPart(
  paper: AccountPaper,
): Promise<Part & Drawn & { readonly hasSlip: boolean }> {
  const [name = ""] = paper.to;
  const clean = printable(paper, `The ${paper.title.toLowerCase()} to ${name}`);
  const address = addressLayout(clean.to);
  const title = `${name}: ${paper.subject}`;
  const most = clean.also === undefined ? 1 : 2;
  const draw = (paper: AccountPaper) =>
    fewestPages(SETTINGS, most, (setting) => (
      <AccountDocument paper={paper} address={address} setting={setting} />
    ));
  const drawn = await draw(clean);
  // A slip stands on the sheet with its invoice or not at all: the text says how to pay.
  if (clean.slip !== undefined && drawn.document.getPageCount() > most) {
    const { slip: _slip, ...without } = clean;
    return { title, ...(await draw(without)), hasSlip: false };
  }
  return { title, ...drawn, hasSlip: clean.slip !== undefined };
}

const LEFT = 72;
const WIDTH = 468;
const HEADER = 58;
const BODY_TOP = exposedBox(NUMBER_TEN, FOLD).bottom + 16;
const ASIDE_LEFT = exposedBox(NUMBER_TEN, FOLD).right + 9;

/** How closely one may be set, the roomiest first; above a slip there is half a page. */
const SETTINGS = [
  { size: 10.5, tableSize: 9.5, air: 1 },
  { size: 9.5, tableSize: 9, air: 0.4 },
  { size: 8.75, tableSize: 8.5, air: 0.2 },
] as const satisfies readonly Partial<BlockManner>[];
type Setting = (typeof SETTINGS)[number];

/** How far the sheet's own foot lies above its edge: below it is the slip. */
const SLIP_HEIGHT = SLIP * 72;

const styles = StyleSheet.create({
  page: {
    paddingTop: HEADER,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10.5,
    color: INK.ink,
  },
  /** Room for the sheet's own foot, which stands above a slip; the slip ends with the sheet. */
  above: { flexGrow: 1, minHeight: 36 },
  aside: { position: "absolute", top: 150, left: ASIDE_LEFT, width: LEFT + WIDTH - ASIDE_LEFT },
  label: { fontSize: 8, color: INK.soft },
  value: { fontSize: 10, marginBottom: 4 },
  tick: {
    position: "absolute",
    left: 20,
    width: 12,
    borderTopWidth: 0.5,
    borderTopColor: INK.soft,
  },
  subject: { fontSize: 15, fontWeight: 600, lineHeight: 1.2, marginBottom: 10 },
  continued: { position: "absolute", top: 30, left: LEFT, fontSize: 8.5, color: INK.soft },
  rule: {
    position: "absolute",
    left: LEFT,
    width: WIDTH,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
  },
  footer: { position: "absolute", left: LEFT, fontSize: 8.5, color: INK.soft },
  pages: {
    position: "absolute",
    left: LEFT,
    width: WIDTH,
    textAlign: "right",
    fontSize: 8.5,
    color: INK.soft,
  },
});

/** One invoice or statement as a document of its own, so that its pages count from 1. */
function AccountDocument({
  paper,
  address,
  setting,
}: {
  readonly paper: AccountPaper;
  readonly address: AddressLayout;
  readonly setting: Setting;
}) {
  const day = noonOf(paper.day);
  const { also } = paper;
  return (
    <Document
      title={`${paper.subject} (${paper.reference})`}
      author={paper.from[0] ?? ""}
      language={paper.language}
      creationDate={day}
      modificationDate={day}
    >
      <AccountPage paper={paper} setting={setting}>
        <Letterhead from={paper.from} />
        <Window layout={address} />
        <View style={styles.aside}>
          {[...paper.aside, ...alsoLine(also)].map(([label, value]) => (
            <View key={label}>
              <Text style={styles.label}>{label}</Text>
              <Text style={styles.value}>{value}</Text>
            </View>
          ))}
        </View>
        <View style={{ ...styles.tick, top: FOLD * 72 }} />
        <View style={{ ...styles.tick, top: FOLD * 144 }} />
        <View style={{ height: BODY_TOP - HEADER }} />
      </AccountPage>
      {also === undefined ? null : (
        <AccountPage paper={also} setting={setting}>
          <SecondHead paper={also} about={also.aside.map((each) => each.join(" "))} />
        </AccountPage>
      )}
    </Document>
  );
}

function alsoLine(also: AccountPaper | undefined): (readonly string[])[] {
  return also === undefined ? [] : [LETTER_WORDS[also.language].frame.alsoHere];
}

function AccountPage({
  paper,
  setting,
  children,
}: {
  readonly paper: AccountPaper;
  readonly setting: Setting;
  readonly children: ReactNode;
}) {
  const { frame } = LETTER_WORDS[paper.language];
  const [name = ""] = paper.to;
  const { slip } = paper;
  const foot = slip === undefined ? 34 : SLIP_HEIGHT + 8;
  const manner: BlockManner = { ...setting, width: WIDTH, stripNote: "", pictures: new Map() };
  return (
    <Page size="LETTER" style={{ ...styles.page, paddingBottom: slip === undefined ? 62 : 0 }}>
      {children}
      <Text style={styles.subject}>{paper.subject}</Text>
      <Blocks blocks={paper.blocks} manner={manner} special={() => null} />
      {slip === undefined ? null : (
        <>
          <View style={styles.above} />
          <Slip slip={slip} />
        </>
      )}
      <Text
        fixed
        style={styles.continued}
        render={({ subPageNumber }) => (subPageNumber > 1 ? `${name}  ·  ${paper.reference}` : "")}
      />
      <View fixed style={{ ...styles.rule, bottom: foot + 16 }} />
      <Text fixed style={{ ...styles.footer, bottom: foot }}>
        {paper.footer}
      </Text>
      <Text
        fixed
        style={{ ...styles.pages, bottom: foot }}
        render={({ pageNumber, totalPages }) => frame.page(pageNumber, totalPages)}
      />
    </Page>
  );
}

const REMIT = visibleBox(NUMBER_NINE, SLIP);
/** Three lines stay visible however the slip lies in its envelope. */
const REMIT_SIZE = 9.5;
const REMIT_LEADING = 10.75;

const slipStyles = StyleSheet.create({
  whole: {
    marginHorizontal: -LEFT,
    width: 612,
    height: SLIP_HEIGHT,
    borderTopWidth: 0.75,
    borderTopColor: INK.soft,
    borderStyle: "dashed",
  },
  words: { position: "absolute", top: 4, left: LEFT, fontSize: 8, color: INK.soft },
  title: { position: "absolute", top: 22, left: LEFT, fontSize: 15, fontWeight: 600 },
  remitLine: { position: "absolute", left: REMIT.left, fontSize: REMIT_SIZE },
  right: {
    position: "absolute",
    top: 14,
    left: ASIDE_LEFT,
    width: LEFT + WIDTH - ASIDE_LEFT,
  },
  value: { fontSize: 9.5, marginBottom: 2 },
  amount: { fontSize: 14, fontWeight: 600, marginBottom: 4 },
  pen: { borderBottomWidth: 0.75, borderBottomColor: INK.ink, height: 20, marginTop: 2 },
});

/** The part that comes back with a check, with the office's address in the reply envelope's window. */
function Slip({ slip }: { readonly slip: PaymentSlip }) {
  const [label, amount] = slip.amount;
  return (
    <View style={slipStyles.whole} wrap={false}>
      <Text style={slipStyles.words}>{slip.cut}</Text>
      <Text style={slipStyles.title}>{slip.title}</Text>
      {slip.remitTo.map((line, at) => (
        <Text key={line} style={{ ...slipStyles.remitLine, top: REMIT.top + at * REMIT_LEADING }}>
          {line}
        </Text>
      ))}
      <View style={slipStyles.right}>
        {slip.lines.map(([name, value]) => (
          <View key={name}>
            <Text style={styles.label}>{name}</Text>
            <Text style={slipStyles.value}>{value}</Text>
          </View>
        ))}
        <Text style={styles.label}>{label}</Text>
        <Text style={slipStyles.amount}>{amount}</Text>
        <Text style={styles.label}>{slip.enclosed}</Text>
        <View style={slipStyles.pen} />
      </View>
    </View>
  );
}
