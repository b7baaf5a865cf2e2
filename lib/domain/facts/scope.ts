import { WORK_KINDS } from "./authority.ts";
import {
  cents,
  feet,
  late,
  maybe,
  name,
  oneOf,
  percent,
  quantity,
  type RowOf,
  ref,
  row,
  usually,
  words,
} from "./field.ts";
import { SPLIT_RULES } from "./split.ts";

const PLACES = ["point", "stretch", "branch", "general"] as const;
export type Place = (typeof PLACES)[number];

const SPREADS = ["by-placed-cost", "equally"] as const;
export type Spread = (typeof SPREADS)[number];

/**
 * What is done to the pipe. It decides which holds stop the work and which cautions it raises, so a
 * person says it; `unknown` counts as the unsafest that its words allow (work-deeds.ts).
 */
export const SCOPE_KINDS = [
  "unknown",
  "dig-and-replace",
  "spot-repair",
  "line",
  "burst",
  /** Capping, plugging or cutting off a branch. */
  "cap",
  /** Cutting inside the pipe: roots, grease, a blockage. */
  "clear",
  /** Jetting and flushing, without cutting. */
  "clean",
  /** Opening a branch again, or joining it to the new pipe. */
  "reconnect",
  "test",
  "restore",
  "permit-fee",
  /** Nothing that cuts, lines, bursts, caps or digs. */
  "other",
] as const;
export type ScopeKind = (typeof SCOPE_KINDS)[number];

/** One priced piece of work. */
export type ScopeItem = RowOf<typeof SCOPE_ITEM>;

export const SCOPE_ITEM = row({
  one: "scope item",
  most: 300,
  saved: "office",
  fields: {
    title: name("what is to be done"),
    kind: late(usually(oneOf(SCOPE_KINDS), "unknown")),
    /** For rules that say by the kind of work who does it. */
    work: usually(oneOf(WORK_KINDS), "repair"),
    place: oneOf(PLACES),
    /** Point: `from` only. Stretch: both. Branch and general: neither. */
    from: maybe(feet),
    to: maybe(feet),
    /** The branch, for `branch`. */
    tieInId: maybe(ref("tieIns")),
    /** Hundredths of the unit, so `1250` of `ft` is 12.5 ft. */
    quantity: usually(quantity, 100),
    unit: words,
    /** Per whole unit. */
    rate: cents,
    /** Basis points: 1000 is 10 %. Markup first, then tax on the marked-up amount. */
    markup: usually(percent, 0),
    tax: usually(percent, 0),
    /** How a general item is spread. */
    spread: usually(oneOf(SPREADS), "by-placed-cost"),
    /** Its own rule, if not the line's. */
    rule: maybe(oneOf(SPLIT_RULES)),
    /** One property pays it all. */
    payerId: maybe(ref("properties")),
    /** What somebody says caused it. Kept apart from the split. */
    allegedCause: words,
    /** The way of doing the work that it belongs to; null: to every one. */
    optionId: maybe(ref("options")),
    /** The change order that added it, and the one that dropped it. */
    addedById: maybe(ref("changeOrders")),
    droppedById: maybe(ref("changeOrders")),
    note: words,
  },
});
