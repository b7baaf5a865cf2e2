import { distinct } from "#app/_components/grid/choices.ts";
import type { GridChoice, GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { ordersByNumber } from "#lib/domain/split/change-order-effect.ts";
import { RULE_TITLES } from "#lib/domain/split/rule-words.ts";
import { SCOPE_KIND_WORDS } from "#lib/domain/split/work-kind-words.ts";
import { PLACE_SYNONYMS, SCOPE_KIND_SYNONYMS, SPREAD_SYNONYMS } from "../synonyms.ts";
import { optionsOf, PLACE_WORDS, SPREAD_WORDS, WORK_WORDS } from "../terms.ts";
import { propertyChoices } from "../who/columns.ts";
import { OPTION_WORDS, ORDER_STATE_WORDS } from "./option-terms.ts";

export const SCOPE_BLANK = { title: "", place: "stretch", unit: "each", rate: 0 };

/** What is kept of a priced work item. */
export function scopeColumns(file: LineFile, report: Pick<Report, "tieIns">): GridColumn[] {
  return [
    TITLE,
    ...PLACE,
    ...priceColumns(file),
    KIND,
    ...optionColumns(file),
    ...ADDED,
    WORK,
    branchColumn(report),
    ...payColumns(file),
    ...orderColumns(file),
  ];
}

const TITLE: GridColumn = {
  key: "title",
  title: "Item",
  kind: "text",
  width: 26,
  required: true,
  example: "Dig and replace, 10 to 18 ft",
  pasteHeadings: ["description", "work item"],
};

const PLACE: readonly GridColumn[] = [
  {
    key: "place",
    title: "Location",
    kind: "choice",
    pasteHeadings: ["place", "where"],
    width: 13,
    choices: optionsOf(PLACE_WORDS, PLACE_SYNONYMS),
  },
  {
    key: "from",
    title: "From",
    kind: "feet",
    width: 7,
    hint: "Station (or the point)",
    example: "10.0",
    pasteHeadings: ["start"],
  },
  { key: "to", title: "To", kind: "feet", width: 7, example: "18.0", pasteHeadings: ["end"] },
];

const KIND: GridColumn = {
  key: "kind",
  title: "Work type",
  kind: "choice",
  width: 18,
  hint: "Decides which holds block it; until set, the strictest type the words allow",
  choices: optionsOf(SCOPE_KIND_WORDS, SCOPE_KIND_SYNONYMS),
  pasteHeadings: ["method", "type of work", "kind of work"],
};

const WORK: GridColumn = {
  key: "work",
  title: "Counts as",
  kind: "choice",
  width: 12,
  hint: "For rules that go by type of work",
  choices: optionsOf(WORK_WORDS),
};

/** To which repair option an item belongs; none: to all of them. */
function optionColumns(file: LineFile): GridColumn[] {
  if (file.options.length === 0) return [];
  return [
    {
      key: "optionId",
      title: "Option",
      kind: "choice",
      width: 14,
      hint: "Repair option it belongs to",
      choices: [
        { value: "", label: "all options" },
        ...distinct(file.options.map(({ id, title }) => ({ value: id, label: title }))),
      ],
    },
  ];
}

/** Which change order brought an item in, and which takes it out. */
function orderColumns(file: LineFile): GridColumn[] {
  if (file.changeOrders.length === 0) return [];
  const choices = [
    NONE,
    ...ordersByNumber(file).map(({ id, number, title, state }) => ({
      value: id,
      label: `${number}: ${title}${state === "proposed" ? "" : `, ${ORDER_STATE_WORDS[state]}`}`,
    })),
  ];
  const column = (key: string, title: string, hint: string): GridColumn => ({
    key,
    title,
    kind: "choice",
    width: 16,
    hint,
    choices,
  });
  return [
    column("addedById", "Added by", "The change order that adds it; counts once approved"),
    column("droppedById", "Dropped by", "The change order that drops it; counts once approved"),
  ];
}

/** A total of all rows says something only where all of them count together. */
function priceColumns(file: LineFile): GridColumn[] {
  if (scopeInForce(file).length === file.scope.length) return [...PRICE];
  return PRICE.map((column) => ({ ...column, total: false }));
}

function branchColumn(report: Pick<Report, "tieIns">): GridColumn {
  const branches = report.tieIns.map(({ tieIn, station }) => ({
    value: tieIn.id,
    label: station === null ? tieIn.label : `${tieIn.label} at ${formatFeet(station)}`,
  }));
  return {
    key: "tieInId",
    title: "Branch",
    kind: "choice",
    width: 12,
    hint: "For work on one branch",
    choices: [NONE, ...branches],
  };
}

/** What is kept of a repair option. */
export const OPTION_COLUMNS: readonly GridColumn[] = [
  {
    key: "title",
    title: "Repair option",
    kind: "text",
    width: 30,
    required: true,
    example: "Line from the alley",
  },
  {
    key: "kind",
    title: "Kind",
    kind: "choice",
    width: 16,
    choices: optionsOf(OPTION_WORDS),
  },
  { key: "note", title: "Note", kind: "text", width: 40 },
];

const NONE: GridChoice = { value: "", label: "–" };

const PRICE: readonly GridColumn[] = [
  {
    key: "quantity",
    title: "Quantity",
    kind: "hundredths",
    width: 8,
    required: true,
    example: "8",
    pasteHeadings: ["qty"],
  },
  { key: "unit", title: "Unit", kind: "text", width: 6, example: "ft" },
  {
    key: "rate",
    title: "Rate",
    kind: "cents",
    width: 10,
    required: true,
    example: "240.00",
    pasteHeadings: ["price", "unit price"],
  },
  {
    key: "amount",
    title: "Amount",
    kind: "cents",
    width: 11,
    readOnly: true,
    computed: "item-amount",
    total: true,
  },
];

const ADDED: readonly GridColumn[] = [
  { key: "markup", title: "Markup", kind: "percent", width: 7 },
  { key: "tax", title: "Tax", kind: "percent", width: 7, hint: "On the marked-up amount" },
];

function payColumns(file: LineFile): GridColumn[] {
  return [
    {
      key: "spread",
      title: "Allocation",
      kind: "choice",
      width: 14,
      hint: "How a general item is allocated",
      choices: optionsOf(SPREAD_WORDS, SPREAD_SYNONYMS),
    },
    {
      key: "payerId",
      title: "Paid by one property",
      kind: "choice",
      width: 16,
      choices: [NONE, ...propertyChoices(file)],
    },
    {
      key: "rule",
      title: "Item rule",
      kind: "choice",
      width: 16,
      hint: "Only if split differently",
      choices: [NONE, ...optionsOf(RULE_TITLES)],
    },
    {
      key: "allegedCause",
      title: "Alleged cause",
      kind: "text",
      width: 22,
      hint: "Does not affect amounts; never printed in a neighbor’s letter",
    },
    { key: "note", title: "Note", kind: "text", width: 20 },
  ];
}
