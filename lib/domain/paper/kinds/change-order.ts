import type { ChangeOrder } from "../../facts/change-order.ts";
import type { LineFile } from "../../facts/line-file.ts";
import { OWNING_ROLES } from "../../facts/party.ts";
import type { Cents } from "../../money/cents.ts";
import { formatCents } from "../../money/format-cents.ts";
import { type ChangeOrderEffect, changeOrderEffects } from "../../split/change-order-effect.ts";
import { latestSplit } from "../../split/latest-split.ts";
import { atEvery, shareHolders } from "../addressed.ts";
import { heading, lead, list, paragraph, replyBy, table, whereFrom, workTitle } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/** Owners are told what changes in the work, and what that does to their own share. */
export const CHANGE_ORDER: LetterPlan = {
  title: {
    en: "Change order for the shared sewer work",
    es: "Cambio en la obra del desagüe compartido",
  },
  recipients: (file) => atEvery(file, shareHolders(file), OWNING_ROLES),
  body: changeBody,
  choices: changeChoices,
  cautions: ["official"],
  gaps: [hasChangeOrder],
  due: changeProposed,
};

function hasChangeOrder(facts: LetterFacts): string | null {
  const told = changeTold(facts);
  if (told === null) return "No change order is on file.";
  if (told.order.reason === "") return "The change order says no reason: enter it under Cost.";
  return told.share === null
    ? `What the change order does to the share of ${facts.place} can’t be worked out: choose a split first.`
    : null;
}

function changeProposed({ changeOrders }: LineFile) {
  const open = changeOrders.findLast(({ state }) => state === "proposed");
  return open === undefined
    ? null
    : { because: `Change order ${open.number} is proposed`, since: open.orderedOn };
}

/** The change order that a letter tells of, and what it does to its reader's share. */
interface ChangeTold {
  readonly order: ChangeOrder;
  readonly effect: ChangeOrderEffect;
  /** Null while it can't be worked out, or the reader pays nothing before and after. */
  readonly share: { readonly before: Cents; readonly after: Cents } | null;
}

/** The last change order on file; null where there is none, or no split to show it by. */
function changeTold({ file, report, property }: LetterFacts): ChangeTold | null {
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
function changeBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { change } = words;
  const told = changeTold(facts);
  if (told === null) return [paragraph(change.none)];
  const { order, effect, share } = told;
  const opening = order.state === "agreed" ? change.openingAgreed : change.openingRefused;
  const pieces = (items: typeof effect.added) =>
    items.map((item) => words.entry.areaWork(workTitle(item, facts), whereFrom(item, facts)));
  const own = share === null ? [] : [amounts(change.share(place), share)];
  const asked = order.state === "proposed";
  return [
    ...lead(asked ? change.lead(order.number, replyBy(facts)) : opening(order.number)),
    ...(order.reason === "" ? [] : [heading(change.why), paragraph(words.typed(order.reason))]),
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
function changeChoices(facts: LetterFacts): readonly string[] {
  const { change } = facts.words;
  const told = changeTold(facts);
  if (told === null) return [];
  return told.order.state === "proposed" ? change.choices : change.choicesTold;
}

function amounts(words: string, { before, after }: { before: Cents; after: Cents }): string[] {
  return [words, formatCents(before), formatCents(after)];
}
