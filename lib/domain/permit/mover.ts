import type { PermitState } from "../facts/permit.ts";

/** Whose move it is. */
export type PermitMover = "office" | "authority" | "crew" | "nobody";

const MOVER: Record<PermitState, PermitMover> = {
  drafting: "office",
  emergency: "office",
  "waiting-on-signatures": "office",
  submitted: "authority",
  "returned-incomplete": "office",
  "in-review": "authority",
  corrections: "office",
  denied: "office",
  appealed: "authority",
  "approved-fees-due": "office",
  issued: "crew",
  working: "crew",
  "inspection-requested": "authority",
  "inspection-failed": "crew",
  "passed-may-backfill": "office",
  "as-built-submitted": "authority",
  "as-built-rejected": "office",
  "as-built-accepted": "authority",
  final: "nobody",
  expired: "office",
  "extension-asked": "authority",
  extended: "crew",
  withdrawn: "nobody",
  superseded: "nobody",
};

/** Whose move it is in a state. */
export function moverOf(state: PermitState): PermitMover {
  return MOVER[state];
}
