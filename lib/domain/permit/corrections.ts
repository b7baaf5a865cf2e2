import type { Correction } from "../facts/correction.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState, PermitStep } from "../facts/permit.ts";
import { sayCount } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";
import { permitName } from "./say.ts";
import { stepsOf } from "./steps.ts";

type CorrectionFile = Pick<LineFile, "permitSteps" | "corrections">;

/** How far one comment has got. */
const CORRECTION_STATES = [
  /** Neither answered nor left as it is with a reason. */
  "open",
  "answered",
  /** Not changed as asked, with a reason and a name. */
  "not-changed",
  /** Answered, and the permit was submitted again. */
  "resubmitted",
  "accepted",
  /** The same number came again in a later round. */
  "asked-again",
] as const;
export type CorrectionState = (typeof CORRECTION_STATES)[number];

/** One comment with how far it has got. */
interface CorrectionStanding {
  readonly correction: Correction;
  readonly state: CorrectionState;
}

/** What one corrections letter asked for. */
export interface CorrectionRound {
  /** The permit’s step by which it was asked for. */
  readonly step: PermitStep;
  /** From 1. */
  readonly number: number;
  /** The day on which the permit went back to the authority after it; null: not yet. */
  readonly resubmittedOn: Day | null;
  readonly items: readonly CorrectionStanding[];
}

/** The rounds of corrections of a permit in their order. */
export function roundsOf(file: CorrectionFile, permit: Pick<Permit, "id">): CorrectionRound[] {
  const steps = stepsOf(file, permit);
  const asked = steps.filter(({ state }) => state === "corrections");
  return asked.map((step, at) => {
    const since = steps.slice(steps.indexOf(step) + 1);
    const resubmittedOn = since.find(({ state }) => RESUBMITS.includes(state))?.on ?? null;
    const later = new Set(asked.slice(at + 1).map(({ id }) => id));
    const again = file.corrections.filter(({ stepId }) => later.has(stepId)).map(numberOf);
    const isApproved = since.some(({ state }) => APPROVES.includes(state));
    const items = file.corrections
      .filter(({ stepId }) => stepId === step.id)
      .map((correction) => ({
        correction,
        state: stateOf(correction, { resubmittedOn, again, isApproved }),
      }));
    return { step, number: at + 1, resubmittedOn, items };
  });
}

/** With these the permit goes back to the authority. */
export const RESUBMITS: readonly PermitState[] = ["submitted", "in-review"];

/** With these the authority has accepted whatever was answered. */
const APPROVES: readonly PermitState[] = ["approved-fees-due", "issued"];

interface Since {
  readonly resubmittedOn: Day | null;
  /** Numbers that came in later rounds. */
  readonly again: readonly string[];
  readonly isApproved: boolean;
}

function stateOf(
  correction: Correction,
  { resubmittedOn, again, isApproved }: Since,
): CorrectionState {
  if (correction.acceptedOn !== null) return "accepted";
  const number = numberOf(correction);
  if (number !== "" && again.includes(number)) return "asked-again";
  if (isApproved) return "accepted";
  if (resubmittedOn !== null) return "resubmitted";
  if (correction.answeredBy.trim() === "") return "open";
  if (correction.answer.trim() !== "") return "answered";
  return correction.notChanged.trim() === "" ? "open" : "not-changed";
}

function numberOf({ number }: Correction): string {
  return number.trim().toLowerCase();
}

/** Comments of a round that nobody has answered yet. */
export function openItems({ items }: CorrectionRound): Correction[] {
  return items.filter(({ state }) => state === "open").map(({ correction }) => correction);
}

/** The comments of a round went back to the authority with their answers, which stay as they went. */
export function isResubmitted(file: CorrectionFile, stepId: string): boolean {
  const step = file.permitSteps.find(({ id }) => id === stepId);
  if (step === undefined) return false;
  const rounds = roundsOf(file, { id: step.permitId });
  return rounds.some((round) => round.step.id === stepId && round.resubmittedOn !== null);
}

/** How many comments one sentence names; of more the rest are counted. */
const MOST_NAMED = 4;

/**
 * Why a permit may not go back to the authority yet, in words that say what to do; null where it may.
 * Each comment of the last corrections letter is answered, or left as it is with a reason and a name,
 * and each of the letters before it was accepted or has come again.
 */
export function resubmissionBar(file: CorrectionFile, permit: Permit): string | null {
  const rounds = roundsOf(file, permit);
  const last = rounds.at(-1);
  if (last === undefined || last.resubmittedOn !== null) return null;
  const name = permitName(permit);
  if (last.items.length === 0)
    return `${name}: enter the comments of the corrections letter of ${formatDate(last.step.on)} first, one row each, under “Corrections”`;
  const open = openItems(last);
  if (open.length > 0)
    return `${name}: ${sayCount(open.length, "comment")} not answered: ${namesOf(open)}. Under “Corrections”, enter the answer, or why it is not changed, and by whom`;
  const hanging = rounds
    .slice(0, -1)
    .flatMap(({ items }) => items)
    .filter(({ state }) => state === "resubmitted")
    .map(({ correction }) => correction);
  if (hanging.length > 0)
    return `${name}: of an earlier round, ${namesOf(hanging)}: mark as accepted, or enter the number again in round ${last.number}`;
  return null;
}

function namesOf(corrections: readonly Correction[]): string {
  return sayList(corrections.map(correctionName), MOST_NAMED);
}

/** `no. 3 (sheet C2)`; without a number its words. */
export function correctionName({ number, sheet, comment }: Correction): string {
  const where = sheet.trim() === "" ? "" : ` (sheet ${sheet.trim()})`;
  if (number.trim() !== "") return `no. ${number.trim()}${where}`;
  const words = comment.trim();
  return `${words === "" ? "a comment without words" : `“${words.length > 40 ? `${words.slice(0, 40)}…` : words}”`}${where}`;
}

/** `Round 2, asked for November 20, 2026: 3 of 5 answered`, as it stands. */
export function roundSentence({ step, number, items, resubmittedOn }: CorrectionRound): string {
  const head = `Round ${number}, asked for ${formatDate(step.on)}`;
  if (items.length === 0) return `${head}: no comments entered.`;
  const of = sayCount(items.length, "comment");
  if (resubmittedOn === null) {
    const done = items.filter(({ state }) => state !== "open").length;
    return `${head}: ${done} of ${of} answered.`;
  }
  const accepted = items.filter(({ state }) => state === "accepted").length;
  return `${head}: resubmitted ${formatDate(resubmittedOn)}; ${accepted} of ${of} accepted.`;
}
