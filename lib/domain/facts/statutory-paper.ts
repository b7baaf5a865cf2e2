import {
  cents,
  day,
  idOf,
  maybe,
  name,
  oneOf,
  type RowOf,
  ref,
  row,
  sum,
  usually,
  whole,
  words,
  yesUnlessSaid,
} from "./field.ts";

/** Who has to get a statutory paper. */
const PAPER_READERS = [
  /** Whoever ordered the work: who signed a contract or agreed to pay. */
  "customer",
  /** Each owner of a property for which somebody ordered the work. */
  "owner",
] as const;
export type PaperReader = (typeof PAPER_READERS)[number];

/** When a paper is asked for at all; what is not on file counts as met. */
const PAPER_CONDITIONS = [
  "always",
  /** The contract was signed elsewhere than at the office. */
  "signed-away",
  /** The owner is not who ordered the work. */
  "not-direct",
  /** The property has at most four units. */
  "four-units",
] as const;
export type PaperCondition = (typeof PAPER_CONDITIONS)[number];

/** From which fact its days are counted. */
const PAPER_EVENTS = ["contract", "work-begins", "work-ends"] as const;
export type PaperEvent = (typeof PAPER_EVENTS)[number];

const PAPER_UNITS = ["calendar-days", "business-days", "months"] as const;

/** How it may be delivered, by the statute. */
const PAPER_WAYS = [
  "any",
  "in-person",
  "certified",
  "in-person-or-certified",
  "in-person-or-mail",
] as const;
export type PaperWay = (typeof PAPER_WAYS)[number];

/** Whether sending it in time is enough, or it has to have arrived. */
const PAPER_GIVENS = ["sent", "delivered"] as const;

/**
 * A paper that a state's law asks of a contractor. Data, with its source; its words are the office's
 * own and are looked at against the statute by a named person.
 */
export type StatutoryPaper = RowOf<typeof STATUTORY_PAPER>;

export const STATUTORY_PAPER = row({
  one: "statutory paper",
  fields: {
    /** Whose it is. */
    authorityId: words,
    /** The state's two letters; empty: wherever the property is. */
    state: words,
    title: name("what the paper is called"),
    /** Its name in Spanish; empty: it keeps its own. */
    titleEs: words,
    to: usually(oneOf(PAPER_READERS), "customer"),
    condition: usually(oneOf(PAPER_CONDITIONS), "always"),
    /** Asked for from this amount of the contract on; null: whatever the amount. */
    least: maybe(cents),
    event: oneOf(PAPER_EVENTS),
    count: usually(whole(1_000), 0),
    unit: usually(oneOf(PAPER_UNITS), "calendar-days"),
    way: usually(oneOf(["after", "before"]), "after"),
    /** How it may be delivered. */
    by: usually(oneOf(PAPER_WAYS), "any"),
    given: usually(oneOf(PAPER_GIVENS), "delivered"),
    /** So many full days pass after it was given before work begins; 0: none. */
    workWaits: usually(whole(365), 0),
    waitUnit: usually(oneOf(["calendar-days", "business-days"]), "business-days"),
    citation: words,
    asOf: day,
    /** The office's text of it, in English and in Spanish. */
    text: words,
    textEs: words,
    /** Who compared this text with the statute, and when; empty: nobody did. */
    confirmedBy: words,
    confirmedOn: maybe(day),
  },
});

/** Where a contract was signed. */
const SIGNED_PLACES = ["unknown", "away", "office"] as const;

/** A contract for the work, as it was signed on paper; the day starts what the state's law counts. */
export type Contract = RowOf<typeof CONTRACT>;

export const CONTRACT = row({
  one: "contract",
  most: 400,
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    /** Who signed it. */
    partyId: ref("parties"),
    signedOn: maybe(day),
    place: usually(oneOf(SIGNED_PLACES), "unknown"),
    /** Its amount; null: not noted. */
    amount: maybe(sum),
    note: words,
  },
});

/** A named person's word that a statutory paper is not given to somebody, or is after all. */
export type PaperWaiver = RowOf<typeof PAPER_WAIVER>;

export const PAPER_WAIVER = row({
  one: "decision on a statutory paper",
  most: 2_000,
  fields: {
    paperId: idOf("the paper"),
    partyId: ref("parties"),
    propertyId: ref("properties"),
    /** False: it is to be given after all. */
    givenUp: yesUnlessSaid,
    reason: words,
    by: name("who says so"),
    on: day,
  },
});
