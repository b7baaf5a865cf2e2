import type { Authority } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, LetterKind } from "../facts/notice.ts";
import type { ProofCount, ProofRule } from "../facts/proof-rule.ts";
import { EXAMPLE_CITATION } from "../starters/authorities.ts";
import type { Day } from "../time/day.ts";

/** What one way of delivery proves by itself. */
export interface ArrivalRule {
  /** When an attempt shows that the letter was delivered. */
  readonly counts: ProofCount;
  /** How a letter stands that went this way and did not come back, while nothing proves its arrival. */
  readonly stands: "on-its-way" | "mailed" | "left";
  readonly because: string;
}

/** What counts where the authority says nothing, way by way. */
export const ARRIVAL_RULES: Record<DeliveryMethod, ArrivalRule> = {
  "first-class": {
    counts: "never",
    stands: "mailed",
    because: "First-class mail shows that it was mailed. No one signs for it.",
  },
  certified: {
    counts: "accepted",
    stands: "on-its-way",
    because: "Certified mail is delivered when its tracking number or return receipt says so.",
  },
  "mail-message": {
    counts: "never",
    stands: "mailed",
    because: "A mail server accepted the message. That does not show that anyone read it.",
  },
  "by-hand": {
    counts: "handed-over",
    stands: "on-its-way",
    because: "The person who delivered it is named and can confirm it.",
  },
  posted: {
    counts: "never",
    stands: "left",
    because: "A posted notice shows what was at the site, not who read it.",
  },
  "door-hanger": {
    counts: "never",
    stands: "left",
    because: "A door hanger shows where it was left, not who found it.",
  },
};

/** What counts for one way and one kind of letter with this authority. */
export interface WayRule {
  /** Each of them has to be met. */
  readonly counts: readonly ProofCount[];
  readonly stands: ArrivalRule["stands"];
  readonly because: string;
  /** The authority's rows that say so; none: the house's table does. */
  readonly rows: readonly ProofRule[];
}

/** What each proof is called where an authority asks for it, after "counts". */
export const COUNT_WORDS: Record<ProofCount, string> = {
  never: "only with a reply or a signature",
  sent: "once sent, unless it comes back",
  attempted: "when accepted or attempted, by its tracking number or receipt",
  accepted: "when accepted, by its tracking number or receipt",
  photo: "once posted or left, with the place and a photo on file",
  "handed-over": "once handed over by a named person",
};

/**
 * What counts as delivered for a kind of letter and a way: the authority's rows for that kind, else
 * its rows for each kind, else the house's table. Where rows differ each has to be met. A row
 * without a source of its own never makes the house's table easier.
 */
export function wayRule(
  { authority }: { readonly authority: Pick<Authority, "proofRules"> | null },
  kind: LetterKind,
  method: DeliveryMethod,
): WayRule {
  const house = ARRIVAL_RULES[method];
  const ofWay = (authority?.proofRules ?? []).filter((each) => each.method === method);
  const own = ofWay.filter(({ letter }) => letter === kind);
  const rows = own.length > 0 ? own : ofWay.filter(({ letter }) => letter === null);
  if (rows.length === 0)
    return { counts: [house.counts], stands: house.stands, because: house.because, rows };
  const counts = [
    ...new Set([
      ...rows.map((each) => each.counts),
      ...(rows.every(isSourced) ? [] : [house.counts]),
    ]),
  ];
  return { counts, stands: house.stands, because: rows.map(ruleWords).join(" "), rows };
}

function isSourced({ citation }: ProofRule): boolean {
  return citation.trim() !== "" && citation !== EXAMPLE_CITATION;
}

function ruleWords(rule: ProofRule): string {
  const source = isSourced(rule) ? ` (${rule.citation})` : ", source not on file";
  return `The authority counts it as delivered ${COUNT_WORDS[rule.counts]}${source}.`;
}

/** The same for an attempt that is on file; the house's table where its letter is gone. */
export function wayRuleOf(
  file: { readonly authority: Pick<Authority, "proofRules"> | null } & Pick<LineFile, "notices">,
  { noticeId, method }: Pick<Delivery, "noticeId" | "method">,
): WayRule {
  const notice = file.notices.find(({ id }) => id === noticeId);
  if (notice !== undefined) return wayRule(file, notice.kind, method);
  const { counts, ...house } = ARRIVAL_RULES[method];
  return { ...house, counts: [counts], rows: [] };
}

const TAKEN: readonly ProofCount[] = ["attempted", "accepted", "handed-over"];

/** Whether it can be recorded at all that somebody took what went this way, whatever counts. */
export function canBeTaken(method: DeliveryMethod, { counts }: Pick<WayRule, "counts">): boolean {
  return [ARRIVAL_RULES[method].counts, ...counts].some((each) => TAKEN.includes(each));
}

/** What shows that an attempt counts, and the day from which it does. */
export interface AttemptProof {
  readonly by: "handed-over" | "receipt" | "attempted" | "photo" | "sent";
  readonly on: Day;
}

/** What an attempt shows under a rule; null: it does not count. */
export function proofUnder({ counts }: Pick<WayRule, "counts">, attempt: Delivery) {
  const found = counts.map((each) => METS[each](attempt));
  const met = found.flatMap((proof) => proof ?? []);
  if (met.length < found.length) return null;
  return met.toSorted((one, other) => other.on.localeCompare(one.on))[0] ?? null;
}

const METS: Record<ProofCount, (attempt: Delivery) => AttemptProof | null> = {
  never: () => null,
  sent: (attempt) => (hasGone(attempt) ? { by: "sent", on: attempt.sentOn } : null),
  attempted: (attempt) =>
    receiptOf(attempt, "delivered", "receipt") ?? receiptOf(attempt, "unclaimed", "attempted"),
  accepted: (attempt) => receiptOf(attempt, "delivered", "receipt"),
  photo: (attempt) => {
    const { method, place, proofUploadId, sentOn } = attempt;
    const left = method === "posted" || method === "door-hanger";
    const shown = left && hasGone(attempt) && place.trim() !== "" && proofUploadId !== null;
    return shown ? { by: "photo", on: sentOn } : null;
  },
  "handed-over": (attempt) => {
    const { method, by, sentOn, outcome, outcomeOn } = attempt;
    if (method !== "by-hand" || !hasGone(attempt) || by.trim() === "") return null;
    return { by: "handed-over", on: outcome === "delivered" ? (outcomeOn ?? sentOn) : sentOn };
  },
};

function receiptOf(
  attempt: Delivery,
  outcome: "delivered" | "unclaimed",
  by: AttemptProof["by"],
): AttemptProof | null {
  const { tracking, proofUploadId, outcomeOn, sentOn } = attempt;
  if (attempt.outcome !== outcome || (tracking.trim() === "" && proofUploadId === null))
    return null;
  // The day of an attempt that failed has to be known; that of a receipt is no earlier than the mailing.
  if (outcome === "unclaimed" && outcomeOn === null) return null;
  return { by, on: outcomeOn ?? sentOn };
}

/** Whether a tracking number or a receipt is on file of an attempt that was accepted. */
export function hasReceipt(attempt: Delivery): boolean {
  return receiptOf(attempt, "delivered", "receipt") !== null;
}

/** Whether an attempt is under way or done, and did not come back. */
export function hasGone({ outcome }: Delivery): boolean {
  return outcome === "on-its-way" || outcome === "delivered";
}
