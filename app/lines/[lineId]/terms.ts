import { LETTER_NAMES } from "#app/_components/letter-names.ts";
import type { Boundary, RulePattern, SharedRule, WorkKind } from "#lib/domain/facts/authority.ts";
import type { ClockEvent, ClockMeaning } from "#lib/domain/facts/clock-rule.ts";
import type { CallOutcome, CallPurpose } from "#lib/domain/facts/household-call.ts";
import type { Material } from "#lib/domain/facts/line.ts";
import { MATERIAL_WORDS as SENTENCE_WORDS } from "#lib/domain/facts/line-words.ts";

import type { InspectionResult } from "#lib/domain/facts/permit.ts";
import type { Place, Spread } from "#lib/domain/facts/scope.ts";
import type { UnknownShares } from "#lib/domain/facts/split.ts";
import type { UtilityAnswer, UtilityKind } from "#lib/domain/facts/utility-response.ts";
import type { Holder } from "#lib/domain/findings/reach-finding.ts";
import type { ChaseReason, ToldCell } from "#lib/domain/notices/told.ts";

// Every closed set that these pages show, in the trade's plain words.

/** Where the word stands alone, the material that nobody knows is named in full. */
export const MATERIAL_WORDS: Record<Material, string> = {
  ...SENTENCE_WORDS,
  unknown: "material unknown",
};

export const HOLDER_WORDS: Record<Holder, string> = {
  owners: "owners",
  authority: "the authority",
  unclear: "unclear",
};

export const PATTERN_WORDS: Record<RulePattern, string> = {
  "owners-to-main": "Owners own the pipe up to the main, but not the connection itself.",
  "owners-including-tap": "Owners own the pipe and the connection at the main: tap, tee or saddle.",
  "owners-from-outside-of-main":
    "The authority owns the main only; owners own everything that joins it.",
  "authority-in-right-of-way":
    "The authority owns the part in the right-of-way; owners own the rest.",
  "divided-at-cleanout":
    "The authority owns the part from the main to the cleanout; owners own the rest.",
  "owners-own-authority-mends-lower": "Owners own all of it; the authority repairs the lower part.",
  "by-kind-of-work":
    "Owners own all of it; below the boundary, the type of work decides who does it.",
  "authority-when-proven":
    "The lower part is the authority’s once the owner proves the defect is there.",
  unclear: "The authority itself says it is not clear.",
};

export const SHARED_WORDS: Record<SharedRule, string> = {
  "all-whose-flow-passes":
    "Among owners, everyone whose flow passes a section is responsible for it.",
  "next-downstream-tie-in":
    "Each owner is responsible down to the next tie-in; the lowest, to the main.",
  "all-connected-equally": "All connected owners are equally responsible for all of it.",
  "parties-decide": "The authority leaves it to the owners.",
  unclear: "How the owners share it is not clear.",
};

export const BOUNDARY_WORDS: Record<Boundary, string> = {
  "main-connection": "the main connection",
  "right-of-way-line": "the right-of-way line",
  curb: "the curb",
  "property-line": "the property line",
  cleanout: "the cleanout",
  foundation: "the foundation",
};

export const WORK_WORDS: Record<WorkKind, string> = {
  clearing: "clearing",
  repair: "repair",
  replacement: "replacement",
};

export const PLACE_WORDS: Record<Place, string> = {
  point: "at a point",
  stretch: "over a section",
  branch: "on a branch",
  general: "general",
};

export const SPREAD_WORDS: Record<Spread, string> = {
  "by-placed-cost": "prorated by located cost",
  equally: "equally",
};

export const UNKNOWN_SHARE_WORDS: Record<UnknownShares, string> = {
  carried: "covered by the others (recoverable)",
  "held-apart": "set aside until the owner is known",
};

/** The kinds of letter, as they stand alone. */
export const LETTER_WORDS = LETTER_NAMES;

