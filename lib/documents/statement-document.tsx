import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import { LETTER_WORDS } from "#lib/domain/paper/facts.ts";
import type { Statement } from "#lib/domain/paper/statement.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { type Drawn, fewestPages } from "./fewest-pages.ts";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";

/**
 * Statements as one PDF in Letter size, each from a fresh page with its own page numbers; they go
 * into the envelope with a letter and have no window of their own. The same statements give the same
 * bytes. Slow: for the worker process only. Throws DocumentRefused with words where one cannot be
 * printed as it is.
 */
export async function renderStatements(statements: readonly Statement[]): Promise<Uint8Array> {
  const [first] = statements;
  if (!first) throw new RangeError("Cannot render statements: none given");
  await readyFonts();
  const parts: Part[] = [];
  for (const statement of statements) parts.push(await statementPart(statement));
  const joined = await joinParts(parts, {
    title: statements.length === 1 ? first.subject : `${statements.length} statements`,
    author: first.from[0] ?? "",
    subject: first.reference,
    language: first.language,
    day: first.day,
  });
  return joined.save();
}

/** One statement as a part of a document: behind the letter that encloses it, say. */
export async function statementPart(statement: Statement): Promise<Part & Drawn> {
  const clean = printable(statement, `“${statement.subject}”`);
  const drawn = await fewestPages(SETTINGS, clean.also === undefined ? 1 : 2, (setting) => (
    <StatementDocument statement={clean} setting={setting} />
  ));
  return { title: clean.subject, ...drawn };
}

const LEFT = 50;
const WIDTH = 512;
const styles = StyleSheet.create({
  page: {
    paddingTop: 40,
    paddingBottom: 48,
    paddingHorizontal: LEFT,
    fontFamily: FAMILY as unknown as string,
    fontSize: 9.5,
    color: INK.ink,
  },
  head: {
    flexDirection: "row",
    justifyContent: "space-between",
    borderTopWidth: 1.5,
    borderTopColor: INK.ink,
    paddingTop: 8,
    marginBottom: 8,
  },
  side: { width: 235 },
  right: { width: 235, textAlign: "right" },
  strong: { fontWeight: 600, fontSize: 10.5, lineHeight: 1.3 },
  line: { fontSize: 9, color: INK.soft, lineHeight: 1.35 },
  subject: { fontSize: 16, fontWeight: 600, lineHeight: 1.2, marginBottom: 6 },
  continued: { position: "absolute", top: 24, left: LEFT, fontSize: 8.5, color: INK.soft },
  rule: {
    position: "absolute",
    bottom: 38,
    left: LEFT,
    width: WIDTH,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
  },
  footer: { position: "absolute", bottom: 24, left: LEFT, fontSize: 8.5, color: INK.soft },
  pages: {
    position: "absolute",
    bottom: 24,
    left: LEFT,
    width: WIDTH,
    textAlign: "right",
    fontSize: 8.5,
    color: INK.soft,
  },
});

/** How closely a statement may be set, the roomiest first; it is one sheet wherever that can be. */
const SETTINGS = [
  { size: 9.5, tableSize: 9.25, air: 1, stripHeight: 230, columns: "none" },
  { size: 9.25, tableSize: 8.75, air: 0.6, stripHeight: 230, columns: "all" },
  { size: 8.25, tableSize: 8, air: 0.3, stripHeight: 230, columns: "all" },
] as const satisfies readonly Partial<BlockManner>[];

function StatementDocument({
  statement,
  setting,
}: {
  readonly statement: Statement;
  readonly setting: (typeof SETTINGS)[number];
}) {
  const day = noonOf(statement.day);
  return (
    <Document
      title={`${statement.subject} (${statement.reference})`}
      author={statement.from[0] ?? ""}
      language={statement.language}
      creationDate={day}
      modificationDate={day}
    >
      <StatementPage statement={statement} setting={setting} />
      {statement.also === undefined ? null : (
        <StatementPage statement={statement.also} setting={setting} />
      )}
    </Document>
  );
}

function StatementPage({
  statement,
  setting,
}: {
  readonly statement: Statement;
  readonly setting: (typeof SETTINGS)[number];
}) {
  const { frame } = LETTER_WORDS[statement.language];
  const manner: BlockManner = { ...setting, width: WIDTH, stripNote: frame.notToScale };
  return (
    <Page size="LETTER" style={styles.page}>
      <Head statement={statement} />
      <Text style={styles.subject}>{statement.subject}</Text>
      <Blocks blocks={statement.blocks} manner={manner} special={() => null} />
      <Text
        fixed
        style={styles.continued}
        render={({ subPageNumber }) =>
          subPageNumber > 1 ? `${statement.subject}  ·  ${statement.reference}` : ""
        }
      />
      <View fixed style={styles.rule} />
      <Text fixed style={styles.footer}>
        {statement.footer}
      </Text>
      <Text
        fixed
        style={styles.pages}
        render={({ pageNumber, totalPages }) => frame.page(pageNumber, totalPages)}
      />
    </Page>
  );
}

/** Whose it is at the left, whom it is from at the right. */
function Head({ statement }: { readonly statement: Statement }) {
  const { frame } = LETTER_WORDS[statement.language];
  const [name = "", ...place] = statement.to;
  const [office = "", ...contact] = statement.from;
  const cut = Math.ceil(contact.length / 2);
  const address = [contact.slice(0, cut).join(", "), contact.slice(cut).join(" · ")];
  const dated = `${frame.date} ${statement.date} · ${frame.reference} ${statement.reference}`;
  return (
    <View style={styles.head}>
      <View style={styles.side}>
        <Text style={styles.strong}>{name}</Text>
        {place.map((line) => (
          <Text key={line} style={styles.line}>
            {line}
          </Text>
        ))}
        <Text style={styles.line}>{dated}</Text>
      </View>
      <View style={styles.right}>
        <Text style={styles.strong}>{office}</Text>
        {address.map((line) => (
          <Text key={line} style={styles.line}>
            {line}
          </Text>
        ))}
      </View>
    </View>
  );
}
