import { formatCell } from "#app/_components/grid/cell.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { DraftDecision, Narration } from "#lib/domain/facts/narration.ts";
import { plainFeet, toTenth } from "#lib/domain/length/station.ts";
import type { Draft, DraftGap, DraftLog } from "#lib/domain/narration/log/draft.ts";
import { draftedFields, draftedGap } from "#lib/domain/narration/log/narration-log.ts";
import { type DecidedView, type DraftView, SEEN_COLUMNS, UNSEEN_COLUMNS } from "./draft-columns.ts";
import { seenWords, unseenWords } from "./draft-words.ts";

/** The drafted rows in the order of speaking, each with what became of it. */
export function draftViews(
  file: Pick<LineFile, "observations" | "gaps">,
  { decided }: Pick<Narration, "decided">,
  { drafts, gaps }: Pick<DraftLog, "drafts" | "gaps">,
): { readonly seen: DraftView[]; readonly unseen: DraftView[] } {
  const decisions = new Map(decided.map((each) => [each.key, each]));
  return {
    seen: drafts.map((draft) =>
      seenView(file, draft, {
        decision: decisions.get(draft.key),
        beside: drafts.some((other) => isBeside(draft, other)),
      }),
    ),
    unseen: gaps.map((draft) => unseenView(file, draft, decisions.get(draft.key))),
  };
}

/** So near, hundredths of a foot, two rows may be one find that was told in two words. */
const BESIDE = 150;

function isBeside(draft: Draft, other: Draft): boolean {
  if (draft === other || draft.counter === null || other.counter === null) return false;
  const across = draft.kind === "tie-in" && other.kind === "tie-in" && draft.clock !== other.clock;
  return !across && Math.abs(draft.counter - other.counter) <= BESIDE;
}

function seenView(
  { observations }: Pick<LineFile, "observations">,
  draft: Draft,
  { decision, beside }: { readonly decision: DraftDecision | undefined; readonly beside: boolean },
): DraftView {
  const drafted = draftedFields(draft);
  const became = observations.find(({ id }) => id === decision?.observationId);
  return {
    key: draft.key,
    quote: draft.quote,
    time: draft.videoSecond === null ? "" : formatCell(VIDEO, draft.videoSecond),
    texts: textsOf(SEEN_COLUMNS, drafted),
    marks: beside ? [...marksOf(draft), BESIDE_WORDS] : marksOf(draft),
    readOut: isReadOut(draft),
    sure: isReadOut(draft) && draft.hedges.length === 0 && draft.slack === 0 && !beside,
    span: draft.span,
    place: { counter: draft.counter, second: draft.videoSecond, reading: draft.reading },
    decided: decidedView(decision, {
      there: became !== undefined,
      words: seenWords(textsOf(SEEN_COLUMNS, became ?? drafted)),
    }),
  };
}

function unseenView(
  { gaps }: Pick<LineFile, "gaps">,
  draft: DraftGap,
  decision: DraftDecision | undefined,
): DraftView {
  const drafted = draftedGap(draft);
  const became = gaps.find(({ id }) => id === decision?.observationId);
  const texts = textsOf(UNSEEN_COLUMNS, became ?? drafted);
  return {
    key: draft.key,
    quote: draft.quote,
    time: "",
    texts: textsOf(UNSEEN_COLUMNS, drafted),
    marks: [],
    readOut: true,
    sure: true,
    span: draft.span,
    place: { counter: null, second: null, reading: "read" },
    decided: decidedView(decision, {
      there: became !== undefined,
      words: unseenWords(texts),
    }),
  };
}

function isReadOut({ reading, counter }: Draft): boolean {
  return reading === "read" && counter !== null;
}

function decidedView(
  decision: DraftDecision | undefined,
  { there, words }: { there: boolean; words: string },
): DecidedView | null {
  if (decision === undefined) return null;
  return { state: decision.state, words, gone: decision.state === "accepted" && !there };
}

const VIDEO = { key: "videoSecond", title: "", kind: "video" } as const;

function textsOf(columns: readonly GridColumn[], row: object): Record<string, string> {
  const values = row as Readonly<Record<string, unknown>>;
  return Object.fromEntries(
    columns.map((column) => [column.key, formatCell(column, values[column.key])]),
  );
}

const BESIDE_WORDS = "another row at this footage: one find or two?";

function marksOf({ counter, reading, slack, hedges, aboutRecord }: Draft): string[] {
  const off = slack === 0 ? "" : ` ± ${plainFeet(toTenth(slack))} ft`;
  const marks = hedges.map((hedge) => `“${hedge}”`);
  if (counter === null) marks.unshift("no footage spoken");
  else if (reading === "between") marks.unshift(`interpolated by time${off}`);
  else if (reading === "beyond") marks.unshift(`beyond the last reading${off}`);
  else if (off !== "") marks.unshift(`spoken${off}`);
  if (aboutRecord !== "") marks.push(`about the record: “${aboutRecord}”`);
  return marks;
}
