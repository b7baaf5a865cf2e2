import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState, PermitStep } from "../facts/permit.ts";
import type { Deed } from "../stops/stopped-by.ts";
import { nextPermitStates, UNDER_WAY } from "./moves.ts";

export type PermitFacts = Pick<LineFile, "permitSteps">;

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
const WORK_STATES: readonly PermitState[] = ["emergency", ...UNDER_WAY];

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

const IN_FORCE: readonly PermitState[] = ["issued", ...UNDER_WAY, "extension-asked", "extended"];

/** Issued and neither final nor ended: work may go on under it, its day of expiry apart. */
export function isInForce(state: PermitState): boolean {
  return IN_FORCE.includes(state);
}

/** Final, expired, withdrawn or superseded: none of its clocks runs any more. */
export function isDoneWith(state: PermitState): boolean {
  return state === "expired" || nextPermitStates(state).length === 0;
}

/** It came to nothing: no fee of it is owed any more. */
export function isNeverIssued(state: PermitState): boolean {
  return state === "withdrawn" || state === "superseded" || state === "denied";
}

/** Nothing more comes of it: neither work nor an inspection waits for it. */
export function isGivenUp(state: PermitState): boolean {
  return state === "withdrawn" || state === "superseded";
}
