import { PDFDocument } from "@cantoo/pdf-lib";
import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { AccountPaper } from "#lib/domain/paper/paper-frame.ts";
import { type AddressLayout, addressLayout } from "./address-layout.ts";
import { type BlockManner, Blocks } from "./blocks.tsx";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { Letterhead, SecondHead, Window } from "./letter-document.tsx";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";
import { exposedBox, FOLD, NUMBER_TEN } from "./window.ts";

/**
 * Invoices and statements as one PDF in Letter size, each from a fresh page with its own page
 * numbers, for #10 window envelopes. The same papers give the same bytes. Slow: for the worker
 * process only. Throws DocumentRefused with words where one cannot be printed as it is.
 */
export async function renderAccounts(papers: readonly AccountPaper[]): Promise<Uint8Array> {
  const [first] = papers;
  if (!first) throw new RangeError("Cannot render accounts: none given");
  await readyFonts();
  const parts: Part[] = [];
  for (const paper of papers) parts.push(await renderOne(paper));
  const joined = await joinParts(parts, {
    title: papers.length === 1 ? first.subject : `${papers.length} accounts`,
    author: first.from[0] ?? "",
    subject: papers.map(({ reference }) => reference).join(", "),
    language: first.language,
    day: first.day,
  });
  return joined.save();
}

async function renderOne(paper: AccountPaper): Promise<Part> {
  const [name = ""] = paper.to;
  const clean = printable(paper, `The ${paper.title.toLowerCase()} to ${name}`);
  const address = addressLayout(clean.to);
  const bytes = await renderToBuffer(<AccountDocument paper={clean} address={address} />);
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return { title: `${name}: ${clean.subject}`, document };
}

const LEFT = 72;
const WIDTH = 468;
const HEADER = 58;
const BODY_TOP = exposedBox(NUMBER_TEN, FOLD).bottom + 16;
const ASIDE_LEFT = exposedBox(NUMBER_TEN, FOLD).right + 9;
const MANNER: BlockManner = {
  width: WIDTH,
  size: 10.5,
  tableSize: 9.5,
  stripNote: "",
  pictures: new Map(),
};

const styles = StyleSheet.create({
  page: {
    paddingTop: HEADER,
    paddingBottom: 62,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10.5,
    color: INK.ink,
  },
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
    bottom: 50,
    left: LEFT,
    width: WIDTH,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
  },
  footer: { position: "absolute", bottom: 34, left: LEFT, fontSize: 8.5, color: INK.soft },
  pages: {
    position: "absolute",
    bottom: 34,
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
}: {
  readonly paper: AccountPaper;
  readonly address: AddressLayout;
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
      <AccountPage paper={paper}>
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
        <AccountPage paper={also}>
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
  children,
}: {
  readonly paper: AccountPaper;
  readonly children: ReactNode;
}) {
  const { frame } = LETTER_WORDS[paper.language];
  const [name = ""] = paper.to;
  return (
    <Page size="LETTER" style={styles.page}>
      {children}
      <Text style={styles.subject}>{paper.subject}</Text>
      <Blocks blocks={paper.blocks} manner={MANNER} special={() => null} />
      <Text
        fixed
        style={styles.continued}
        render={({ subPageNumber }) => (subPageNumber > 1 ? `${name}  ·  ${paper.reference}` : "")}
      />
      <View fixed style={styles.rule} />
      <Text fixed style={styles.footer}>
        {paper.footer}
      </Text>
      <Text
        fixed
        style={styles.pages}
        render={({ pageNumber, totalPages }) => frame.page(pageNumber, totalPages)}
      />
    </Page>
  );
}
