import {
  Circle,
  Document,
  Page,
  renderToBuffer,
  StyleSheet,
  Svg,
  Text,
  View,
} from "@react-pdf/renderer";
import type { DoorHanger } from "#lib/domain/mailing/door-hanger.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { FAMILY, faceMetrics, readyFonts } from "./fonts.ts";
import { INK } from "./ink.ts";
import { noonOf } from "./noon.ts";
import { DocumentRefused, printable } from "./printable.ts";

/** Three to a sheet: each 3-2/3 × 8-1/2 in, cut at the lines, with a hole for the knob. */
const WIDTH = 264;
const HEIGHT = 612;
const SIDE = 20;
const HOLE = 54;
const HEAD = 150;
const FOOT = 64;

const styles = StyleSheet.create({
  page: {
    flexDirection: "row",
    fontFamily: FAMILY as unknown as string,
    fontSize: 10,
    color: INK.ink,
  },
  hanger: { width: WIDTH, height: HEIGHT, paddingHorizontal: SIDE, overflow: "hidden" },
  cut: { borderRightWidth: 0.5, borderRightColor: INK.faint, borderStyle: "dashed" },
  hole: { position: "absolute", left: WIDTH / 2 - HOLE, top: 24 },
  head: { position: "absolute", top: HEAD - 18, left: SIDE, fontSize: 9.5, color: INK.soft },
  body: { marginTop: HEAD, borderTopWidth: 1.5, borderTopColor: INK.ink, paddingTop: 8 },
  title: { fontSize: 17, fontWeight: 600, lineHeight: 1.1, marginBottom: 3 },
  lead: { fontWeight: 600, lineHeight: 1.25, marginTop: 5 },
  fact: { marginTop: 4, lineHeight: 1.25 },
  label: { color: INK.soft },
  caution: { marginTop: 6, borderLeftWidth: 2, borderLeftColor: INK.loud, paddingLeft: 6 },
  cautionTitle: { fontWeight: 600 },
  foot: {
    position: "absolute",
    left: SIDE,
    right: SIDE,
    bottom: 16,
    borderTopWidth: 0.5,
    borderTopColor: INK.faint,
    paddingTop: 5,
    fontSize: 9,
  },
});

interface Panel extends Omit<DoorHanger, "faces"> {
  readonly face: DoorHanger["faces"][number];
}

/** What a panel's type may be set at, the largest first. */
const SIZES = [10.5, 10, 9.5, 9, 8.5, 8];

/**
 * Door hangers, three to a letter-size sheet, one panel for each language; a hanger in two languages
 * has its panels beside each other. Throws DocumentRefused with words where one has too much to say.
 */
export async function renderHangers(
  hangers: readonly DoorHanger[],
  about: { readonly title: string; readonly day: Day },
): Promise<Uint8Array> {
  await readyFonts();
  const panels = hangers.flatMap(({ faces, ...hanger }): Panel[] =>
    faces.map((face) => printable({ ...hanger, face }, `The door hanger of ${hanger.reference}`)),
  );
  const sheets = Array.from({ length: Math.ceil(panels.length / 3) }, (_, at) =>
    panels.slice(at * 3, at * 3 + 3),
  );
  const day = noonOf(about.day);
  return await renderToBuffer(
    <Document title={about.title} creationDate={day} modificationDate={day}>
      {sheets.map((sheet, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: sheets of one print never change places
        <Page key={at} size="LETTER" orientation="landscape" style={styles.page}>
          {sheet.map((panel, place) => (
            <Hanger
              key={`${panel.reference} ${panel.face.language}`}
              panel={panel}
              cut={place < 2}
            />
          ))}
        </Page>
      ))}
    </Document>,
  );
}

function Hanger({ panel, cut }: { readonly panel: Panel; readonly cut: boolean }) {
  const { face, office, contact, date, reference } = panel;
  const size = sizeOf(panel);
  const from = `${office}  ·  ${date}`;
  return (
    <View style={cut ? { ...styles.hanger, ...styles.cut } : styles.hanger}>
      <Svg width={2 * HOLE} height={2 * HOLE} style={styles.hole}>
        <Circle cx={HOLE} cy={HOLE} r={HOLE - 1} stroke={INK.faint} strokeWidth={0.5} fill="none" />
      </Svg>
      <Text style={{ ...styles.head, fontSize: headSize(from) }}>{from}</Text>
      <View style={styles.body}>
        <Text style={styles.title}>{face.title}</Text>
        {face.about === "" ? null : <Text style={{ fontSize: size }}>{face.about}</Text>}
        {face.lines.map((line) => {
          if (line.kind === "lead")
            return (
              <Text key={line.text} style={{ ...styles.lead, fontSize: size + 1 }}>
                {line.text}
              </Text>
            );
          if (line.kind === "fact")
            return (
              <Text key={line.label + line.text} style={{ ...styles.fact, fontSize: size }}>
                <Text style={styles.label}>{`${line.label}  `}</Text>
                {line.text}
              </Text>
            );
          return (
            <View key={line.title} style={styles.caution}>
              <Text style={{ ...styles.cautionTitle, fontSize: size - 0.5 }}>{line.title}</Text>
              <Text style={{ fontSize: size - 0.5, lineHeight: 1.2 }}>{line.text}</Text>
            </View>
          );
        })}
      </View>
      <View style={styles.foot}>
        {contact.map((line) => (
          <Text key={line} style={{ fontWeight: 600 }}>
            {line}
          </Text>
        ))}
        <Text style={{ color: INK.soft }}>{reference}</Text>
      </View>
    </View>
  );
}

/** The largest type that leaves a panel's words their room: lines are counted, not guessed by length. */
/** In which size office and day keep within the panel. */
function headSize(text: string): number {
  return Math.max(7, Math.min(9.5, (WIDTH - 2 * SIDE) / faceMetrics("regular").ems(text)));
}

function sizeOf({ face, reference }: Panel): number {
  const found = SIZES.find((size) => heightOf(face, size) <= HEIGHT - HEAD - FOOT - 16);
  if (found === undefined)
    throw new DocumentRefused(
      `The notice ${reference} has too much to say for a door hanger. Deliver the letter itself.`,
    );
  return found;
}

function heightOf(face: Panel["face"], size: number): number {
  const lines = (text: string, at: number, width = WIDTH - 2 * SIDE) =>
    Math.ceil((faceMetrics("strong").ems(text) * at * 1.06) / width);
  const above = lines(face.title, 17) * 19 + lines(face.about, size) * size * 1.43 + 14;
  return face.lines.reduce((sum, line) => {
    if (line.kind === "lead") return sum + 5 + lines(line.text, size + 1) * (size + 1) * 1.25;
    if (line.kind === "fact")
      return sum + 4 + lines(`${line.label}  ${line.text}`, size) * size * 1.25;
    const inner = WIDTH - 2 * SIDE - 8;
    const small = size - 0.5;
    return (
      sum +
      6 +
      lines(line.title, small, inner) * small * 1.43 +
      lines(line.text, small, inner) * small * 1.2
    );
  }, above);
}
