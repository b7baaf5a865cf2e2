import type { Permit, PermitKind, PermitState, PermitStep } from "../facts/permit.ts";
import { uncapital } from "../say/capital.ts";
import type { Day } from "../time/day.ts";
import { onNearDay } from "../time/format-day.ts";
import { PERMIT_KIND_WORDS } from "./state-words.ts";
import { lastStepOf, type PermitFacts, permitStateOf } from "./steps.ts";

const STATE_WORDS: Record<PermitState, string> = {
  drafting: "is being drafted",
  emergency: "is to be applied for after the emergency work",
  "waiting-on-signatures": "is waiting for signatures or recording",
  submitted: "was submitted",
  "returned-incomplete": "was returned as incomplete",
  "in-review": "is in review",
  corrections: "needs corrections",
  denied: "was denied",
  appealed: "was denied, and the denial is appealed",
  "approved-fees-due": "is approved, fees due",
  issued: "is issued",
  working: "has work in progress",
  "inspection-requested": "is waiting for the requested inspection",
  "inspection-failed": "failed its inspection",
  "passed-may-backfill": "passed, OK to backfill",
  "as-built-submitted": "is waiting for as-built approval",
  "as-built-rejected": "had its as-built rejected",
  "as-built-accepted": "had its as-built accepted",
  final: "is final",
  expired: "has expired",
  "extension-asked": "has an extension asked for",
  extended: "is extended",
  withdrawn: "was withdrawn",
  superseded: "was superseded",
};

/** A state as it stands alone in a table: `in review`, `issued`. */
export function permitStateWords(state: PermitState): string {
  return STATE_WORDS[state].replace(/^(?:is|was|has|had its) /, "");
}

/** What a kind of permit is called, in the middle of a sentence. */
export function kindName(kind: PermitKind): string {
  return uncapital(PERMIT_KIND_WORDS[kind]);
}

/** `Side sewer permit SS-26-0818`; without a number its kind alone. */
export function permitName({ kind, number }: Pick<Permit, "kind" | "number">): string {
  const name = kind === "other" ? "Permit" : PERMIT_KIND_WORDS[kind];
  return number === "" ? name : `${name} ${number}`;
}

/** `side sewer permit SS-26-0818 is approved, fees due`, inside a sentence. */
export function permitStanding(file: PermitFacts, permit: Permit): string {
  return uncapital(`${permitName(permit)} ${STATE_WORDS[permitStateOf(file, permit)]}`);
}

/** `Side sewer permit SS-26-0818 is approved, fees due (since Friday, November 20)`. */
export function permitSentence(file: PermitFacts, permit: Permit, today: Day): string {
  const step = lastStepOf(file, permit);
  const state = `${permitName(permit)} ${STATE_WORDS[step?.state ?? "drafting"]}`;
  return step === null ? state : `${state} (${sinceWords(step, today)})`;
}

function sinceWords({ state, on }: PermitStep, today: Day): string {
  return MOMENTS.includes(state)
    ? onNearDay(on, today)
    : `since ${onNearDay(on, today).replace(/^on /, "")}`;
}

/** States that are told as a happening, not as something that lasts. */
const MOMENTS: readonly PermitState[] = [
  "submitted",
  "returned-incomplete",
  "denied",
  "inspection-failed",
  "passed-may-backfill",
  "as-built-rejected",
  "as-built-accepted",
  "final",
  "withdrawn",
  "superseded",
];
