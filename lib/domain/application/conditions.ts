import type { Requirement } from "../facts/authority.ts";
import type { ConditionFact, RequirementCondition } from "../facts/permit-rule.ts";
import { type Answer, anyOf, type ConditionSite, no, unknown } from "./answer.ts";
import {
  crossedWithoutEasement,
  dugInStreet,
  dugOnLot,
  lotCrossed,
  streetCut,
} from "./land-conditions.ts";
import { buildingsOver, depthOver, undocumented, valueOver } from "./limit-conditions.ts";
import { branchCapped, pipeBurst, pipeLined, somethingDug } from "./work-conditions.ts";

/** What is said of a condition, and whether it takes a limit. */
interface ConditionWords {
  /** Completes “if”. */
  readonly words: string;
  /** What the limit counts; null: it takes none. */
  readonly limit: "feet" | "buildings" | "dollars" | null;
}

export const CONDITION_WORDS: Readonly<Record<ConditionFact, ConditionWords>> = {
  "something-dug": { words: "anything is dug", limit: null },
  "dug-in-right-of-way": { words: "the right-of-way is dug", limit: null },
  "dug-on-lot": { words: "a lot is dug", limit: null },
  "depth-over": { words: "the trench is deeper than", limit: "feet" },
  "street-cut": { words: "the street surface is cut", limit: null },
  "lot-crossed": { words: "a lot is crossed", limit: null },
  "crossed-without-easement": { words: "a crossed lot has no easement", limit: null },
  "pipe-lined": { words: "pipe is lined", limit: null },
  "pipe-burst": { words: "pipe is burst", limit: null },
  "branch-capped": { words: "a branch is capped", limit: null },
  "undocumented-tie-in": { words: "a tie-in is undocumented", limit: null },
  "buildings-over": { words: "more buildings are connected than", limit: "buildings" },
  "value-over": { words: "the work is valued over", limit: "dollars" },
};

const ANSWERS: Readonly<Record<ConditionFact, (site: ConditionSite, limit: number) => Answer>> = {
  "something-dug": somethingDug,
  "dug-in-right-of-way": dugInStreet,
  "dug-on-lot": dugOnLot,
  "depth-over": depthOver,
  "street-cut": streetCut,
  "lot-crossed": lotCrossed,
  "crossed-without-easement": crossedWithoutEasement,
  "pipe-lined": pipeLined,
  "pipe-burst": pipeBurst,
  "branch-capped": branchCapped,
  "undocumented-tie-in": undocumented,
  "buildings-over": buildingsOver,
  "value-over": valueOver,
};

/** Whether a condition holds on this line, from the facts on file. */
export function answerTo(condition: RequirementCondition, site: ConditionSite): Answer {
  const { limit } = CONDITION_WORDS[condition.fact];
  if (limit !== null && condition.limit === null)
    return unknown(`no limit in ${limit} is entered with the condition`);
  return ANSWERS[condition.fact](site, condition.limit ?? 0);
}

/** Whether a requirement applies on this line. */
export interface Applies {
  /** `always` where it hangs on nothing; `unknown` counts as if it applied. */
  readonly applies: "always" | "yes" | "no" | "unknown";
  /** One sentence with why; empty where it always applies. */
  readonly sentence: string;
}

/** Whether a requirement applies: any one of its conditions is enough, and an unknown one counts. */
export function requirementApplies({ id }: Pick<Requirement, "id">, site: ConditionSite): Applies {
  const conditions = (site.file.authority?.conditions ?? []).filter(
    ({ requirementId }) => requirementId === id,
  );
  if (conditions.length === 0) return { applies: "always", sentence: "" };
  const answers = conditions.map((condition) => answerTo(condition, site));
  const { answer, because } = anyOf(
    answers,
    no([...new Set(answers.map((each) => each.because))].join("; ")),
  );
  if (answer === "yes") return { applies: "yes", sentence: `Applies because ${because}.` };
  if (answer === "unknown")
    return { applies: "unknown", sentence: `Counts as applying until this is known: ${because}.` };
  return { applies: "no", sentence: `Does not apply: ${because}.` };
}

/** True unless its conditions say for sure that it does not apply here. */
export function mayApply(requirement: Pick<Requirement, "id">, site: ConditionSite): boolean {
  return requirementApplies(requirement, site).applies !== "no";
}
