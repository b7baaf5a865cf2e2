import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ClerkSheet } from "#lib/domain/paper/corrections-answer.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";

const styles = StyleSheet.create({
  page: {
    paddingTop: 46,
    paddingBottom: 54,
    paddingHorizontal: 48,
    fontFamily: FAMILY as unknown as string,
    fontSize: 9.5,
    color: INK.ink,
  },
  rule: { borderTopWidth: 1.25, borderTopColor: INK.ink, marginBottom: 8 },
  top: { flexDirection: "row", justifyContent: "space-between", marginBottom: 10 },
  small: { fontSize: 8.5, color: INK.soft, lineHeight: 1.35 },
  title: { fontSize: 17, fontWeight: 600, marginBottom: 8 },
  about: { flexDirection: "row", paddingVertical: 2 },
  label: { width: 110, color: INK.soft, fontSize: 9 },
  value: { flex: 1 },
  gap: { marginTop: 12 },
  sign: { flexDirection: "row", marginTop: 42 },
  line: { borderTopWidth: 0.6, borderTopColor: INK.ink, paddingTop: 3, marginRight: 20, flex: 2 },
  short: { flex: 1, marginRight: 0 },
  foot: {
    position: "absolute",
    bottom: 26,
    left: 48,
    right: 48,
    flexDirection: "row",
    justifyContent: "space-between",
  },
});

const MANNER: BlockManner = { width: 516, size: 9.5, tableSize: 8.75, stripNote: "", air: 0.6 };

/**
 * A sheet for the clerk as a PDF in Letter size. Slow: for the worker process only. Throws
 * DocumentRefused with words where one cannot be printed as it is.
 */
export async function renderClerkSheet(sheet: ClerkSheet): Promise<Uint8Array> {
  await readyFonts();
  const clean = printable(sheet, `“${sheet.title}”`);
  return renderToBuffer(<ClerkDocument sheet={clean} />);
}

function ClerkDocument({ sheet }: { readonly sheet: ClerkSheet }) {
  const day = noonOf(sheet.day);
  return (
    <Document
      title={sheet.title}
      author={sheet.from[0] ?? ""}
      language="en"
      creationDate={day}
      modificationDate={day}
    >
      <Page size="LETTER" style={styles.page}>
        <View style={styles.rule} />
        <View style={styles.top}>
          <Lines lines={sheet.from} />
          <Lines lines={sheet.to} />
        </View>
        <Text style={styles.title}>{sheet.title}</Text>
        {sheet.about.map(([label, words]) => (
          <View key={label} style={styles.about}>
            <Text style={styles.label}>{label}</Text>
            <Text style={styles.value}>{words}</Text>
          </View>
        ))}
        <View style={styles.gap} />
        <Blocks blocks={sheet.blocks} manner={MANNER} special={() => null} />
        <View style={styles.sign} wrap={false}>
          {sheet.signed.map((words, at) => (
            <Text
              key={words}
              style={[styles.line, styles.small, ...(at === 0 ? [] : [styles.short])]}
            >
              {words}
            </Text>
          ))}
        </View>
        <View fixed style={styles.foot}>
          <Text style={styles.small}>{sheet.footer}</Text>
          <Text
            style={styles.small}
            render={({ pageNumber, totalPages }) => `${pageNumber} of ${totalPages}`}
          />
        </View>
      </Page>
    </Document>
  );
}

function Lines({ lines }: { readonly lines: readonly string[] }) {
  return (
    <View>
      {lines.map((line) => (
        <Text key={line} style={styles.small}>
          {line}
        </Text>
      ))}
    </View>
  );
}
