import type {
  PaperCondition,
  PaperEvent,
  PaperReader,
  PaperWay,
  StatutoryPaper,
} from "../facts/statutory-paper.ts";

// What the choices of a statutory paper are called, on screens and in reasons.

export const READER_WORDS: Readonly<Record<PaperReader, string>> = {
  customer: "whoever ordered the work",
  owner: "each owner of a property with an order",
};

export const CONDITION_WORDS: Readonly<Record<PaperCondition, string>> = {
  always: "always",
  "signed-away": "the contract was signed away from the office",
  "not-direct": "the owner did not order the work themselves",
  "four-units": "the property has at most 4 units",
};

export const EVENT_WORDS: Readonly<Record<PaperEvent, string>> = {
  contract: "the contract is signed",
  "work-begins": "work begins",
  "work-ends": "work ends",
};

export const BY_WORDS: Readonly<Record<PaperWay, string>> = {
  any: "any method",
  "in-person": "in person",
  certified: "certified mail",
  "in-person-or-certified": "in person or certified mail",
  "in-person-or-mail": "in person or by mail",
};

export const GIVEN_WORDS: Readonly<Record<StatutoryPaper["given"], string>> = {
  sent: "sent in time",
  delivered: "delivered in time",
};
