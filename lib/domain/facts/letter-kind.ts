import type { ClockEvent } from "./clock-rule.ts";
import type { ConsentKind } from "./consent.ts";
import type { HoldStop } from "./hold.ts";

/** What is said of a kind of letter beneath the rooms that write it; its plan: paper/kinds. */
export interface LetterKindFacts {
  /** As it stands inside a sentence: on screens, in the history and in the packet. */
  readonly said: string;
  /** Who gets it and what it is for, before it is chosen. */
  readonly purpose: string;
  /** The consents that it puts to its reader, on screen or on paper. */
  readonly asks: readonly ConsentKind[];
  /** It is signed on paper alone. */
  readonly onPaper?: true;
  /** What an objection to it withholds, where that is not what it asks. */
  readonly objectedTo?: readonly ConsentKind[];
  /** The events from which an authority’s rules count its time to answer; none: it only tells. */
  readonly answeredFrom?: readonly ClockEvent[];
  /** The event that it tells of before it comes. */
  readonly tellsOf?: ClockEvent;
  /** What holds may stop of it, shown before it is written. */
  readonly stops?: readonly HoldStop[];
}

function kinds<const K extends string>(
  rows: Readonly<Record<K, LetterKindFacts>>,
): Readonly<Record<K, LetterKindFacts>> {
  return rows;
}

/** Letter kinds of the trade, in the order of the office’s own list. */
export const LETTERS = kinds({
  finding: {
    said: "shared-line finding",
    purpose:
      "To every owner on the line and of every crossed lot: what was seen, what the record shows, what is not known yet.",
    asks: [],
    answeredFrom: ["letter-sent"],
  },
  "tie-in-inquiry": {
    said: "unknown tie-in inquiry",
    purpose: "To owners and occupants of candidate addresses: why they are asked, and for what.",
    asks: [],
    answeredFrom: ["letter-sent"],
  },
  "test-visit": {
    said: "notice of test visit",
    purpose: "To occupants and owners where a tie-in will be tested: when, who comes, what to do.",
    asks: ["enter"],
    answeredFrom: ["letter-sent"],
    tellsOf: "tenant-entry",
    stops: ["test-visit"],
  },
  "proposed-split": {
    said: "proposed split",
    purpose: "To owners: the rule, the section, their own amount, and what other rules would give.",
    asks: ["pay"],
    answeredFrom: ["letter-sent", "split-sent"],
  },
  "entry-consent": {
    said: "consent to enter and dig",
    purpose: "To owners of lots to be entered or dug: what, where, and restoration.",
    asks: ["enter", "dig"],
    answeredFrom: ["letter-sent"],
  },
  "joint-agreement": {
    said: "joint agreement",
    purpose: "To all owners: sign, notarize and record the maintenance agreement.",
    asks: ["agreement-signed"],
    onPaper: true,
    answeredFrom: ["letter-sent"],
  },
  "work-start": {
    said: "notice of work",
    purpose: "To owners and occupants: dates, hours, access, after-hours contact.",
    asks: [],
    tellsOf: "work-begins",
  },
  "drain-pause": {
    said: "do-not-use-drains notice",
    purpose: "To every occupant on the line: when no water may be used.",
    asks: [],
    tellsOf: "drains-paused",
    stops: ["pause"],
  },
  spill: {
    said: "spill notice",
    purpose: "To owners, occupants and the authority: where, keep out, what is being done.",
    asks: [],
  },
  "share-demand": {
    said: "payment demand",
    purpose: "To an owner: the amount, its basis and the due date. Blocked while a hold is open.",
    asks: [],
    objectedTo: ["pay"],
    answeredFrom: ["letter-sent", "certified-letter-mailed"],
    stops: ["demand"],
  },
  "authority-response": {
    said: "response to the authority",
    purpose: "To the authority: the case, the plan, the dates.",
    asks: [],
  },
  "close-out": {
    said: "closeout",
    purpose: "To all: final cost, as-built, recording number, who maintains what from now on.",
    asks: [],
  },
  "drains-back": {
    said: "drains-back-on notice",
    purpose:
      "To everyone who was told not to use drains: the shutdown is over, and what to do if a drain backs up.",
    asks: [],
  },
  meeting: {
    said: "meeting invitation",
    purpose: "To owners: day, hours and place of a meeting about the shared pipe.",
    asks: [],
  },
  "landlord-entry": {
    said: "landlord’s notice of entry",
    purpose:
      "To tenants, for the landlord to sign and hand over: when a home is entered, by whom and why.",
    asks: [],
  },
  "street-parking": {
    said: "street parking notice",
    purpose: "To everyone on the line: which part of the street to keep clear, and when.",
    asks: [],
    tellsOf: "street-closed",
  },
  "change-order": {
    said: "change order notice",
    purpose: "To owners: what changes in the work, and what it does to their own share.",
    asks: [],
  },
  "invoice-cover": {
    said: "invoice cover letter",
    purpose: "To owners with a balance due: the amount, the due date, how to pay and to dispute.",
    asks: [],
  },
  "statutory-notice": {
    said: "statutory notice",
    purpose:
      "To customers or owners, where state law asks for a paper: a notice to customer, a preliminary notice, a right to cancel, in the office’s own text.",
    asks: [],
  },
});

export type LetterKind = keyof typeof LETTERS;
export const LETTER_KINDS = Object.keys(LETTERS) as unknown as readonly [
  LetterKind,
  ...LetterKind[],
];
