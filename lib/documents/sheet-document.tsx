import { Document, Page, StyleSheet, Text, View } from "@react-pdf/renderer";
import { Fragment } from "react";
import { formatDrawingStation } from "#lib/domain/length/station.ts";
import type { Sheet } from "#lib/domain/packet/packet.ts";
import { textWidth } from "#lib/domain/say/text-width.ts";
import { PLAN_NOTE, type PlanView } from "#lib/domain/strip/draw-plan.ts";
import { scaleWords } from "#lib/domain/strip/plan-scale.ts";
import type { BlockManner } from "./block-manner.ts";
import { Blocks } from "./blocks.tsx";
import { columnShares } from "./columns.ts";
import { type DrawingPage, drawingPages, PLAN_HEIGHT, PLAN_WIDTH } from "./drawing-pages.ts";
import { FAMILY } from "./fonts.ts";
import { INK } from "./ink.ts";
import { Legend } from "./legend.tsx";
import { noonOf } from "./noon.ts";
import type { PrintPicture } from "./pictures.ts";
import { StripSvg } from "./strip-svg.tsx";

/** Of pages that sheets share, on either side; their foot stands under it. */
export const FLOW_MARGIN = 42;

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
  flow: {
    paddingTop: 34,
    paddingBottom: 44,
    paddingHorizontal: FLOW_MARGIN,
    fontFamily: FAMILY as unknown as string,
    fontSize: 9,
    color: INK.ink,
  },
  flowHead: { marginTop: 6, marginBottom: 3 },
  flowTitle: { fontSize: 13, fontWeight: 600 },
  reach: { fontSize: 1, lineHeight: 1 },
  eyebrow: { fontSize: 8.5, color: INK.soft, marginBottom: 2 },
  title: { fontSize: 18, fontWeight: 600, marginBottom: 7 },
  rule: { borderTopWidth: 1.25, borderTopColor: INK.ink, marginBottom: 5 },
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

/** A sheet with its number, and the pictures that its blocks name. */
export interface NumberedSheet {
  readonly sheet: Sheet;
  readonly number: number;
  readonly pictures: ReadonlyMap<string, PrintPicture>;
}

/** Pages of a document, from 1, on which a sheet begins and ends. */
export interface SheetSpan {
  readonly first: number;
  readonly last: number;
}

/** Whether a sheet shares pages with its neighbors: words and tables that stand upright. */
export function isFlowing({ drawing, uploadId, blocks, form }: Sheet): boolean {
  return drawing === null && uploadId === null && form === undefined && !isWide(blocks);
}

/**
 * Sheets one after the other on shared pages, each under a head of its own. `span` is told where
 * each begins and ends: only laying it out shows that.
 */
export function FlowDocument({
  sheets,
  context,
  span,
}: {
  readonly sheets: readonly NumberedSheet[];
  readonly context: Omit<SheetContext, "number" | "pictures">;
  readonly span: (number: number, end: keyof SheetSpan, page: number) => void;
}) {
  const day = noonOf(context.day);
  const [first] = sheets;
  return (
    <Document
      title={first?.sheet.title ?? ""}
      language="en"
      creationDate={day}
      modificationDate={day}
    >
      <Page size="LETTER" style={styles.flow}>
        <Text fixed style={styles.eyebrow}>
          {context.lineName}
        </Text>
        {sheets.map(({ sheet, number, pictures }) => (
          <Fragment key={number}>
            <View wrap={false} minPresenceAhead={80} style={styles.flowHead}>
              <View style={styles.rule} />
              <Text style={styles.flowTitle}>{`${number}  ${sheet.title}`}</Text>
              <Reach tell={(page) => span(number, "first", page)} />
            </View>
            <Blocks
              blocks={sheet.blocks}
              manner={{ ...FLOW_MANNER, pictures }}
              special={() => null}
            />
            <Reach tell={(page) => span(number, "last", page)} />
          </Fragment>
        ))}
      </Page>
    </Document>
  );
}

/** Says on which page it came to stand, and prints nothing; what it says last holds. */
function Reach({ tell }: { readonly tell: (page: number) => void }) {
  return (
    <Text
      style={styles.reach}
      render={({ pageNumber }) => {
        tell(pageNumber);
        return "";
      }}
    />
  );
}

