import * as fontkit from "@cantoo/fontkit";
import { PDFDocument } from "@cantoo/pdf-lib";
import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { Declaration, DeclaredAct, Exhibit } from "#lib/domain/paper/declaration.ts";
import { FAMILY, readyFonts, regularFontBytes } from "./fonts.ts";
import { INK } from "./ink.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { noonOf } from "./noon.ts";
import { frameOnLetter, stampPage } from "./page-frame.ts";
import { printable } from "./printable.ts";
import { openUploads } from "./uploads-apart.ts";

interface PrintedDeclarations {
  readonly bytes: Uint8Array;
  /** Exhibits that could not be attached, each with why. */
  readonly missing: readonly string[];
}

/** A part of the printed document, with what stands at the foot of its pages. */
interface ReadyPart extends Part {
  readonly foot: string;
  readonly foreign: boolean;
}

/**
 * Declarations of delivery as one PDF in Letter size, each followed by its exhibits on pages of their
 * own. `uploads` are the stored files' bytes by id; an exhibit that can't be merged has a page that says
 * why, and is named in what comes back. For the worker process only. Throws DocumentRefused where a word
 * cannot be printed.
 */
export async function renderDeclarations(
  declarations: readonly Declaration[],
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<PrintedDeclarations> {
  const [first] = declarations;
  if (!first) throw new RangeError("Cannot render declarations: none given");
  await readyFonts();
  const parts: ReadyPart[] = [];
  const missing: string[] = [];
  const apart = openUploads();
  try {
    for (const one of declarations) {
      const clean = printable(one, `The declaration of ${one.by}`);
      const foot = `${clean.title}: ${clean.by}`;
      parts.push({
        title: foot,
        document: await drawn(<DeclarationDocument declaration={clean} />),
        ...{ foot, foreign: false },
      });
      for (const exhibit of clean.exhibits) {
        const bytes = uploads.get(exhibit.uploadId);
        const pages = bytes === undefined ? null : await apart.pages(bytes);
        const title = `Exhibit ${exhibit.letter}: ${exhibit.name}`;
        const label = `Exhibit ${exhibit.letter} to the declaration of ${clean.by}`;
        if (pages?.ok) {
          parts.push({ title, document: pages.value, foot: label, foreign: true });
          continue;
        }
        const why = `${title}: ${pages?.error ?? "its bytes are not in the store. Add the file again."}`;
        missing.push(why);
        const document = await drawn(<MissingDocument words={why} day={clean.day} />);
        parts.push({ title, document, foot: label, foreign: false });
      }
    }
  } finally {
    apart.close();
  }
  const joined = await joinParts(parts, {
    title:
      declarations.length === 1
        ? `${first.title}: ${first.by}`
        : `${declarations.length} declarations of delivery`,
    author: first.about[1] ?? "",
    subject: first.about[0] ?? "",
    language: "en",
    day: first.day,
  });
  await stampFeet(joined, parts);
  return { bytes: await joined.save(), missing };
}

async function drawn(element: Parameters<typeof renderToBuffer>[0]): Promise<PDFDocument> {
  return PDFDocument.load(await renderToBuffer(element), { updateMetadata: false });
}

async function stampFeet(joined: PDFDocument, parts: readonly ReadyPart[]): Promise<void> {
  joined.registerFontkit(fontkit);
  const font = await joined.embedFont(regularFontBytes(), { subset: true });
  const owners = parts.flatMap((part) => part.document.getPages().map(() => part));
  const pages = joined.getPages();
  for (const [at, page] of pages.entries()) {
    const owner = owners[at];
    if (owner?.foreign) frameOnLetter(page);
    stampPage(page, font, { left: owner?.foot ?? "", right: `Page ${at + 1} of ${pages.length}` });
  }
}

const styles = StyleSheet.create({
  page: {
    paddingTop: 54,
    paddingBottom: 58,
    paddingHorizontal: 60,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10.5,
    color: INK.ink,
  },
  rule: { borderTopWidth: 1.5, borderTopColor: INK.ink, marginBottom: 8 },
  title: { fontSize: 18, fontWeight: 600, marginBottom: 6 },
  about: { flexDirection: "row", justifyContent: "space-between", marginBottom: 12 },
  soft: { fontSize: 9.5, color: INK.soft, lineHeight: 1.35 },
  strong: { fontWeight: 600 },
  text: { fontSize: 10.5, lineHeight: 1.4, marginBottom: 8 },
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
    paddingVertical: 6,
  },
  headCell: { paddingRight: 10, fontSize: 9, color: INK.soft },
  cell: { paddingRight: 10, fontSize: 9.5, lineHeight: 1.3 },
  id: { fontSize: 8, color: INK.soft, lineHeight: 1.3 },
  sign: { marginTop: 14 },
  box: { flexDirection: "row", alignItems: "center", marginBottom: 6 },
  square: { width: 9, height: 9, borderWidth: 0.75, borderColor: INK.ink, marginRight: 8 },
  lines: { flexDirection: "row", marginTop: 30 },
  line: { borderTopWidth: 0.6, borderTopColor: INK.ink, paddingTop: 3, marginRight: 18 },
});

