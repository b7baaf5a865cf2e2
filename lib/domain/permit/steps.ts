import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitKind, PermitState, PermitStep } from "../facts/permit.ts";
import type { Deed } from "../stops/stopped-by.ts";
import type { Day } from "../time/day.ts";
import { onNearDay } from "../time/format-day.ts";

type PermitFacts = Pick<LineFile, "permitSteps">;

/**
 * Where a permit may go from each state: the usual way of a side sewer permit through the counter,
 * with its side exits. A composite of what authorities publish; no single one is followed. Permits
 * that are issued over the counter skip the review; a reinstatement leads out of `expired`.
 */
const PERMIT_MOVES: Record<PermitState, readonly PermitState[]> = {
  drafting: ["waiting-on-signatures", "submitted", "emergency", "withdrawn"],
  emergency: ["waiting-on-signatures", "submitted", "issued", "withdrawn"],
  "waiting-on-signatures": ["submitted", "drafting", "withdrawn"],
  submitted: [
    "in-review",
    "returned-incomplete",
    "corrections",
    "approved-fees-due",
    "issued",
    "denied",
    "expired",
    "withdrawn",
  ],
  "returned-incomplete": ["submitted", "drafting", "waiting-on-signatures", "expired", "withdrawn"],
  "in-review": [
    "approved-fees-due",
    "corrections",
    "returned-incomplete",
    "issued",
    "denied",
    "expired",
    "withdrawn",
  ],
  corrections: [
    "submitted",
    "in-review",
    "waiting-on-signatures",
    "denied",
    "expired",
    "withdrawn",
  ],
  denied: ["appealed", "superseded", "withdrawn"],
  appealed: ["in-review", "approved-fees-due", "issued", "denied", "withdrawn"],
  "approved-fees-due": ["issued", "expired", "withdrawn"],
  issued: [
    "working",
    "inspection-requested",
    "extension-asked",
    "extended",
    "expired",
    "withdrawn",
    "superseded",
  ],
  working: [
    "inspection-requested",
    "extension-asked",
    "extended",
    "expired",
    "withdrawn",
    "superseded",
  ],
  "inspection-requested": [
    "passed-may-backfill",
    "inspection-failed",
    "working",
    "extension-asked",
    "extended",
    "expired",
  ],
  "inspection-failed": [
    "working",
    "inspection-requested",
    "extension-asked",
    "extended",
    "expired",
  ],
  "passed-may-backfill": [
    "as-built-submitted",
    "final",
    "working",
    "inspection-requested",
    "extension-asked",
    "extended",
    "expired",
  ],
  "as-built-submitted": [
    "as-built-accepted",
    "final",
    "as-built-rejected",
    "extension-asked",
    "extended",
    "expired",
  ],
  "as-built-rejected": ["as-built-submitted", "extension-asked", "extended", "expired"],
  "as-built-accepted": ["final", "as-built-submitted", "extension-asked", "extended", "expired"],
  final: [],
  expired: ["extended", "superseded"],
  "extension-asked": [
    "extended",
    "working",
    "inspection-requested",
    "inspection-failed",
    "passed-may-backfill",
    "as-built-submitted",
    "as-built-rejected",
    "as-built-accepted",
    "final",
    "expired",
    "withdrawn",
    "superseded",
  ],
  extended: [
    "working",
    "inspection-requested",
    "inspection-failed",
    "passed-may-backfill",
    "as-built-submitted",
    "as-built-rejected",
    "as-built-accepted",
    "final",
    "extension-asked",
    "extended",
    "expired",
    "withdrawn",
    "superseded",
  ],
  withdrawn: [],
  superseded: [],
};

/** The states that may follow; the likeliest first, empty where the permit is done with. */
export function nextPermitStates(state: PermitState): PermitState[] {
  return [...PERMIT_MOVES[state]];
}

/**
 * The states that may follow for a permit as it stands. An extension changes the day of expiry and
 * nothing else: it goes on from where the permit was, so that nothing is left out by extending it.
 */
export function nextStatesOf(file: PermitFacts, permit: Pick<Permit, "id">): PermitState[] {
  const state = permitStateOf(file, permit);
  if (state !== "extended" && state !== "extension-asked") return nextPermitStates(state);
  const before = stepsOf(file, permit).findLast((step) => !PAUSES.includes(step.state));
  const went = before === undefined ? [] : nextPermitStates(before.state);
  return nextPermitStates(state).filter(
    (next) => went.includes(next) || (!isWork(next) && next !== "final"),
  );
}

/** The step that mostly comes next, and what may well come instead; each is one press. */
const USUAL: Partial<Record<PermitState, readonly PermitState[]>> = {
  drafting: ["submitted", "waiting-on-signatures"],
  "waiting-on-signatures": ["submitted"],
  submitted: ["in-review", "issued"],
  "returned-incomplete": ["submitted"],
  "in-review": ["issued", "approved-fees-due", "corrections"],
  corrections: ["submitted"],
  denied: ["appealed"],
  appealed: ["in-review"],
  "approved-fees-due": ["issued"],
  issued: ["working"],
  working: ["inspection-requested"],
  "inspection-requested": ["passed-may-backfill", "inspection-failed"],
  "inspection-failed": ["inspection-requested"],
  "passed-may-backfill": ["as-built-submitted", "final"],
  "as-built-submitted": ["as-built-accepted", "as-built-rejected", "final"],
  "as-built-rejected": ["as-built-submitted"],
  "as-built-accepted": ["final"],
  emergency: ["submitted"],
  expired: ["extended"],
  "extension-asked": ["extended"],
};

