import { PDFDocument } from "@cantoo/pdf-lib";
import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { AgreementPaper } from "#lib/domain/paper/agreement-paper.ts";
import { AGREEMENT_WORDS } from "#lib/domain/paper/agreement-words.ts";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { joinParts } from "./join-pdf.ts";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";

/**
 * Drafts of agreements as one PDF in Letter size, for paper, a notary and the county recorder: at the
 * top right of the first page 3 in by 3 in stay free for the recorder’s stamp. A reading copy has
 * neither that nor a line to sign on. Never signed on screen. Slow: for the worker process only. Throws DocumentRefused with words where one cannot be
 * printed as it is.
 */
export async function renderAgreements(papers: readonly AgreementPaper[]): Promise<Uint8Array> {
  const [first] = papers;
  if (!first) throw new RangeError("Cannot render agreements: none given");
  await readyFonts();
  const parts = [];
  for (const paper of papers) {
    const clean = printable(paper, `The draft “${paper.title}”`);
    const bytes = await renderToBuffer(<AgreementDocument paper={clean} />);
    const document = await PDFDocument.load(bytes, { updateMetadata: false });
    parts.push({
      title: clean.copy === null ? clean.title : `${clean.title}: ${READING_COPY_NAME}`,
      document,
    });
  }
  const joined = await joinParts(parts, {
    title: `Draft: ${first.title}`,
    author: first.returnTo[0] ?? "",
    subject: "Draft of an agreement on a shared private sewer",
    language: "en",
    day: first.day,
  });
  return joined.save();
}

const READING_COPY_NAME = "reading copy in Spanish";

const INCH = 72;
const LEFT = INCH;
const WIDTH = 468;
const COPY_PADDING = 8;