export const TOLD_WORDS: Record<ToldCell["state"], string> = {
  draft: "draft",
  sent: "sent",
  "on-its-way": "in transit",
  mailed: "mailed, delivery not confirmed",
  left: "left at the site, delivery not confirmed",
  unproven: "reported delivered, no proof on file",
  arrived: "delivered",
  counts: "counts as delivered",
  returned: "returned to sender",
  unclaimed: "unclaimed",
  failed: "not delivered",
};

/** How a letter stands in two: what was done, with which a day goes on, and what is not known of it. */
export function toldParts(state: ToldCell["state"]): { done: string; butNot: string } {
  const [done = "", butNot = ""] = TOLD_WORDS[state].split(", ");
  return { done, butNot: butNot === "" ? "" : `; ${butNot}` };
}

/** What shows that a letter arrived. */
export const PROOF_WORDS: Record<NonNullable<ToldCell["provenBy"]>, string> = {
  answer: "they replied",
  signature: "they signed",
  "handed-over": "handed over",
  receipt: "tracking or receipt",
  attempted: "offered, not collected",
  photo: "posted with a photo",
  sent: "sent, did not come back",
};

export const CALL_PURPOSE_WORDS: Record<CallPurpose, string> = {
  "drain-pause": "Drain shutdown",
  "test-visit": "Test visit",
};

export const CALL_OUTCOME_WORDS: Record<CallOutcome, string> = {
  agreed: "agreed",
  "not-agreed": "did not agree",
  "not-reached": "not reached",
};

export const CHASE_WORDS: Record<ChaseReason, string> = {
  "came-back": "Returned",
  "reply-late": "Reply overdue",
  "not-settled": "Replied, not settled",
  "reply-awaited": "Reply awaited",
  "delivery-unknown": "Delivery not confirmed",
};

export const UTILITY_KIND_WORDS: Record<UtilityKind, string> = {
  gas: "gas",
  electric: "electric",
  water: "water",
  sewer: "sewer",
  "storm-drain": "storm drain",
  "phone-or-cable": "phone or cable",
  other: "other",
};

export const UTILITY_ANSWER_WORDS: Record<UtilityAnswer, string> = {
  awaited: "no response yet",
  marked: "marked",
  clear: "clear: nothing here",
  "marked-in-part": "marked in part",
  "wants-time": "asked for more time",
  "wants-to-meet": "wants to meet on site",
  "no-access": "could not get in",
};

export const INSPECTION_WORDS: Record<InspectionResult, string> = {
  booked: "scheduled",
  passed: "passed",
  "passed-in-part": "passed in part",
  failed: "failed",
  cancelled: "canceled",
};

export const CLOCK_EVENT_WORDS: Record<ClockEvent, string> = {
  "letter-sent": "letter sent",
  "certified-letter-mailed": "certified letter mailed",
  "split-sent": "split sent",
  "locate-called": "locate called in",
  "work-begins": "work begins",
  "permit-issued": "permit issued",
  "permit-submitted": "permit submitted",
  "corrections-asked": "corrections required",
  "permit-denied": "permit denied",
  "permit-expires": "permit expires",
  "emergency-work": "emergency work began",
  "authority-order": "order from the authority",
  "tenant-entry": "entry into a home",
  "dye-test": "dye test",
  "drains-paused": "drain shutdown",
  "inspection-booked": "inspection scheduled",
  "work-ends": "work ends",
  "drains-back": "drains are back on",
  "street-closed": "street parking closed",
};

export const MEANING_WORDS: Record<ClockMeaning, string> = {
  "due-by": "due by",
  "not-before": "not before",
  "not-after": "not after",
  expires: "expires on",
};

export interface Choice<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly also?: readonly string[];
}

/** A closed set as options of a select or a grid column, with the words that are taken for one. */
export function optionsOf<T extends string>(
  words: Record<T, string>,
  synonyms: Partial<Record<T, readonly string[]>> = {},
): Choice<T>[] {
  return (Object.keys(words) as T[]).map((value) => {
    const also = synonyms[value];
    const choice = { value, label: words[value] };
    return also === undefined ? choice : { ...choice, also };
  });
}