const FLOW_MANNER: BlockManner = {
  width: 528,
  size: 9,
  tableSize: 8.25,
  stripNote: "",
  air: 0.45,
  pairs: true,
};

function isWide(blocks: Sheet["blocks"]): boolean {
  return blocks.some((block) => block.kind === "table" && block.head.length > 8);
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
          {sheet.plans.map((plan) => (
            <PlanPage key={plan.sheet} plan={plan} sheet={sheet} context={context} />
          ))}
          <DrawingPagesOf sheet={sheet} drawing={sheet.drawing} context={context} />
          {sheet.blocks.length === 0 || isRoomUnder(sheet) ? null : (
            <BlockPage sheet={sheet} context={context} />
          )}
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
  const wide = isWide(sheet.blocks);
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
function PlanPage({
  plan,
  sheet,
  context,
}: {
  readonly plan: PlanView;
  readonly sheet: Sheet;
  readonly context: SheetContext;
}) {
  const title = plan.of === 1 ? "Plan view" : `Plan view, sheet ${plan.sheet} of ${plan.of}`;
  const amiss = plan.isAllowed
    ? ""
    : `, WHICH IS NOT A SCALE THAT THE AUTHORITY ALLOWS (${scaleWords(sheet.scales ?? [])})`;
  return (
    <Page size="LETTER" orientation="landscape" style={{ ...styles.page, ...styles.wide }}>
      <Head title={title} context={context} />
      <StripSvg plan={plan} />
      <View style={styles.drawingFoot}>
        <Text style={styles.small}>
          {`1 in = ${plan.feetPerInch} ft when printed at full size${amiss}. ${PLAN_NOTE}`}
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
  const { feetPerInch, pages } = drawingPages(drawing, sheet.scales);
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
      {page.last && isRoomUnder(sheet) ? (
        <Blocks
          blocks={sheet.blocks}
          manner={{ ...FLOW_MANNER, width: PLAN_WIDTH, pictures: context.pictures }}
          special={() => null}
        />
      ) : null}
      <Legend drawing={drawing} feetPerInch={feetPerInch} width={PLAN_WIDTH} />
    </Page>
  ));
}

/** A heading below a drawing, a line of a table and a further line of a row, in points with some to spare. */
const UNDER_HEADING = 22;
const UNDER_LINE = 14.5;
const MORE_LINE = 10.5;

/** Whether what a drawing’s sheet says in words has room below its last page’s drawing. */
function isRoomUnder({ drawing, scales, blocks }: Sheet): boolean {
  if (drawing === null || blocks.length === 0) return false;
  const last = drawingPages(drawing, scales).pages.at(-1);
  const height = blocks.reduce((sum, block) => sum + heightUnder(block), 0);
  return last !== undefined && last.plan.height + height <= PLAN_HEIGHT;
}

function heightUnder(block: Sheet["blocks"][number]): number {
  if (block.kind !== "table") return block.kind === "heading" ? UNDER_HEADING : 32;
  const size = FLOW_MANNER.tableSize;
  const shares = columnShares(block, { width: PLAN_WIDTH, size });
  const more = (row: readonly string[]) =>
    Math.max(
      ...row.map((text, column) => {
        const room = ((shares[column] ?? 0) / 100) * PLAN_WIDTH - 8;
        return Math.ceil(textWidth(text, size, false) / Math.max(1, room)) - 1;
      }),
      0,
    );
  const titled = block.head.some((title) => title !== "") ? UNDER_LINE : 0;
  return block.rows.reduce((sum, row) => sum + UNDER_LINE + more(row) * MORE_LINE, titled);
}

function titleOf(title: string, { from, to, first, last }: DrawingPage): string {
  if (first && last) return title;
  return `${title}, ${formatDrawingStation(from)} to ${formatDrawingStation(to)}`;
}

function matchWords(end: "left" | "right", station: number): string {
  const where = end === "left" ? "previous" : "next";
  return `Match line at ${formatDrawingStation(station)}: see the ${where} page`;
}
