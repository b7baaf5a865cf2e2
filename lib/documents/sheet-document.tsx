import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import { formatDrawingStation } from "#lib/domain/length/station.ts";
import type { Sheet } from "#lib/domain/packet/packet.ts";
import { PLAN_NOTE, type PlanView } from "#lib/domain/strip/draw-plan.ts";
import { type BlockManner, Blocks } from "./blocks.tsx";
import { type DrawingPage, drawingPages, PLAN_WIDTH } from "./drawing-pages.ts";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";
import { Legend } from "./legend.tsx";
import { noonOf } from "./noon.ts";
import type { PrintPicture } from "./pictures.ts";
import { StripSvg } from "./strip-svg.tsx";

const styles = StyleSheet.create({
  page: {
    paddingTop: 48,
    paddingBottom: 58,
    paddingHorizontal: 54,
    fontFamily: FAMILY as unknown as string,
    fontSize: 9.5,
    color: INK.ink,
  },
  wide: { paddingTop: 40, paddingHorizontal: 44 },
  eyebrow: { fontSize: 8.5, color: INK.soft, marginBottom: 2 },
  title: { fontSize: 18, fontWeight: 600, marginBottom: 7 },
  rule: { borderTopWidth: 1.25, borderTopColor: INK.ink, marginBottom: 11 },
  drawingFoot: { flexDirection: "row", justifyContent: "space-between", marginTop: 8 },
  small: { fontSize: 8, color: INK.soft },
  match: { fontSize: 8.5, fontWeight: 600 },
});

/** What every sheet says of itself. */
export interface SheetContext {
  readonly number: number;
  readonly lineName: string;
  readonly day: string;
  /** Those that its blocks name, by the id of the stored file. */
  readonly pictures: ReadonlyMap<string, PrintPicture>;
}

/** One sheet as a document of its own; numbers are stamped when all sheets are merged. */
export function SheetDocument({
  sheet,
  context,
}: {
  readonly sheet: Sheet;
  readonly context: SheetContext;
}) {
  const day = noonOf(context.day);
  return (
    <Document title={sheet.title} language="en" creationDate={day} modificationDate={day}>
      {sheet.drawing === null ? (
        <BlockPage sheet={sheet} context={context} />
      ) : (
        <>
          {sheet.plan === null ? null : <PlanPage plan={sheet.plan} context={context} />}
          <DrawingPagesOf sheet={sheet} drawing={sheet.drawing} context={context} />
          {sheet.blocks.length === 0 ? null : <BlockPage sheet={sheet} context={context} />}
        </>
      )}
    </Document>
  );
}

function Head({ title, context }: { readonly title: string; readonly context: SheetContext }) {
  return (
    <View>
      <Text style={styles.eyebrow}>{`Sheet ${context.number}  ·  ${context.lineName}`}</Text>
      <Text style={styles.title}>{title}</Text>
      <View style={styles.rule} />
    </View>
  );
}

function BlockPage({ sheet, context }: { readonly sheet: Sheet; readonly context: SheetContext }) {
  const wide = sheet.blocks.some((block) => block.kind === "table" && block.head.length > 7);
  const manner: BlockManner = {
    width: wide ? 704 : 504,
    size: 9.5,
    tableSize: 8.5,
    stripNote: "",
    pictures: context.pictures,
  };
  return (
    <Page
      size="LETTER"
      orientation={wide ? "landscape" : "portrait"}
      style={wide ? { ...styles.page, ...styles.wide } : styles.page}
    >
      <Head title={sheet.title} context={context} />
      <Blocks blocks={sheet.blocks} manner={manner} special={() => null} />
    </Page>
  );
}

/** The line on the ground, north up, to scale. */
function PlanPage({ plan, context }: { readonly plan: PlanView; readonly context: SheetContext }) {
  return (
    <Page size="LETTER" orientation="landscape" style={{ ...styles.page, ...styles.wide }}>
      <Head title="Plan view" context={context} />
      <StripSvg plan={plan} />
      <View style={styles.drawingFoot}>
        <Text style={styles.small}>
          {`1 in = ${plan.feetPerInch} ft when printed at full size. ${PLAN_NOTE}`}
        </Text>
      </View>
    </Page>
  );
}

function DrawingPagesOf({
  sheet,
  drawing,
  context,
}: {
  readonly sheet: Sheet;
  readonly drawing: NonNullable<Sheet["drawing"]>;
  readonly context: SheetContext;
}) {
  const { feetPerInch, pages } = drawingPages(drawing);
  return pages.map((page) => (
    <Page
      key={page.from}
      size="LETTER"
      orientation="landscape"
      style={{ ...styles.page, ...styles.wide }}
    >
      <Head title={titleOf(sheet.title, page)} context={context} />
      <StripSvg plan={page.plan} />
      <View style={styles.drawingFoot}>
        <Text style={styles.match}>{page.first ? "" : matchWords("left", page.from)}</Text>
        <Text style={styles.match}>{page.last ? "" : matchWords("right", page.to)}</Text>
      </View>
      <Legend drawing={drawing} feetPerInch={feetPerInch} width={PLAN_WIDTH} />
    </Page>
  ));
}

function titleOf(title: string, { from, to, first, last }: DrawingPage): string {
  if (first && last) return title;
  return `${title}, ${formatDrawingStation(from)} to ${formatDrawingStation(to)}`;
}

function matchWords(end: "left" | "right", station: number): string {
  const where = end === "left" ? "previous" : "next";
  return `Match line at ${formatDrawingStation(station)}: see the ${where} page`;
}
