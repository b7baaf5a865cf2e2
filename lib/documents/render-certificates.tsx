import { Document, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { Certificate } from "#lib/domain/paper/certificate.ts";
import { FAMILY, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { noonOf } from "./noon.ts";
import { printable } from "./printable.ts";

const styles = StyleSheet.create({
  page: {
    paddingTop: 60,
    paddingBottom: 58,
    paddingHorizontal: 72,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10,
    color: INK.ink,
  },
  rule: { borderTopWidth: 1.5, borderTopColor: INK.ink, marginBottom: 10 },
  from: { fontSize: 10.5, color: INK.soft, marginBottom: 4 },
  title: { fontSize: 17, fontWeight: 600, marginBottom: 14 },
  row: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: INK.faint,
    paddingVertical: 4,
  },
  label: { width: 132, paddingRight: 10, color: INK.soft, fontSize: 9 },
  value: { lineHeight: 1.3, fontSize: 9.5 },
  note: { marginTop: 14, fontSize: 9.5, lineHeight: 1.35 },
});

interface From {
  /** The office that keeps the signature. */
  readonly name: string;
  readonly day: string;
}

/**
 * Certificates of signatures as one PDF, each from a fresh page. Throws DocumentRefused with words
 * where a sign in one has no typeface here.
 */
export async function renderCertificates(
  certificates: readonly Certificate[],
  { name, day }: From,
): Promise<Uint8Array> {
  const [first] = certificates;
  if (!first) throw new RangeError("Cannot render certificates: none given");
  await readyFonts();
  const clean = printable(certificates, "The certificate");
  const at = noonOf(day);
  return renderToBuffer(
    <Document
      title={first.title}
      author={name}
      language={first.language}
      creationDate={at}
      modificationDate={at}
    >
      {clean.map((certificate, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: certificates are printed once
        <Page key={index} size="LETTER" style={styles.page}>
          <View style={styles.rule} />
          <Text style={styles.from}>{name}</Text>
          <Text style={styles.title}>{certificate.title}</Text>
          {certificate.rows.map(({ label, lines }) => (
            <View key={label} style={styles.row} wrap={lines.length > 12}>
              <Text style={styles.label}>{label}</Text>
              <View style={{ flex: 1 }}>
                {lines.map((line, number) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: lines never move
                  <Text key={number} style={styles.value}>
                    {line}
                  </Text>
                ))}
              </View>
            </View>
          ))}
          <Text style={styles.note}>{certificate.note}</Text>
        </Page>
      ))}
    </Document>,
  );
}
