import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { Packet, PacketCheck } from "#lib/domain/packet/packet.ts";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";
import { noonOf } from "./noon.ts";

const styles = StyleSheet.create({
  page: {
    paddingTop: 36,
    paddingBottom: 44,
    paddingHorizontal: 54,
    fontFamily: FAMILY as unknown as string,
    fontSize: 10,
    color: INK.ink,
  },
  topRule: { borderTopWidth: 1.5, borderTopColor: INK.ink, marginBottom: 10 },
  kind: { fontSize: 10.5, color: INK.soft, marginBottom: 4 },
  name: { fontSize: 22, fontWeight: 600, marginBottom: 3, lineHeight: 1.15 },
  to: { fontSize: 12, marginBottom: 8 },
  facts: { flexDirection: "row", marginBottom: 10 },
  factLabel: { fontSize: 8.5, color: INK.soft, marginBottom: 2 },
  factLine: { fontSize: 9.5, marginBottom: 1.5 },
  factColumn: { width: 250 },
  heading: { fontSize: 12, fontWeight: 600, marginTop: 2, marginBottom: 4 },
  missing: { borderLeftWidth: 2.5, borderLeftColor: INK.loud, paddingLeft: 10, marginBottom: 10 },
  nothing: { borderLeftWidth: 2.5, borderLeftColor: INK.ink, paddingLeft: 10, marginBottom: 10 },
  missingTitle: { fontSize: 12, fontWeight: 600, marginBottom: 3 },
  contents: { fontSize: 9, lineHeight: 1.3, marginBottom: 8, color: INK.soft },
  line: { flexDirection: "row", marginBottom: 1.5 },
  number: { width: 20, color: INK.soft },
  text: { flex: 1, lineHeight: 1.25, fontSize: 9 },
  /** Alone under its title, not beside a number. */
  alone: { lineHeight: 1.25, fontSize: 9 },
  entry: {
    flexDirection: "row",
    borderBottomWidth: 0.4,
    borderBottomColor: INK.faint,
    paddingVertical: 1.5,
  },
  entryNumber: { width: 26, color: INK.soft },
  entryTitle: { flex: 1, paddingRight: 12, fontSize: 9.5 },
  two: { flexDirection: "row", justifyContent: "space-between" },
  half: { width: 242 },
  entryPage: { width: 60, textAlign: "right" },
  entryHead: {
    borderBottomWidth: 0.75,
    borderBottomColor: INK.ink,
    fontSize: 8.5,
    color: INK.soft,
  },
  closeEntry: { paddingVertical: 0.3 },
  signed: { flexDirection: "row", columnGap: 20, marginTop: 60 },
  signature: {
    borderTopWidth: 0.6,
    borderTopColor: INK.ink,
    paddingTop: 3,
    fontSize: 8.5,
    color: INK.soft,
  },
  checks: { marginTop: 10 },
  source: { fontSize: 8, color: INK.soft, marginBottom: 2 },
  check: { width: 82, paddingRight: 8, fontSize: 8.5 },
  checkTitle: { width: 235, paddingRight: 10, fontSize: 8.5, lineHeight: 1.25 },
  checkText: { flex: 1, paddingRight: 10, fontSize: 8.5, lineHeight: 1.25 },
  checkCite: { width: 110, fontSize: 8, color: INK.soft, lineHeight: 1.25 },
});

/** A line of the index. */
export interface IndexEntry {
  readonly number: number;
  readonly title: string;
  /** Page of the whole packet on which it starts. */
  readonly page: number;
  readonly pages: number;
}

/** The packet's first pages: what it is, what is missing, the index, and what was asked for. */
export function CoverDocument({
  packet,
  index,
  refused,
  close = false,
}: {
  readonly packet: Packet;
  readonly index: readonly IndexEntry[];
  readonly refused: readonly string[];
  /** With less air, where that saves a page. */
  readonly close?: boolean;
}) {
  const day = noonOf(packet.day);
  return (
    <Document title={packet.title} language="en" creationDate={day} modificationDate={day}>
      <Page size="LETTER" style={styles.page}>
        <View style={styles.topRule} />
        <Text style={styles.kind}>{packet.title}</Text>
        <Text style={styles.name}>{packet.lineName}</Text>
        <Text style={styles.to}>{toWords(packet)}</Text>
        <View style={styles.facts}>
          <View style={styles.factColumn}>
            <Text style={styles.factLabel}>Prepared by</Text>
            {packet.preparedBy.map((line) => (
              <Text key={line} style={styles.factLine}>
                {line}
              </Text>
            ))}
          </View>
          <View>
            <Text style={styles.factLabel}>Prepared on</Text>
            <Text style={styles.factLine}>{packet.preparedOn}</Text>
          </View>
        </View>
        <Missing
          lines={[...packet.missing, ...refused]}
          purpose={packet.purpose}
          optional={packet.checks.some(
            ({ state, due }) => state === "missing" && due === "submission",
          )}
        />
        {packet.contents.map((line) => (
          <Text key={line} style={styles.contents}>
            {line}
          </Text>
        ))}
        <Index entries={index} close={close} />
        <Checks packet={packet} close={close} />
        <Signed words={packet.signed ?? []} />
      </Page>
    </Document>
  );
}

/** Signed by hand, and unsigned until then. */
function Signed({ words }: { readonly words: readonly string[] }) {
  if (words.length === 0) return null;
  return (
    <View style={styles.signed} wrap={false}>
      {words.map((each, at) => (
        <Text key={each} style={{ ...styles.signature, flex: at === 0 ? 2 : 1 }}>
          {each}
        </Text>
      ))}
    </View>
  );
}

