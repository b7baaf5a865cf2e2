import type { ScopeItem } from "../facts/scope.ts";
import type { Holder, ReachFinding } from "../findings/reach-finding.ts";
import type { Cft } from "../length/station.ts";
import { plainFeet } from "../length/station.ts";
import { formatCents } from "../money/format-cents.ts";
import { mergeStretches } from "../say/merge.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock, LetterPicture } from "./letter.ts";

/** One stop where a sentence ends in `p. m.`, as a Spanish office writes it; an ellipsis stays. */
function stopped(text: string): string {
  return text.replace(/(?<!\.)\.\.(?!\.)/g, ".");
}

export function paragraph(text: string): LetterBlock {
  return { kind: "paragraph", text: stopped(text) };
}

/** What is asked and by when; null where nothing is. It stands before all else in a letter. */
export function lead(text: string | null): LetterBlock[] {
  return text === null ? [] : [{ kind: "paragraph", text: stopped(text), lead: true }];
}

/** ` by Wednesday, December 9, 2026`, or nothing while no day is set. */
export function replyBy({ notice, words }: LetterFacts): string {
  return words.lead.by(notice.replyBy === null ? "" : words.weekday(notice.replyBy));
}

export function heading(text: string): LetterBlock {
  return { kind: "heading", text };
}

/** A list, or nothing where it has no lines. */
export function list(lines: readonly string[]): LetterBlock[] {
  return lines.length === 0 ? [] : [{ kind: "list", lines: lines.map(stopped) }];
}

/** A table, or nothing where it has no rows. */
export function table(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  { numeric = [], totals = 0 }: { numeric?: readonly number[]; totals?: number } = {},
): LetterBlock[] {
  return rows.length === 0 ? [] : [{ kind: "table", head, rows, numeric, totals }];
}

/** Stills side by side, or nothing where there are none. */
export function pictures(stills: readonly LetterPicture[]): LetterBlock[] {
  return stills.length === 0 ? [] : [{ kind: "pictures", pictures: stills }];
}

/** Where a piece of work is, in the reader's language. */
export function whereIs(item: ScopeItem, { words, report }: LetterFacts): string {
  if (item.place === "point" && item.from !== null) return words.feet(item.from);
  if (item.place === "stretch" && item.from !== null && item.to !== null) {
    return words.stretch(item.from, item.to);
  }
  if (item.place === "branch") {
    const finding = report.tieIns.find((each) => each.tieIn.id === item.tieInId);
    return words.split.branch(finding?.tieIn.label ?? words.unknown);
  }
  return words.split.general;
}

/** The same outside of a table that says from where its feet count. */
export function whereFrom(item: ScopeItem, facts: LetterFacts): string {
  const counted = item.place === "point" || item.place === "stretch";
  const where = whereIs(item, facts);
  return counted && item.from !== null ? facts.words.fromMain(where) : where;
}

/**
 * The work without amounts: fees, camera runs and tests are part of the cost, and nothing that a
 * neighbor sees done.
 */
export function workLines(facts: LetterFacts): string[] {
  return scopeInForce(facts.file)
    .filter(isSeenDone)
    .map((item) => facts.words.entry.areaWork(workTitle(item, facts), whereFrom(item, facts)));
}

/** Work for the whole job counts where its kind is said. */
function isSeenDone({ kind, place }: ScopeItem): boolean {
  if (kind === "permit-fee" || kind === "test") return false;
  return place !== "general" || (kind !== "unknown" && kind !== "other");
}

/** What a piece of work is called, in the reader's language. */
export function workTitle({ title, kind }: ScopeItem, { words }: LetterFacts): string {
  return words.workTitle(title, kind);
}

/** The work with its amounts and their total: cost of the job, nobody's share. */
export function workTable(facts: LetterFacts): LetterBlock[] {
  const { file, words } = facts;
  const items = scopeInForce(file);
  const rows = items.map((item) => [
    workTitle(item, facts),
    whereIs(item, facts),
    priceOf(item, facts),
    formatCents(itemAmount(item)),
  ]);
  if (rows.length === 0) return [];
  const total = items.reduce((sum, item) => sum + itemAmount(item), 0);
  return table(words.split.workHead, [...rows, [words.split.total, "", "", formatCents(total)]], {
    numeric: [3],
    totals: 1,
  });
}

/** `12.5 ft × $100.00 + 10% markup`: how an item's amount comes about. */
export function priceOf(
  { quantity, unit, rate, markup, tax }: ScopeItem,
  { words }: LetterFacts,
): string {
  const many = quantity % 100 === 0 ? String(quantity / 100) : plainFeet(quantity);
  const percent = (points: number) => `${points / 100}%`;
  const base = `${many} ${words.split.unit(unit, quantity !== 100)} × ${formatCents(rate)}`;
  const marked = markup === 0 ? "" : words.split.markup(percent(markup));
  return `${base}${marked}${tax === 0 ? "" : words.split.tax(percent(tax))}`;
}

/** A run of neighboring reaches for which the same one answers under the same citation. */
export interface HeldStretch {
  readonly from: Cft;
  readonly to: Cft;
  readonly holder: Holder;
  readonly citation: string;
}

export function heldStretches(reaches: readonly ReachFinding[]): HeldStretch[] {
  const held = reaches.map(({ from, to, holder, citation }) => ({ from, to, holder, citation }));
  return mergeStretches(
    held,
    (one, next) => one.holder === next.holder && one.citation === next.citation,
  );
}

/** Day on which work is to begin, as far as tickets and events say. */
export function workBegins({ file }: LetterFacts): string | null {
  const event = file.events.filter((each) => each.event === "work-begins").at(-1);
  const ticket = file.locateTickets.filter((each) => each.workBeginsOn !== null).at(-1);
  return event?.on ?? ticket?.workBeginsOn ?? null;
}
