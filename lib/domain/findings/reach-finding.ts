import type { WorkKind } from "../facts/authority.ts";
import type { Material } from "../facts/line.ts";
import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";

const HOLDERS = ["owners", "authority", "unclear"] as const;
/** Who is responsible for a reach. */
export type Holder = (typeof HOLDERS)[number];

/** A stretch between two neighboring points where something changes. */
export interface ReachFinding {
  readonly from: Cft;
  readonly to: Cft;
  readonly material: Material;
  readonly diameter: number | null;
  /** Properties whose flow passes here, in order of their tie-ins. */
  readonly servedBy: readonly string[];
  /** Live tie-ins above here whose owner is unknown. */
  readonly unknownTieIns: readonly string[];
  readonly holder: Holder;
  /** Who repairs, where that is not the holder (the authority for owners' lower part, say). */
  readonly mender: Holder;
  /** Who does each kind of work here: `mender` for all, save under a rule by kind of work. */
  readonly menders: Record<WorkKind, Holder>;
  /** Among the owners: who is responsible for this reach under the shared rule; empty where not owners or unclear. */
  readonly answerable: readonly string[];
  readonly reason: string;
  readonly citation: string;
  /** Cost of scope items placed on this reach. */
  readonly cost: Cents;
  /** Of `cost`: work of kinds that the authority does here. */
  readonly authorityCost: Cents;
  /** Lots crossed here that their owner does not use the pipe for. */
  readonly crossedBy: readonly string[];
}
