import { sentDayOf } from "../calendar/happenings.ts";
import type { Consent } from "../facts/consent.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Delivery, DeliveryOutcome, Notice } from "../facts/notice.ts";
import type { Day } from "../time/day.ts";
import { consentsAskedBy } from "./asked.ts";
import { ARRIVAL_RULES, type AttemptProof, proofUnder, wayRule } from "./way-rule.ts";

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
  /** No one took it as far as is known; the authority counts it as delivered all the same. */
  | "counts"
  | Extract<DeliveryOutcome, "returned" | "unclaimed" | "failed">;

/** Whether a letter reached its party, and what shows it. */
export interface Arrival {
  readonly state: LetterStanding;
  /** The day from which it is proven, or counts; null while nothing proves it. */
  readonly on: Day | null;
  readonly by: "answer" | "signature" | AttemptProof["by"] | null;
  /** The attempt that proves it, else the last one; null before the first. */
  readonly attempt: Delivery | null;
}

type Letters = Pick<LineFile, "authority" | "deliveries" | "replies" | "consents">;

/**
 * Whether a letter that was sent has arrived: by what came back to it, else by an attempt that counts
 * with the authority of the line (`wayRule`). Every place that asks asks here.
 */
export function arrivalOf(file: Letters, notice: Notice): Arrival {
  const attempts = file.deliveries.filter(({ noticeId }) => noticeId === notice.id);
  const proofs = attempts.flatMap((attempt) => {
    const proof = attemptProof(file, notice, attempt);
    return proof === null ? [] : [{ attempt, ...proof, state: stateOf(proof) }];
  });
  // What was handed over or taken says more than what only counts.
  const proven = proofs.find(({ state }) => state === "arrived") ?? proofs[0] ?? null;
  const attempt = proven?.attempt ?? attempts.at(-1) ?? null;
  const word = firstWord(file, notice);
  if (word !== null && (proven === null || word.on < proven.on))
    return { state: "arrived", ...word, attempt };
  return proven ?? { state: standingOf(attempt), on: null, by: null, attempt };
}

function stateOf({ by }: AttemptProof): "arrived" | "counts" {
  return by === "handed-over" || by === "receipt" ? "arrived" : "counts";
}

/** What an attempt shows by itself of its letter, with the authority of the line; null: nothing. */
export function attemptProof(
  file: Pick<LineFile, "authority">,
  notice: Pick<Notice, "kind">,
  attempt: Delivery,
): AttemptProof | null {
  return proofUnder(wayRule(file, notice.kind, attempt.method), attempt);
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