/**
 * The steps that an office mostly records next, the likeliest first; after an extension those of where
 * the permit was. Each may follow (`nextStatesOf`); empty where nothing usual does.
 */
export function usualStepsOf(file: PermitFacts, permit: Pick<Permit, "id">): PermitState[] {
  const may = nextStatesOf(file, permit);
  const state = permitStateOf(file, permit);
  const before = stepsOf(file, permit).findLast((step) => !PAUSES.includes(step.state));
  const from = state === "extended" ? (before?.state ?? state) : state;
  return (USUAL[from] ?? []).filter((next) => may.includes(next));
}

const PAUSES: readonly PermitState[] = ["extension-asked", "extended", "expired"];

/** States of the work itself and of what follows it. */
const WORK_STATES: readonly PermitState[] = [
  "emergency",
  "working",
  "inspection-requested",
  "inspection-failed",
  "passed-may-backfill",
  "as-built-submitted",
  "as-built-rejected",
  "as-built-accepted",
];

function isWork(state: PermitState): boolean {
  return WORK_STATES.includes(state);
}

/** Work on the line has begun under one of its permits, and that permit is not done with. */
export function hasWorkBegun(file: PermitFacts & Pick<LineFile, "permits">): boolean {
  return file.permits.some(
    (permit) =>
      !isDoneWith(permitStateOf(file, permit)) &&
      stepsOf(file, permit).some(({ state }) => isWork(state)),
  );
}

/** The first step by which somebody recorded that work went on, under any permit; null before it. */
export function workBegun({ permitSteps }: PermitFacts): PermitStep | null {
  const steps = permitSteps.filter(({ state }) => isWork(state) || state === "final");
  return steps.toSorted((one, other) => one.on.localeCompare(other.on))[0] ?? null;
}

/** What a step of a permit lets people do, and holds may stop. */
export function deedsOfStep(state: PermitState, work: readonly Deed[]): readonly Deed[] {
  if (state === "submitted") return [{ stop: "submission", stretch: null }];
  return ASKED_AGAIN.includes(state) ? work : [];
}

/** The work begins, is looked at, or is buried: also where the step before was left out. */
const ASKED_AGAIN: readonly PermitState[] = [
  "emergency",
  "working",
  "inspection-requested",
  "passed-may-backfill",
];

/** Where the permit is: its last step; `drafting` before the first. */
export function permitStateOf(file: PermitFacts, permit: Pick<Permit, "id">): PermitState {
  return lastStepOf(file, permit)?.state ?? "drafting";
}

/** The permit's steps in the order of their days; of one day in the order of entry. */
export function stepsOf(file: PermitFacts, permit: Pick<Permit, "id">): PermitStep[] {
  return file.permitSteps
    .filter((step) => step.permitId === permit.id)
    .toSorted((one, other) => one.on.localeCompare(other.on));
}

/** The step that the permit took last; null before the first. */
export function lastStepOf(file: PermitFacts, permit: Pick<Permit, "id">): PermitStep | null {
  return stepsOf(file, permit).at(-1) ?? null;
}

const IN_FORCE: readonly PermitState[] = [
  "issued",
  "working",
  "inspection-requested",
  "inspection-failed",
  "passed-may-backfill",
  "as-built-submitted",
  "as-built-rejected",
  "as-built-accepted",
  "extension-asked",
  "extended",
];

/** Issued and neither final nor ended: work may go on under it, its day of expiry apart. */
export function isInForce(state: PermitState): boolean {
  return IN_FORCE.includes(state);
}

/** Final, expired, withdrawn or superseded: none of its clocks runs any more. */
export function isDoneWith(state: PermitState): boolean {
  return state === "expired" || PERMIT_MOVES[state].length === 0;
}

/** It came to nothing: no fee of it is owed any more. */
export function isNeverIssued(state: PermitState): boolean {
  return state === "withdrawn" || state === "superseded" || state === "denied";
}

const KIND_WORDS: Record<PermitKind, string> = {
  "side-sewer": "Side sewer permit",
  "street-use": "Street use permit",
  connection: "Connection permit",
  other: "Permit",
};

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
export const KIND_NAMES: Record<PermitKind, string> = {
  "side-sewer": "side sewer permit",
  "street-use": "street use permit",
  connection: "connection permit",
  other: "other permit",
};

/** `Side sewer permit SS-26-0818`; without a number its kind alone. */
export function permitName({ kind, number }: Pick<Permit, "kind" | "number">): string {
  return number === "" ? KIND_WORDS[kind] : `${KIND_WORDS[kind]} ${number}`;
}

/** `side sewer permit SS-26-0818 is approved, fees due`, inside a sentence. */
export function permitStanding(file: PermitFacts, permit: Permit): string {
  const words = `${permitName(permit)} ${STATE_WORDS[permitStateOf(file, permit)]}`;
  return `${words.slice(0, 1).toLowerCase()}${words.slice(1)}`;
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

/** Nothing more comes of it: neither work nor an inspection waits for it. */
export function isGivenUp(state: PermitState): boolean {
  return state === "withdrawn" || state === "superseded";
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
