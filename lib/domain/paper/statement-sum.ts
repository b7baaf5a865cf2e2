import type { ScopeItem } from "../facts/scope.ts";
import type { Share, SumStep } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { addRatios, formatRatio, type Ratio, ratio, ZERO } from "../money/ratio.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { formatExactCents, sayPart } from "../split/exact.ts";
import { table, whereIs } from "./common.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import type { StatementWords } from "./statement-words.ts";

/**
 * The sum as one writes it with a pencil: a row for each piece of work with what it costs, how it is
 * shared and the reader’s part; then the exact sum, and the sum in whole cents.
 */
export function pencilSum(facts: LetterFacts, words: StatementWords, worked: Share): LetterBlock[] {
  if (worked.steps.length === 0) return [{ kind: "paragraph", text: words.nothing }];
  const rows = worked.steps.map((step) => pieceRow(facts, words, step));
  const exact = formatExactCents(worked.exact);
  const amount = formatCents(worked.amount);
  const sums =
    exact === amount
      ? [[words.together, "", "", amount]]
      : [
          [words.together, "", "", exact],
          [words.rounded, "", "", amount],
        ];
  return table(words.sumHead, [...rows, ...sums], { numeric: [1, 3], totals: sums.length });
}

/** What the sum’s signs mean, and how it came to whole cents. */
export function sumNotes(
  facts: LetterFacts,
  words: StatementWords,
  { worked, total }: { readonly worked: Share; readonly total: Cents },
): string[] {
  const { steps } = worked;
  const cut = steps.some((step) => isPiece(facts, step));
  const measured = steps.some(({ piece }) => piece.sharers === null);
  return [
    ...(cut ? [words.pieces] : []),
    ...(measured ? [words.follows] : []),
    ...fractionLine(facts, words, worked),
    roundingWords(words, worked),
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
function fractionLine({ file }: LetterFacts, words: StatementWords, worked: Share): string[] {
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
  return [words.fraction(sayPart(part), formatExactCents(formatRatio(own)), formatCents(all))];
}

function roundingWords(words: StatementWords, { exact, amount }: Share): string {
  const { n, d } = ratioOf(exact);
  if (d === 1n) return words.even;
  return BigInt(amount) * d > n ? words.up : words.down;
}

function pieceRow(facts: LetterFacts, words: StatementWords, step: SumStep): string[] {
  const item = facts.file.scope.find((each) => each.id === step.itemId);
  return [
    item === undefined ? "" : `${item.title}, ${placeWords(facts, words, { item, step })}`,
    formatExactCents(step.piece.cost),
    sharedWords(words, step),
    formatExactCents(step.exact),
  ];
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

function ratioOf(exact: string): Ratio {
  const [top = "0", bottom = "1"] = exact.split("/");
  return ratio(BigInt(top), BigInt(bottom));
}
