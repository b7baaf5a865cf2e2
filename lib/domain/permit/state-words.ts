import type { PermitKind, PermitState, RequirementState } from "../facts/permit.ts";

/** What a kind of permit is called, where it stands alone. */
export const PERMIT_KIND_WORDS: Record<PermitKind, string> = {
  "side-sewer": "Side sewer permit",
  "street-use": "Street use permit",
  connection: "Connection permit",
  other: "Other permit",
};

/** Where a permit is, in a list or after a comma; in a sentence `permitStanding` (say.ts) says it. */
export const PERMIT_STATE_WORDS: Record<PermitState, string> = {
  drafting: "being drafted",
  emergency: "emergency work, permit afterward",
  "waiting-on-signatures": "waiting for signatures or recording",
  submitted: "submitted",
  "returned-incomplete": "returned, incomplete",
  denied: "denied",
  appealed: "denial appealed",
  "in-review": "in review",
  corrections: "corrections required",
  "approved-fees-due": "approved, fees due",
  issued: "issued",
  working: "work in progress",
  "inspection-requested": "inspection requested",
  "inspection-failed": "inspection failed",
  "passed-may-backfill": "passed, OK to backfill",
  "as-built-submitted": "as-built submitted",
  "as-built-rejected": "as-built rejected",
  "as-built-accepted": "as-built accepted",
  final: "final",
  expired: "expired",
  "extension-asked": "extension asked for",
  extended: "extended",
  withdrawn: "withdrawn",
  superseded: "superseded",
};

/** How one thing that the authority asks for stands. */
export const REQUIREMENT_WORDS: Record<RequirementState, string> = {
  "in-hand": "on file",
  missing: "missing",
  "does-not-apply": "not applicable",
};
