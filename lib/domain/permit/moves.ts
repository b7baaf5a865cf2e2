import type { PermitState } from "../facts/permit.ts";

/** From the first day of work to the accepted as-built, in the usual order. */
export const UNDER_WAY: readonly PermitState[] = [
  "working",
  "inspection-requested",
  "inspection-failed",
  "passed-may-backfill",
  "as-built-submitted",
  "as-built-rejected",
  "as-built-accepted",
];

const EXTENSION: readonly PermitState[] = ["extension-asked", "extended", "expired"];
const GIVEN_UP: readonly PermitState[] = ["withdrawn", "superseded"];

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
  issued: ["working", "inspection-requested", ...EXTENSION, ...GIVEN_UP],
  working: ["inspection-requested", ...EXTENSION, ...GIVEN_UP],
  "inspection-requested": ["passed-may-backfill", "inspection-failed", "working", ...EXTENSION],
  "inspection-failed": ["working", "inspection-requested", ...EXTENSION],
  "passed-may-backfill": [
    "as-built-submitted",
    "final",
    "working",
    "inspection-requested",
    ...EXTENSION,
  ],
  "as-built-submitted": ["as-built-accepted", "final", "as-built-rejected", ...EXTENSION],
  "as-built-rejected": ["as-built-submitted", ...EXTENSION],
  "as-built-accepted": ["final", "as-built-submitted", ...EXTENSION],
  final: [],
  expired: ["extended", "superseded"],
  "extension-asked": ["extended", ...UNDER_WAY, "final", "expired", ...GIVEN_UP],
  extended: [...UNDER_WAY, "final", ...EXTENSION, ...GIVEN_UP],
  withdrawn: [],
  superseded: [],
};

/** The states that may follow; the likeliest first, empty where the permit is done with. */
export function nextPermitStates(state: PermitState): PermitState[] {
  return [...PERMIT_MOVES[state]];
}