/** Number, when, what was done, to whom, which letter: 492 points in all. */
const WIDTHS = [20, 82, 158, 112, 120] as const;

function DeclarationDocument({ declaration }: { readonly declaration: Declaration }) {
  const at = noonOf(declaration.day);
  const [line = "", office = "", ...address] = declaration.about;
  return (
    <Document title={declaration.title} language="en" creationDate={at} modificationDate={at}>
      <Page size="LETTER" style={styles.page}>
        <View style={styles.rule} />
        <Text style={styles.title}>{declaration.title}</Text>
        <View style={styles.about}>
          <Text style={styles.soft}>{`Shared sewer line: ${line}`}</Text>
          <Text style={{ ...styles.soft, textAlign: "right" }}>
            {[office, ...address].join("\n")}
          </Text>
        </View>
        <Text style={styles.text}>{declaration.opening}</Text>
        <View>
          <View style={styles.head} fixed>
            {["", "When", "What was done", "To", "Letter"].map((title, column) => (
              <Text key={title} style={{ ...styles.headCell, width: WIDTHS[column] ?? 0 }}>
                {title}
              </Text>
            ))}
          </View>
          {declaration.acts.slice(0, -1).map((act) => (
            <ActRow key={act.number} act={act} />
          ))}
          <View wrap={false}>
            {declaration.acts.slice(-1).map((act) => (
              <ActRow key={act.number} act={act} />
            ))}
            <Signing declaration={declaration} />
          </View>
        </View>
        {declaration.exhibits.length === 0 ? null : <ExhibitList exhibits={declaration.exhibits} />}
      </Page>
    </Document>
  );
}

/** What is declared and signed; with the last act, so that no signature stands on a sheet alone. */
function Signing({ declaration }: { readonly declaration: Declaration }) {
  return (
    <View style={styles.sign}>
      {declaration.after.map((text) => (
        <Text key={text} style={styles.text}>
          {text}
        </Text>
      ))}
      {declaration.boxes.map((text) => (
        <View key={text} style={styles.box}>
          <View style={styles.square} />
          <Text>{text}</Text>
        </View>
      ))}
      <Text style={{ ...styles.text, marginTop: 4 }}>{declaration.oath}</Text>
      <View style={styles.lines}>
        <SignLine width={110} words="Date" />
        <SignLine width={170} words="City and state" />
        <SignLine width={176} words={`Signature of ${declaration.by}`} />
      </View>
    </View>
  );
}

function ActRow({ act }: { readonly act: DeclaredAct }) {
  const [number, when, what, to, letter] = WIDTHS;
  const exhibit = act.exhibit === "" ? "" : ` Exhibit ${act.exhibit}.`;
  return (
    <View style={styles.row} wrap={false}>
      <Text style={{ ...styles.cell, width: number }}>{act.number}</Text>
      <Text style={{ ...styles.cell, width: when }}>{act.when}</Text>
      <Text style={{ ...styles.cell, width: what }}>
        {[act.what, act.became].filter((part) => part !== "").join(" ")}
        <Text style={styles.strong}>{exhibit}</Text>
      </Text>
      <Text style={{ ...styles.cell, width: to }}>{act.to.join("\n")}</Text>
      <View style={{ width: letter }}>
        <Text style={styles.cell}>{act.letter}</Text>
        <Text style={styles.id}>{act.id === "" ? "" : `ID ${inGroups(act.id)}`}</Text>
      </View>
    </View>
  );
}

/** A fingerprint in groups that break at the end of a line, the whole of it. */
function inGroups(hash: string): string {
  return hash.replaceAll(/(.{16})(?=.)/g, "$1 ");
}

function SignLine({ width, words }: { readonly width: number; readonly words: string }) {
  return (
    <View style={{ ...styles.line, width }}>
      <Text style={styles.soft}>{words}</Text>
    </View>
  );
}

function ExhibitList({ exhibits }: { readonly exhibits: readonly Exhibit[] }) {
  return (
    <View style={{ marginTop: 16 }} wrap={false}>
      <Text style={{ ...styles.strong, marginBottom: 4 }}>Exhibits</Text>
      {exhibits.map(({ letter, name, sha256, acts }) => (
        <View key={letter} style={{ flexDirection: "row", marginBottom: 3 }}>
          <Text style={{ ...styles.cell, width: 24 }}>{letter}</Text>
          <View style={{ flex: 1 }}>
            <Text style={styles.cell}>{`${name}, for No. ${acts.join(", ")}`}</Text>
            <Text style={styles.id}>{`SHA-256 ${inGroups(sha256)}`}</Text>
          </View>
        </View>
      ))}
    </View>
  );
}

/** Stands in the place of an exhibit that can't be attached. */
function MissingDocument({ words, day }: { readonly words: string; readonly day: string }) {
  const at = noonOf(day);
  return (
    <Document title={words} language="en" creationDate={at} modificationDate={at}>
      <Page size="LETTER" style={styles.page}>
        <View style={styles.rule} />
        <Text style={styles.text}>{words}</Text>
      </Page>
    </Document>
  );
}
