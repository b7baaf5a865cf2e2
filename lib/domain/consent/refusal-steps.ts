import { sentDayOf } from "../calendar/happenings.ts";
import { REFUSAL_STEP_KINDS, type RefusalStep, type RefusalStepKind } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";

/** A spoken no, an objection that nobody has dealt with, or no answer in time. */
export type Withholding = "refused" | "objected" | "silent";

/** From what the steps are counted. */
interface Counted {
  readonly propertyId: string;
  readonly how: Withholding;
  readonly since: Day;
}

/** A lawful step as the authority’s data have it, with the earliest day for it. */
export interface PathStep {
  readonly step: RefusalStep;
  /** Null where the step before has no day, or nothing says how long to wait after it. */
  readonly earliest: Day | null;
  /** The day on which it was taken, as the file shows. */
  readonly takenOn: Day | null;
  readonly counted: string;
}

/** The authority’s steps in their order, each counted from the one before, the first from the no. */
export function pathSteps(file: LineFile, withheld: Counted): PathStep[] {
  const steps: PathStep[] = [];
  let before: Day | null = withheld.since;
  for (const [at, step] of (file.authority?.refusalSteps ?? []).entries()) {
    const takenOn = takenDay(file, withheld, step.kind);
    const earliest: Day | null =
      before === null || (at > 0 && step.days === null) ? null : addDays(before, step.days ?? 0);
    steps.push({ step, takenOn, earliest, counted: countedWords(step, { at, before, withheld }) });
    before = takenOn ?? earliest;
  }
  return steps;
}

const FIRST_WORDS: Record<Withholding, string> = {
  refused: "the refusal",
  objected: "the objection",
  silent: "the reply-by date",
};

function countedWords(
  { days }: RefusalStep,
  { at, before, withheld }: { at: number; before: Day | null; withheld: Counted },
): string {
  const from = at > 0 ? "the step before" : FIRST_WORDS[withheld.how];
  if (before === null) return "the step before has no date yet";
  if (days === null) return at === 0 ? "no waiting period stated" : "waiting period not stated";
  return `${days} ${days === 1 ? "day" : "days"} after ${from}`;
}

/** Whether the file shows that a step was taken since: a demand that was sent, an order that came. */
function takenDay(file: LineFile, withheld: Counted, kind: RefusalStepKind): Day | null {
  const days = TAKEN[kind]?.(file, withheld) ?? [];
  return days.filter((day) => day >= withheld.since).toSorted()[0] ?? null;
}

const TAKEN: Partial<Record<RefusalStepKind, (file: LineFile, withheld: Counted) => Day[]>> = {
  notice: (file, { propertyId }) =>
    file.notices
      .filter((notice) => notice.kind === "share-demand" && notice.propertyId === propertyId)
      .flatMap((notice) => sentDayOf(file, notice) ?? []),
  "authority-order": ({ events }) =>
    events.filter(({ event }) => event === "authority-order").map(({ on }) => on),
};

const KIND_WORDS: Record<Exclude<RefusalStepKind, "other">, string> = {
  notice: "a written notice",
  mediation: "mediation",
  "authority-order": "an order by the authority",
  arbitration: "arbitration",
  court: "a court",
};

/** What the authority’s data leave open about a refusal. */
export function notSaidBy({ authority }: LineFile): string[] {
  if (authority === null) return ["No authority is chosen for this line."];
  if (authority.refusalSteps.length === 0)
    return [`No steps after a refusal are entered for ${authority.name}.`];
  const kinds = new Set(authority.refusalSteps.map(({ kind }) => kind));
  const missing = REFUSAL_STEP_KINDS.flatMap((kind) =>
    kind === "other" || kinds.has(kind) ? [] : [KIND_WORDS[kind]],
  );
  const uncounted = authority.refusalSteps
    .filter(({ days }, at) => at > 0 && days === null)
    .map(({ title }) => `No waiting period before “${title}” is stated.`);
  const uncited = authority.refusalSteps
    .filter(({ citation }) => citation.trim() === "")
    .map(({ title }) => `No citation for “${title}”.`);
  return [
    ...(missing.length === 0 ? [] : [`Nothing is entered on ${missing.join(", ")}.`]),
    ...uncounted,
    ...uncited,
  ];
}
