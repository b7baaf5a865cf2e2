import { ok, type Result } from "../../result.ts";
import type { SplitChoice } from "../facts/split.ts";
import type { Cft } from "../length/station.ts";
import type { Ratio } from "../money/ratio.ts";
import { type Allotment, equalAllotment } from "../sharing/allotment.ts";
import type { Behind, Ground } from "../sharing/ground.ts";

/** How one rule divides work, worked out for the people of one file. */
export type Plan = FreePlan | LocatedPlan;

/** Where the work lies makes no difference. */
interface FreePlan {
  readonly kind: "free";
  readonly allotment: Allotment;
  /** One payer for everything, general work and branches too. */
  readonly takesAll: boolean;
  readonly behind: (who: Behind) => Allotment | null;
}

/** Each stretch of the trunk has its own payers. */
export interface LocatedPlan {
  readonly kind: "located";
  /** Stations, rising, at which the payers change. */
  readonly cuts: readonly Cft[];
  /** Who pays for a stretch without a cut inside it (a point: both ends the same); null: nobody. */
  readonly at: (from: Cft, to: Cft) => Allotment | null;
  /** Why nobody pays there, after the item and its place: `nobody's flow passes there`. */
  readonly nobody: string;
  /** What to do about it. */
  readonly remedy: string;
  readonly behind: (who: Behind) => Allotment | null;
  /**
   * A person's part of a stretch, as a length: a shortcut for sums over very many pieces, where
   * those who pay for the first piece are all who pay for any. Null: add the pieces up.
   */
  readonly portion: ((index: number, from: Cft, to: Cft) => Ratio | null) | null;
}

/** A rule as a function of the people and the choice; refuses in words that say what to enter. */
export type RuleMaker = (ground: Ground, choice: SplitChoice) => Result<Plan, string>;

/** A plan under which place makes no difference. */
export function freePlan(
  allotment: Allotment,
  behind: (who: Behind) => Allotment | null,
): Result<Plan, string> {
  return ok({ kind: "free", allotment, takesAll: false, behind });
}

/** Those behind a branch, equally; where only unknown owners are, everyone carries it. */
export function equallyBehind(ground: Ground): (who: Behind) => Allotment | null {
  return (who) => {
    if (who.present.length > 0) return equalAllotment(who.present, " behind it");
    return who.absent ? carriedByAll(ground) : null;
  };
}

/** What only unknown owners use, while others carry them: all who are known, equally. */
export function carriedByAll(ground: Ground): Allotment | null {
  if (ground.connected.length === 0) return null;
  return equalAllotment(ground.connected, ", carried for an unknown owner");
}
