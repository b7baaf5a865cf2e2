import { sentDayOf } from "../calendar/happenings.ts";
import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryMethod, DeliveryOutcome, Notice } from "../facts/notice.ts";
import type { Day } from "../time/day.ts";
import { consentsAskedBy } from "./asked.ts";

/** What one way of delivery proves by itself. */
interface ArrivalRule {
  /** When an attempt proves that the letter reached its party. */
  readonly arrives: "once-handed-over" | "with-tracking-or-receipt" | "never";
  /** How a letter stands that went this way and did not come back, while nothing proves its arrival. */
  readonly stands: "on-its-way" | "mailed" | "left";
  readonly because: string;
}

/**
 * What counts as arrival, way by way. An answer or a signature counts whatever the way: whoever
 * answers a letter has it.
 */
export const ARRIVAL_RULES: Record<DeliveryMethod, ArrivalRule> = {
  "first-class": {
    arrives: "never",
    stands: "mailed",
    because: "First-class mail shows that it was mailed. No one signs for it.",
  },
  certified: {
    arrives: "with-tracking-or-receipt",
    stands: "on-its-way",
    because: "Certified mail is delivered when its tracking number or return receipt says so.",
  },
  "mail-message": {
    arrives: "never",
    stands: "mailed",
    because: "A mail server accepted the message. That does not show that anyone read it.",
  },
  "by-hand": {
    arrives: "once-handed-over",
    stands: "on-its-way",
    because: "The person who delivered it is named and can confirm it.",
  },
  posted: {
    arrives: "never",
    stands: "left",
    because: "A posted notice shows what was at the site, not who read it.",
  },
  "door-hanger": {
    arrives: "never",
    stands: "left",
    because: "A door hanger shows where it was left, not who found it.",
  },
};

/** How a letter that was sent stands with its party. */
export type LetterStanding =
  | "sent"
  | "on-its-way"
  /** It was mailed; whether it arrived nobody can say. */
  | "mailed"
  /** It was left at the place. */
  | "left"
  /** Said to be delivered, with nothing that shows it. */
  | "unproven"
  | "arrived"
  | Extract<DeliveryOutcome, "returned" | "unclaimed" | "failed">;

/** Whether a letter reached its party, and what shows it. */
export interface Arrival {
  readonly state: LetterStanding;
  /** The day on which it is proven to have been there; null while nothing proves it. */
  readonly on: Day | null;
  readonly by: "answer" | "signature" | "handed-over" | "receipt" | null;
  /** The attempt that proves it, else the last one; null before the first. */
  readonly attempt: Delivery | null;
}

type Letters = Pick<LineFile, "deliveries" | "replies" | "consents">;

/**
 * Whether a letter that was sent has arrived: by what came back to it, else by an attempt whose way
 * proves it. Every place that asks asks here.
 */
export function arrivalOf(file: Letters, notice: Notice): Arrival {
  const attempts = file.deliveries.filter(({ noticeId }) => noticeId === notice.id);
  const proven = attempts.find((attempt) => attemptProves(attempt) !== null) ?? null;
  const attempt = proven ?? attempts.at(-1) ?? null;
  const word = firstWord(file, notice);
  if (word !== null && (proven === null || word.on < dayOf(proven)))
    return { state: "arrived", ...word, attempt };
  if (proven !== null)
    return { state: "arrived", on: dayOf(proven), by: attemptProves(proven), attempt: proven };
  return { state: standingOf(attempt), on: null, by: null, attempt };
}

/** Whether a letter came back: the way did not lead to its party. */
export function cameBack(state: LetterStanding | "draft"): boolean {
  return state === "returned" || state === "unclaimed" || state === "failed";
}

function standingOf(attempt: Delivery | null): LetterStanding {
  if (attempt === null) return "sent";
  const { outcome, method } = attempt;
  if (outcome === "returned" || outcome === "unclaimed" || outcome === "failed") return outcome;
  const { stands } = ARRIVAL_RULES[method];
  return outcome === "delivered" && stands === "on-its-way" ? "unproven" : stands;
}

function dayOf({ outcome, outcomeOn, sentOn }: Delivery): Day {
  return outcome === "delivered" ? (outcomeOn ?? sentOn) : sentOn;
}

/** What an attempt proves by itself; null: no arrival. */
export function attemptProves(attempt: Delivery): "handed-over" | "receipt" | null {
  const { outcome, method, by, tracking, proofUploadId } = attempt;
  const { arrives } = ARRIVAL_RULES[method];
  if (arrives === "once-handed-over") {
    const went = outcome === "on-its-way" || outcome === "delivered";
    return went && by.trim() !== "" ? "handed-over" : null;
  }
  if (arrives === "never" || outcome !== "delivered") return null;
  return tracking.trim() !== "" || proofUploadId !== null ? "receipt" : null;
}

/** The first thing that its party said to a letter: a reply, or a word on what it asks for. */
function firstWord(
  file: Letters,
  notice: Notice,
): { readonly on: Day; readonly by: "answer" | "signature" } | null {
  const since = sentDayOf(file, notice);
  const words = [
    ...file.replies
      .filter(({ noticeId }) => noticeId === notice.id)
      .map(({ receivedOn }) => ({ on: receivedOn, by: "answer" as const })),
    ...wordsOn(file, notice)
      .filter(({ stateOn }) => since !== null && stateOn >= since)
      .map(({ stateOn }) => ({ on: stateOn, by: "signature" as const })),
  ];
  return words.toSorted((one, other) => one.on.localeCompare(other.on))[0] ?? null;
}

/**
 * What a letter's party said on the consents that it asks for: given, refused or taken back. For
 * money only on the very version that the letter puts to them.
 */
export function wordsOn({ consents }: Pick<LineFile, "consents">, notice: Notice): Consent[] {
  const asked = consentsAskedBy(notice);
  return consents.filter(
    ({ kind, partyId, propertyId, state, splitId }) =>
      asked.includes(kind) &&
      partyId === notice.partyId &&
      propertyId === notice.propertyId &&
      state !== "asked" &&
      (kind !== "pay" || splitId === notice.splitId),
  );
}
