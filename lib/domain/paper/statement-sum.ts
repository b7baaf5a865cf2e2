import type { ScopeItem } from "../facts/scope.ts";
import type { Share, SumStep } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { addRatios, formatRatio, type Ratio, ratio, ZERO } from "../money/ratio.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { formatExactCents, sayPart } from "../split/exact.ts";
import { priceOf, table, whereIs, workTitle } from "./common.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import type { StatementWords } from "./statement-words.ts";

/**
 * The calculation as one writes it by hand: a row for each piece of work with what it costs, how it is
 * shared and the reader’s part, each to the nearest cent; then the reader’s amount.
 */
export function pencilSum(facts: LetterFacts, words: StatementWords, worked: Share): LetterBlock[] {
  if (worked.steps.length === 0) return [{ kind: "paragraph", text: words.nothing }];
  const rows = worked.steps.map((step) => pieceRow(facts, words, step));
  const total = [words.together, "", "", formatCents(worked.amount)];
  return table(words.sumHead, [...rows, total], { numeric: [1, 3], totals: 1 });
}

/**
 * All the work in one table: each item with its place, price and cost, how it is shared and the
 * reader’s part, a row of its own for each piece where the number of sharers changes; then the totals.
 */
export function itemSum(
  facts: LetterFacts,
  words: StatementWords,
  { worked, total }: { readonly worked: Share; readonly total: Cents },
): LetterBlock[] {
  const rows = scopeInForce(facts.file).flatMap((item) => itemRows(facts, words, { item, worked }));
  const sums = [words.together, "", "", formatCents(total), "", formatCents(worked.amount)];
  return table(words.itemHead, [...rows, sums], { numeric: [3, 5], totals: 1 });
}

function itemRows(
  facts: LetterFacts,
  words: StatementWords,
  { item, worked }: { readonly item: ScopeItem; readonly worked: Share },
): string[][] {
  const steps = worked.steps.filter(({ itemId }) => itemId === item.id);
  const cost = formatCents(itemAmount(item));
  const head = [workTitle(item, facts), whereIs(item, facts), priceOf(item, facts), cost];
  const [only] = steps;
  if (only === undefined) return [[...head, words.notYours, "–"]];
  const part = (step: SumStep) => [sharedWords(words, step), nearestCents(step.exact)];
  if (steps.length === 1 && !isPiece(facts, only)) return [[...head, ...part(only)]];
  return [
    [...head, "", ""],
    ...steps.map((step) => [
      "",
      placeWords(facts, words, { item, step }),
      "",
      nearestCents(step.piece.cost),
      ...part(step),
    ]),
  ];
}

/** Each part with its fraction of a cent, and how the sum came to whole cents; empty where none has any. */
export function exactLines(facts: LetterFacts, words: StatementWords, worked: Share): string[] {
  const broken = worked.steps.filter(({ exact }) => ratioOf(exact).d !== 1n);
  if (broken.length === 0) return [];
  const parts = broken.map((step) => {
    const item = facts.file.scope.find((each) => each.id === step.itemId);
    const { from, to } = step.piece;
    const where = from === null || to === null || from === to ? "" : facts.words.stretch(from, to);
    const title = item === undefined ? "" : workTitle(item, facts);
    const name = [title, where].filter((part) => part !== "").join(", ");
    return words.exactly(name, formatExactCents(step.exact));
  });
  return [
    `${[...parts, words.exactly(words.together, formatExactCents(worked.exact))].join("; ")}.`,
    roundingWords(words, worked),
  ];
}

/** What the sum’s signs mean, and how it came to whole cents. */
export function sumNotes(
  facts: LetterFacts,
  words: StatementWords,
  { worked, total }: { readonly worked: Share; readonly total: Cents },
): string[] {
  const { steps } = worked;
  const cut = steps.some((step) => isPiece(facts, step));
  const general = sharedFraction(facts, words, worked);
  const measured = steps.some(({ piece }) => piece.sharers === null);
  return [
    ...(cut ? [words.pieces] : []),
    ...(measured && general.length === 0 ? [words.follows] : []),
    ...general,
    words.adds(formatCents(total)),
  ];
}

/** Whether a step is about less than its item’s whole length. */
function isPiece({ file }: LetterFacts, { itemId, piece }: SumStep): boolean {
  const item = file.scope.find((each) => each.id === itemId);
  if (piece.from === null || piece.to === null || !item) return false;
  if (item.from === null || item.to === null) return false;
  return piece.to - piece.from < Math.abs(item.to - item.from);
}

/** How the part of the work on the whole job comes about, where it is the part of all placed work. */
export function sharedFraction(
  { file }: LetterFacts,
  words: StatementWords,
  worked: Share,
): string[] {
  const general = new Set(
    scopeInForce(file).flatMap(({ id, place }) => (place === "general" ? [id] : [])),
  );
  const placed = scopeInForce(file).filter(({ id }) => !general.has(id));
  const all = placed.reduce((sum, item) => sum + itemAmount(item), 0);
  const own = worked.steps
    .filter(({ itemId }) => !general.has(itemId))
    .reduce((sum, { exact }) => addRatios(sum, ratioOf(exact)), ZERO);
  if (all === 0) return [];
  const part = ratio(own.n, own.d * BigInt(all));
  const follows = worked.steps.some(
    ({ itemId, piece }) =>
      general.has(itemId) && piece.sharers === null && piece.part === formatRatio(part),
  );
  if (!follows || part.n === part.d) return [];
  return [words.fraction(sayPart(part), nearestCents(formatRatio(own)), formatCents(all))];
}

function roundingWords(words: StatementWords, { exact, amount }: Share): string {
  const { n, d } = ratioOf(exact);
  if (d === 1n) return words.even;
  return BigInt(amount) * d > n ? words.up : words.down;
}

function pieceRow(facts: LetterFacts, words: StatementWords, step: SumStep): string[] {
  return [
    pieceName(facts, step),
    nearestCents(step.piece.cost),
    sharedWords(words, step),
    nearestCents(step.exact),
  ];
}

function pieceName(facts: LetterFacts, { itemId, piece: { from, to } }: SumStep): string {
  const item = facts.file.scope.find((each) => each.id === itemId);
  if (item === undefined) return "";
  const cut = from !== null && to !== null && from !== to && item.place === "stretch";
  return `${workTitle(item, facts)}, ${cut ? facts.words.stretch(from, to) : whereIs(item, facts)}`;
}

function placeWords(
  facts: LetterFacts,
  words: StatementWords,
  { item, step }: { readonly item: ScopeItem; readonly step: SumStep },
): string {
  const { from, to } = step.piece;
  if (from === null || to === null || from === to || item.from === null || item.to === null)
    return whereIs(item, facts);
  const whole = Math.abs(item.to - item.from);
  const where = facts.words.stretch(from, to);
  if (to - from === whole) return where;
  return `${where} (${words.ofLength(facts.words.feet(to - from), facts.words.feet(whole))})`;
}

function sharedWords(words: StatementWords, { piece }: SumStep): string {
  if (piece.sharers === 1) return words.alone;
  if (piece.sharers !== null) return words.alike(piece.sharers);
  const part = ratioOf(piece.part);
  return part.n === part.d ? words.alone : words.byPart(sayPart(part));
}

/** To the nearest cent, a half up. */
function nearestCents(exact: string): string {
  const { n, d } = ratioOf(exact);
  return formatCents(Number((2n * n + d) / (2n * d)));
}

function ratioOf(exact: string): Ratio {
  const [top = "0", bottom = "1"] = exact.split("/");
  return ratio(BigInt(top), BigInt(bottom));
}
