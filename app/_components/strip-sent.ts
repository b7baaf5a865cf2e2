import type { FileDrawing, StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripChosen } from "#lib/domain/strip/gist.ts";

/** The strip as it comes with a page. */
export interface StripSent {
  readonly lineId: string;
  /** Names what it was drawn from: another name, another drawing. */
  readonly version: string;
  /**
   * The drawings, as `packDrawings` writes them; of a long line the page's own alone. A page carries
   * one text where it would carry thousands of values one by one.
   */
  readonly drawings: string;
  /** False: marks have no sentences, and what is close is drawn as one, until the rest is asked for. */
  readonly whole: boolean;
}

/** What the strip's route answers about the whole drawing, or about one thing on it. */
export interface StripAnswer {
  readonly drawing: FileDrawing | null;
  readonly chosen: StripChosen | null;
}

/** Drawings by what they tell. */
type Drawings = Partial<Record<StripTopic, FileDrawing>>;

/** What all of them have alike is written once. */
interface PackedDrawings {
  readonly alike: Partial<FileDrawing>;
  readonly own: Readonly<Record<string, Partial<FileDrawing>>>;
}

/** Drawings of one line as a text: they differ in their bands and little else. */
export function packDrawings(drawings: Drawings): string {
  const all = Object.entries(drawings);
  const parts = new Map(
    all.map(([topic, drawing]) => [
      topic,
      new Map(Object.entries(drawing).map(([part, value]) => [part, JSON.stringify(value)])),
    ]),
  );
  const [first = new Map<string, string>()] = parts.values();
  const alike = new Set(
    [...first.keys()].filter((part) =>
      [...parts.values()].every((one) => one.get(part) === first.get(part)),
    ),
  );
  const partsOf = (drawing: FileDrawing | undefined, shared: boolean) =>
    Object.fromEntries(
      Object.entries(drawing ?? {}).filter(([part]) => alike.has(part) === shared),
    );
  const packed: PackedDrawings = {
    alike: partsOf(all[0]?.[1], true),
    own: Object.fromEntries(all.map(([topic, drawing]) => [topic, partsOf(drawing, false)])),
  };
  return JSON.stringify(packed);
}

/** Texts that were read: one page after the other shows the same drawings. */
const read = new Map<string, Drawings>();
const MOST_READ = 12;

/** The drawings that a text holds; of the same text the very same ones, while it is used. */
export function drawingsIn(text: string): Drawings {
  const drawings = read.get(text) ?? unpackDrawings(text);
  read.delete(text);
  read.set(text, drawings);
  for (const [oldest] of read) {
    if (read.size <= MOST_READ) break;
    read.delete(oldest);
  }
  return drawings;
}

function unpackDrawings(text: string): Drawings {
  // Written by `packDrawings`, and by nothing else.
  const { alike, own } = JSON.parse(text) as PackedDrawings;
  return Object.fromEntries(
    Object.entries(own).map(([topic, parts]) => [topic, { ...alike, ...parts } as FileDrawing]),
  );
}
