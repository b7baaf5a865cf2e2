import { foldersIn, stripPage } from "#app/_components/strip-pages.ts";
import { packDrawings, type StripAnswer, type StripSent } from "#app/_components/strip-sent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { drawStrips } from "#lib/domain/strip/draw.ts";
import type { StripTopic } from "#lib/domain/strip/drawing.ts";
import { chosenOn, gistOf } from "#lib/domain/strip/gist.ts";

interface Drawn {
  readonly drawings: ReturnType<typeof drawStrips>;
  /** What goes with the page of a topic. */
  readonly texts: Map<StripTopic, Pick<StripSent, "whole" | "drawings">>;
  readonly version: string;
}

/** Kept as long as the report is. */
const drawn = new WeakMap<Report, Drawn>();

/** Names of drawings begin anew with the server, so that no earlier one is taken for one of now. */
const started = Date.now().toString(36);
let count = 0;

function drawnFrom(file: LineFile, report: Report): Drawn {
  const known = drawn.get(report);
  if (known !== undefined) return known;
  count += 1;
  const drawings = drawStrips(file, report);
  const made: Drawn = { drawings, texts: new Map(), version: `${started}-${count}` };
  drawn.set(report, made);
  return made;
}

/**
 * The strip to send with the page at an address: all that it tells anywhere, or of a long line the
 * gist of what this page tells.
 */
export function stripSent(file: LineFile, report: Report, address: string | null): StripSent {
  const { drawings, texts, version } = drawnFrom(file, report);
  const { topic } = stripPage(foldersIn(address ?? ""));
  const text = texts.get(topic) ?? textOf(drawings, topic);
  texts.set(topic, text);
  return { lineId: file.line.id, version, ...text };
}

function textOf(
  drawings: Drawn["drawings"],
  topic: StripTopic,
): Pick<StripSent, "whole" | "drawings"> {
  const { whole, drawing } = gistOf(drawings[topic]);
  return { whole, drawings: packDrawings(whole ? drawings : { [topic]: drawing }) };
}

/** The whole strip of a topic, or what it says of one thing. */
export function stripAnswer(
  file: LineFile,
  report: Report,
  { topic, one }: { readonly topic: StripTopic; readonly one: string | null },
): StripAnswer {
  const drawing = drawnFrom(file, report).drawings[topic];
  if (one === null) return { drawing, chosen: null };
  return { drawing: null, chosen: chosenOn(drawing, one) };
}
