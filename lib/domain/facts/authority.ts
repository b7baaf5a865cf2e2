import type { Cents } from "../money/cents.ts";
import type { Day } from "../time/day.ts";
import type { ClockRule, Holiday } from "./clock-rule.ts";
import type { Address } from "./party.ts";
import type { PermitKind } from "./permit.ts";

/**
 * Who owns and who mends, by place on the line. Patterns found in US codes;
 * which one applies, up to which boundary, is the authority's data.
 */
export const RULE_PATTERNS = [
  /** Owners up to, not including, the connection at the main. */
  "owners-to-main",
  /** Owners including the tap, tee or saddle. */
  "owners-including-tap",
  /** The authority stops at the outside of the main. */
  "owners-from-outside-of-main",
  /** The authority has the part in the right-of-way. */
  "authority-in-right-of-way",
  /** Divided at a cleanout; while none is entered, unclear. */
  "divided-at-cleanout",
  /** Owners own all; below the boundary the authority does what the rule gives it. */
  "owners-own-authority-mends-lower",
  /** Owners hold all; below the boundary each kind of work is whose the rule says. */
  "by-kind-of-work",
  /** The lower part is the authority's once the owner proves the fault is there. */
  "authority-when-proven",
  /** The code or the authority says that it is not clear. */
  "unclear",
] as const;
export type RulePattern = (typeof RULE_PATTERNS)[number];

/** Which owners answer for the owners' part of the shared pipe. */
export const SHARED_RULES = [
  "all-whose-flow-passes",
  "next-downstream-tie-in",
  "all-connected-equally",
  "parties-decide",
  "unclear",
] as const;
export type SharedRule = (typeof SHARED_RULES)[number];

export const BOUNDARIES = [
  "main-connection",
  "right-of-way-line",
  "curb",
  "property-line",
  "cleanout",
  "foundation",
] as const;
export type Boundary = (typeof BOUNDARIES)[number];

export const WORK_KINDS = ["clearing", "repair", "replacement"] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Who does one kind of work below the boundary, where a rule divides the line. */
export const WORK_HOLDERS = ["owners", "authority", "unclear"] as const;
export type WorkHolder = (typeof WORK_HOLDERS)[number];

/** One responsibility rule, with where it is written and when that was last looked at. */
export interface ResponsibilityRule {
  readonly id: string;
  readonly authorityId: string;
  readonly title: string;
  readonly pattern: RulePattern;
  readonly boundary: Boundary;
  readonly sharedRule: SharedRule;
  /** Who does each kind of work below the boundary; of no meaning where the rule divides nothing. */
  readonly clearingBy: WorkHolder;
  readonly repairBy: WorkHolder;
  readonly replacementBy: WorkHolder;
  readonly citation: string;
  readonly url: string;
  readonly asOf: Day;
  readonly note: string;
}

/** By when the authority wants something: with the application, before work begins, before the final. */
export const REQUIREMENT_DUES = ["submission", "work", "final"] as const;
export type RequirementDue = (typeof REQUIREMENT_DUES)[number];

/** One thing that the authority wants: in the packet, or later. */
export interface Requirement {
  readonly id: string;
  readonly authorityId: string;
  readonly sheet: SheetKind;
  readonly title: string;
  readonly detail: string;
  readonly citation: string;
  readonly asOf: Day;
  readonly mandatory: boolean;
  readonly due: RequirementDue;
  /** Where what it asks for is a permit of this kind, in force while the work goes on. */
  readonly permitKind: PermitKind | null;
}

export const SHEET_KINDS = [
  "application",
  "line-drawing",
  "schedule-of-connections",
  "observation-log",
  "tests",
  "capacity",
  "scope",
  "crew-safety",
  "responsibility",
  "split",
  "consents",
  "proof-of-notice",
  "contractor-standing",
  "holds-and-waivers",
  "as-built",
  "upload",
] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export interface Fee {
  readonly id: string;
  readonly authorityId: string;
  readonly title: string;
  readonly amount: Cents;
  readonly per: "permit" | "connection" | "inspection";
  readonly citation: string;
  readonly asOf: Day;
}

export const REFUSAL_STEP_KINDS = [
  "notice",
  "mediation",
  "authority-order",
  "arbitration",
  "court",
  "other",
] as const;
export type RefusalStepKind = (typeof REFUSAL_STEP_KINDS)[number];

/** A lawful step that is open where a neighbor refuses, as the authority or the code has it. */
export interface RefusalStep {
  readonly id: string;
  readonly authorityId: string;
  readonly kind: RefusalStepKind;
  readonly title: string;
  readonly detail: string;
  /** Days to wait after the step before; null where nothing is said. */
  readonly days: number | null;
  readonly citation: string;
  readonly asOf: Day;
}

export interface Authority {
  readonly id: string;
  readonly name: string;
  readonly office: string;
  readonly address: Address;
  readonly phone: string;
  readonly email: string;
  readonly note: string;
  readonly rules: readonly ResponsibilityRule[];
  readonly requirements: readonly Requirement[];
  readonly fees: readonly Fee[];
  readonly clockRules: readonly ClockRule[];
  readonly holidays: readonly Holiday[];
  /** In the order in which they may be taken. */
  readonly refusalSteps: readonly RefusalStep[];
}

/** A recorded agreement on the shared pipe. It outranks every default. */
export interface Agreement {
  readonly id: string;
  readonly title: string;
  readonly recordingNumber: string;
  readonly recordedOn: Day | null;
  /** The part of the trunk that it covers; null: to the end. */
  readonly fromStation: number | null;
  readonly toStation: number | null;
  readonly terms: string;
  readonly shares: readonly AgreementShare[];
}

/** Shares are parts of the sum of all parts in the same agreement (`1` of `3`, or `33` of `100`). */
interface AgreementShare {
  readonly propertyId: string;
  readonly parts: number;
}