const styles = StyleSheet.create({
  page: {
    paddingTop: INCH,
    paddingBottom: INCH,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 11,
    color: INK.ink,
  },
  top: { height: 3 * INCH - 36, marginTop: -36 },
  stamp: {
    position: "absolute",
    top: 0,
    left: WIDTH - 3 * INCH + 36,
    width: 3 * INCH,
    height: 3 * INCH - 48,
    borderWidth: 0.5,
    borderColor: INK.faint,
    padding: 5,
  },
  copyPage: {
    paddingTop: 46,
    paddingBottom: 56,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 11,
    color: INK.ink,
  },
  copy: {
    borderWidth: 0.6,
    borderColor: INK.soft,
    padding: COPY_PADDING,
    marginBottom: 6,
  },
  copyWords: { fontSize: 11, fontWeight: 600, lineHeight: 1.3, marginBottom: 2 },
  small: { fontSize: 8.5, color: INK.soft, lineHeight: 1.35 },
  draft: { fontSize: 9.5, lineHeight: 1.35, width: 235, marginTop: 20 },
  title: { fontSize: 17, fontWeight: 600, lineHeight: 1.2, marginTop: 10, marginBottom: 10 },
  heading: { fontSize: 12.5, fontWeight: 600, marginTop: 12, marginBottom: 4 },
  text: { fontSize: 11, lineHeight: 1.35, marginBottom: 5 },
  row: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: INK.faint,
    paddingVertical: 4,
  },
  cell: { paddingRight: 8, lineHeight: 1.3, fontSize: 10 },
  head: { paddingRight: 8, fontSize: 9, color: INK.soft },
  sign: { marginTop: 18 },
  signRow: { flexDirection: "row", marginTop: 30 },
  line: { borderTopWidth: 0.6, borderTopColor: INK.ink, paddingTop: 3, marginRight: 18 },
  notary: {
    marginTop: 10,
    height: 104,
    borderWidth: 0.6,
    borderColor: INK.soft,
    padding: 6,
  },
  footer: {
    position: "absolute",
    bottom: 34,
    left: LEFT,
    width: WIDTH - 70,
    fontSize: 8.5,
    color: INK.soft,
  },
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

function AgreementDocument({ paper }: { readonly paper: AgreementPaper }) {
  const day = noonOf(paper.day);
  const words = AGREEMENT_WORDS[paper.language];
  return (
    <Document
      title={`Draft: ${paper.title}`}
      author={paper.returnTo[0] ?? ""}
      language={paper.language}
      creationDate={day}
      modificationDate={day}
    >
      <Page size="LETTER" style={paper.copy === null ? styles.page : styles.copyPage}>
        {paper.copy === null ? <Top paper={paper} /> : <CopyTop paper={paper} copy={paper.copy} />}
        <Text style={styles.title}>{paper.title}</Text>
        <Text style={styles.heading}>{words.between}</Text>
        {paper.parties.map(({ name, lots }) => (
          <Text key={name} style={styles.text}>
            {words.of(name, lots)}
          </Text>
        ))}
        <Text style={styles.heading}>{words.lots}</Text>
        <Lots paper={paper} head={words.columns} />
        {paper.sections.map(({ title, text }) => (
          <View key={title} minPresenceAhead={40} wrap={text.length > 3}>
            <Text style={styles.heading} minPresenceAhead={40}>
              {title}
            </Text>
            {text.map((each, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: the paragraphs of a paper never move
              <Text key={at} style={styles.text}>
                {each}
              </Text>
            ))}
          </View>
        ))}
        {paper.copy === null ? <Signatures paper={paper} /> : null}
        <Text fixed style={styles.footer}>
          {paper.copy === null
            ? `Draft, not yet reviewed or signed: ${paper.title}`
            : paper.copy.es}
        </Text>
        <Text
          fixed
          style={styles.pages}
          render={({ pageNumber, totalPages }) => words.page(pageNumber, totalPages)}
        />
      </Page>
    </Document>
  );
}

/** One below the other, the last two kept together: nobody’s stands on a sheet alone. */
function Signatures({ paper: { parties } }: { readonly paper: AgreementPaper }) {
  const names = parties.map(({ name }) => name);
  const [first = "", ...rest] = names.slice(0, -2);
  const last = names.slice(-2);
  const heading = <Text style={styles.heading}>Signatures, each notarized</Text>;
  return (
    <>
      {first === "" ? null : (
        <View wrap={false}>
          {heading}
          <Signature name={first} />
        </View>
      )}
      {rest.map((name) => (
        <Signature key={name} name={name} />
      ))}
      <View wrap={false}>
        {first === "" ? heading : null}
        {last.map((name) => (
          <Signature key={name} name={name} />
        ))}
      </View>
    </>
  );
}

/** In place of the recorder’s space: what the copy is, in both languages. */
function CopyTop({
  paper,
  copy,
}: {
  readonly paper: AgreementPaper;
  readonly copy: NonNullable<AgreementPaper["copy"]>;
}) {
  return (
    <View style={styles.copy}>
      <Text style={styles.copyWords}>{copy.es}</Text>
      <Text style={styles.small}>{copy.en}</Text>
      <Text style={{ ...styles.draft, width: WIDTH - 2 * (COPY_PADDING + 1), marginTop: 8 }}>
        {paper.draft}
      </Text>
    </View>
  );
}

/** Where it is to be returned at the left; at the right the recorder’s space. */
function Top({ paper }: { readonly paper: AgreementPaper }) {
  return (
    <View style={styles.top}>
      <Text style={styles.small}>After recording, return to:</Text>
      {paper.returnTo.map((line) => (
        <Text key={line} style={{ ...styles.small, color: INK.ink, fontSize: 10 }}>
          {line}
        </Text>
      ))}
      <Text style={styles.draft}>{paper.draft}</Text>
      <View style={styles.stamp}>
        <Text style={styles.small}>For the recorder’s use</Text>
      </View>
    </View>
  );
}

const COLUMNS = ["42%", "14%", "28%", "16%"] as const;

function Lots({
  paper,
  head,
}: {
  readonly paper: AgreementPaper;
  readonly head: readonly string[];
}) {
  const rows = paper.lots.map(({ place, parcel, legal, share }) => [place, parcel, legal, share]);
  return (
    <View>
      {[head, ...rows].map((row, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the rows of a paper never move
        <View key={at} style={styles.row} wrap={false}>
          {row.map((text, column) => (
            <Text
              // biome-ignore lint/suspicious/noArrayIndexKey: the cells of a paper never move
              key={column}
              style={{ ...(at === 0 ? styles.head : styles.cell), width: COLUMNS[column] ?? "25%" }}
            >
              {text}
            </Text>
          ))}
        </View>
      ))}
    </View>
  );
}

/** A line to sign on, and room for the notary, whose state has words of its own for it. */
function Signature({ name }: { readonly name: string }) {
  return (
    <View style={styles.sign} wrap={false}>
      <View style={styles.signRow}>
        <View style={{ ...styles.line, width: 300 }}>
          <Text style={styles.small}>{name}</Text>
        </View>
        <View style={{ ...styles.line, flex: 1, marginRight: 0 }}>
          <Text style={styles.small}>Date</Text>
        </View>
      </View>
      <View style={styles.notary}>
        <Text style={styles.small}>
          {`Acknowledgment of ${name}. The notary completes or attaches the form required by the state where it is signed, with name, commission, date and seal.`}
        </Text>
      </View>
    </View>
  );
}
