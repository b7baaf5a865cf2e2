import type { ChangeOrder } from "../facts/change-order.ts";
import { accountEntries } from "../ledger/accounts.ts";
import { type Aging, agingOf } from "../ledger/aging.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { type ChangeOrderEffect, changeOrderEffects } from "../split/change-order-effect.ts";
import { latestSplit } from "../split/latest-split.ts";
import { payToBlocks } from "./body-money.ts";
import { heading, lead, list, paragraph, table, whereIs, workTitle } from "./common.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";

/** The change order that a letter tells of, and what it does to its reader's share. */
interface ChangeTold {
  readonly order: ChangeOrder;
  readonly effect: ChangeOrderEffect;
  /** Null while it can't be worked out, or the reader pays nothing before and after. */
  readonly share: { readonly before: Cents; readonly after: Cents } | null;
}

/** The last change order on file; null where there is none, or no split to show it by. */
export function changeTold({ file, report, property }: LetterFacts): ChangeTold | null {
  const choice = latestSplit(file);
  const order = file.changeOrders.toSorted((one, other) => one.number - other.number).at(-1);
  if (order === undefined || choice === null) return null;
  const effect = changeOrderEffects(file, report, choice).find(
    (each) => each.order.id === order.id,
  );
  if (effect === undefined) return null;
  const own = effect.shares.find(({ key }) => key === property?.id);
  return { order, effect, share: own ?? null };
}

/** What changes in the work, why, and what it does to the reader's own share. */
export function changeBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { change } = words;
  const told = changeTold(facts);
  if (told === null) return [paragraph(change.none)];
  const { order, effect, share } = told;
  const opening = {
    proposed: change.opening,
    agreed: change.openingAgreed,
    refused: change.openingRefused,
  }[order.state];
  const pieces = (items: typeof effect.added) =>
    items.map((item) => words.entry.areaWork(workTitle(item, facts), whereIs(item, facts)));
  const own = share === null ? [] : [amounts(change.share(place), share)];
  return [
    ...lead(opening(order.number)),
    ...(order.reason === "" ? [] : [heading(change.why), paragraph(order.reason)]),
    ...(effect.added.length === 0 ? [] : [heading(change.added), ...list(pieces(effect.added))]),
    ...(effect.dropped.length === 0
      ? []
      : [heading(change.dropped), ...list(pieces(effect.dropped))]),
    ...table(change.head, [amounts(change.total, effect), ...own], { numeric: [1, 2] }),
    ...(share === null ? [paragraph(change.unknown)] : []),
    paragraph(change.ask),
  ];
}

/** A change is agreed to while it is proposed; afterward it is only told. */
export function changeChoices(facts: LetterFacts): readonly string[] {
  const { change } = facts.words;
  const told = changeTold(facts);
  if (told === null) return [];
  return told.order.state === "proposed" ? change.choices : change.choicesTold;
}

function amounts(words: string, { before, after }: { before: Cents; after: Cents }): string[] {
  return [words, formatCents(before), formatCents(after)];
}

/** The open invoices of the reader's account at the property; null where there is none. */
export function billOf({ file, party, property, report }: LetterFacts): Aging | null {
  if (property === null) return null;
  const account = { partyId: party.id, propertyId: property.id };
  const aging = agingOf(accountEntries(file, account), report.today);
  return aging.invoices.length === 0 ? null : aging;
}

function openOn({ invoices }: Aging): Cents {
  return invoices.reduce((sum, { open }) => sum + open, 0);
}

export function coverChoices(facts: LetterFacts): readonly string[] {
  const bill = billOf(facts);
  return bill === null ? [] : facts.words.cover.choices(formatCents(openOn(bill)));
}

/** What is due and when, how to pay, and how to say that something is wrong. */
export function coverBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { cover } = words;
  const bill = billOf(facts);
  const [dueOn] = bill?.invoices.map((each) => each.dueOn).toSorted() ?? [];
  if (bill === null || dueOn === undefined) return [paragraph(cover.none)];
  const total = openOn(bill);
  const isPast = dueOn < facts.report.today;
  const one = isPast ? cover.leadPast : cover.lead;
  const many = isPast ? cover.leadManyPast : cover.leadMany;
  const leadOf = bill.invoices.length > 1 ? many : one;
  const rows = bill.invoices.map(({ entry, open, dueOn }) => [
    cover.number(entry.number),
    words.day(entry.on),
    words.day(dueOn),
    formatCents(open),
  ]);
  const sums = rows.length < 2 ? [] : [[cover.total, "", "", formatCents(total)]];
  return [
    ...lead(leadOf(place, formatCents(total), words.weekday(dueOn))),
    paragraph(cover.opening),
    ...table(cover.head, [...rows, ...sums], { numeric: [3], totals: sums.length }),
    ...payToBlocks(facts),
    paragraph(isPast ? cover.disputePast : cover.dispute),
  ];
}