/** For whom it is: the authority, or the file. */
function toWords({ purpose, authorityName }: Packet): string {
  return purpose === "close-out" ? "For the file" : `To ${authorityName}`;
}

/** What a cover says of what is missing. */
const MISSING_WORDS: Record<
  Packet["purpose"],
  { readonly none: string; readonly all: string; readonly one: string; readonly more: string }
> = {
  application: {
    none: "Nothing is missing",
    all: "Every item on the checklist entered here is in this packet.",
    one: "item is missing",
    more: "items are missing",
  },
  "as-built": {
    none: "Nothing is missing",
    all: "Everything recorded as built was measured, with sizes, depths and ties.",
    one: "item is missing",
    more: "items are missing",
  },
  "close-out": {
    none: "Nothing is open",
    all: "Permits are final, what was built is recorded, branches are open, the ledger is settled and no hold is open on what was done.",
    one: "item is open",
    more: "items are open",
  },
};

function Missing({
  lines,
  optional,
  purpose,
}: {
  readonly lines: readonly string[];
  readonly purpose: Packet["purpose"];
  /** Something that is only asked for sometimes is missing, as the list below says. */
  readonly optional: boolean;
}) {
  const words = MISSING_WORDS[purpose];
  if (lines.length === 0) {
    return (
      <View style={styles.nothing} wrap={false}>
        <Text style={styles.missingTitle}>
          {optional ? "No required item is missing" : words.none}
        </Text>
        <Text style={styles.alone}>
          {optional
            ? "Items requested only in some cases that are not included are in the list below."
            : words.all}
        </Text>
      </View>
    );
  }
  return (
    <View style={styles.missing}>
      <Text style={styles.missingTitle}>
        {lines.length === 1 ? `1 ${words.one}` : `${lines.length} ${words.more}`}
      </Text>
      {lines.map((line, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a list never move
        <View key={index} style={styles.line} wrap={false}>
          <Text style={styles.number}>{index + 1}</Text>
          <Text style={styles.text}>{line}</Text>
        </View>
      ))}
    </View>
  );
}

/** In two columns, whole on one page. */
function Index({
  entries,
  close,
}: {
  readonly entries: readonly IndexEntry[];
  readonly close: boolean;
}) {
  const cut = Math.ceil(entries.length / 2);
  return (
    <View wrap={entries.length > MOST_WHOLE}>
      <Text style={styles.heading}>Index</Text>
      <View style={styles.two}>
        {[entries.slice(0, cut), entries.slice(cut)].map((half, column) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the columns of a page never move
          <View key={column} style={styles.half}>
            <View style={{ ...styles.entry, ...styles.entryHead }}>
              <Text style={styles.entryNumber}>Sheet</Text>
              <Text style={styles.entryTitle}> </Text>
              <Text style={styles.entryPage}>Pages</Text>
            </View>
            {half.map((entry) => (
              <IndexLine key={`${entry.number} ${entry.title}`} entry={entry} close={close} />
            ))}
          </View>
        ))}
      </View>
    </View>
  );
}

/** A longer index may break over the page. */
const MOST_WHOLE = 40;

function IndexLine({
  entry: { number, title, page, pages },
  close,
}: {
  readonly entry: IndexEntry;
  readonly close: boolean;
}) {
  return (
    <View style={entryStyle(close)} wrap={false}>
      <Text style={styles.entryNumber}>{number}</Text>
      <Text style={styles.entryTitle}>{title}</Text>
      <Text style={styles.entryPage}>
        {pages === 1 ? String(page) : `${page}–${page + pages - 1}`}
      </Text>
    </View>
  );
}

function entryStyle(close: boolean) {
  return close ? { ...styles.entry, ...styles.closeEntry } : styles.entry;
}

const STATES: Record<PacketCheck["state"], string> = {
  "in-hand": "☑ included",
  missing: "☐ missing",
  "does-not-apply": "– not applicable",
};

function Checks({ packet, close }: { readonly packet: Packet; readonly close: boolean }) {
  const [first, ...others] = packet.checks.filter(({ due }) => due === "submission");
  if (first === undefined) return null;
  // What all of them are asked for in is said once.
  const one = others.every(({ citation }) => citation === first.citation) ? first.citation : null;
  return (
    <View style={styles.checks}>
      <View wrap={false}>
        <Text style={styles.heading}>{`Requirements of ${packet.authorityName}`}</Text>
        {one === null || one === "" ? null : <Text style={styles.source}>{`Source: ${one}`}</Text>}
        <Check check={first} cited={one === null} close={close} />
      </View>
      {others.map((check) => (
        <Check key={check.requirementId} check={check} cited={one === null} close={close} />
      ))}
    </View>
  );
}

function Check({
  check,
  cited,
  close,
}: {
  readonly check: Packet["checks"][number];
  readonly cited: boolean;
  readonly close: boolean;
}) {
  return (
    <View style={entryStyle(close)} wrap={false}>
      <Text style={{ ...styles.check, fontWeight: check.state === "missing" ? 600 : 400 }}>
        {STATES[check.state]}
      </Text>
      <Text style={styles.checkTitle}>
        {check.mandatory ? check.title : `${check.title} (if requested)`}
      </Text>
      <Text style={styles.checkText}>
        {check.state === "missing" && check.mandatory ? "See the list above." : check.sentence}
      </Text>
      {cited ? <Text style={styles.checkCite}>{check.citation}</Text> : null}
    </View>
  );
}
