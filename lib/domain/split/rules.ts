import type { Result } from "../../result.ts";
import type { SplitChoice, SplitRule } from "../facts/split.ts";
import type { Ground } from "../sharing/ground.ts";
import type { Plan, RuleMaker } from "./plan.ts";
import {
  equalRule,
  perUnitRule,
  singlePayerRule,
  upstreamOfFaultRule,
  weightsRule,
} from "./rules-anywhere.ts";
import { portionUsedRule, reachOwnerRule, recordedSharesRule } from "./rules-by-place.ts";

const RULES: Record<SplitRule, RuleMaker> = {
  equal: equalRule,
  "per-unit": perUnitRule,
  "portion-used": portionUsedRule,
  "upstream-of-fault": upstreamOfFaultRule,
  "reach-owner": reachOwnerRule,
  weights: weightsRule,
  "recorded-shares": recordedSharesRule,
  "single-payer": singlePayerRule,
};

/** The rule worked out for these people; or why it can't be, in words that say what to enter. */
export function planOf(ground: Ground, choice: SplitChoice): Result<Plan, string> {
  return RULES[choice.rule](ground, choice);
}
