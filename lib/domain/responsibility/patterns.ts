import {
  type Boundary,
  type ResponsibilityRule,
  type RulePattern,
  WORK_KINDS,
  type WorkKind,
} from "../facts/authority.ts";
import type { Holder } from "../findings/reach-finding.ts";
import { sayList } from "../say/say-list.ts";

/** Where a reach lies against the rule's boundary; `unknown` while the boundary is not entered. */
export type Part = "lower" | "upper" | "unknown";

export interface Spot {
  readonly part: Part;
  /** `the right-of-way line at 12.0 ft`; for an unknown one `the right-of-way line`. */
  readonly boundary: string;
  /** The reach begins at the main connection. */
  readonly atMain: boolean;
  /** Breaks seen on this reach, in words; empty where none is placed there. */
  readonly breaks: string;
}

export interface Verdict {
  readonly holder: Holder;
  readonly mender: Holder;
  /** Who does each kind of work, where a rule tells them apart. */
  readonly menders?: Record<WorkKind, Holder>;
  readonly reason: string;
}

/** What stands at a boundary, as it reads inside a sentence. */
export const BOUNDARY_WORDS: Record<Boundary, string> = {
  "main-connection": "main connection",
  "right-of-way-line": "right-of-way line",
  curb: "curb",
  "property-line": "property line",
  cleanout: "cleanout",
  foundation: "foundation",
};

/** The nine patterns found in US codes, each as a function of where the reach lies. */
const PATTERNS: Record<RulePattern, (spot: Spot, kinds: KindRule) => Verdict> = {
  "owners-to-main": (spot) =>
    owners("Owners own and repair the pipe up to the main, but not the connection itself.", {
      ...spot,
      tap: "The connection at the main belongs to the authority.",
    }),
  "owners-including-tap": (spot) =>
    owners("Owners own and repair the pipe up to the main, including the connection itself.", {
      ...spot,
      tap: "The tap, tee or saddle at the main belongs to the owners.",
    }),
  "owners-from-outside-of-main": (spot) =>
    owners(
      "The authority owns the main only; the pipe from its outside wall up belongs to the owners.",
      {
        ...spot,
        tap: "A fitting on the outside of the main belongs to the owners.",
      },
    ),
  "authority-in-right-of-way": (spot, rule) =>
    divided(spot, rule, { holder: "authority", start: "" }),
  "divided-at-cleanout": (spot, rule) => divided(spot, rule, { holder: "authority", start: "" }),
  "owners-own-authority-mends-lower": (spot, rule) =>
    divided(spot, rule, { holder: "owners", start: "Owners own all of the pipe." }),
  "by-kind-of-work": (spot, rule) =>
    divided(spot, rule, {
      holder: "owners",
      start: "Owners own the pipe; the type of work decides who does it.",
    }),
  "authority-when-proven": whenProven,
  unclear: () => unclear("The authority’s own rule says it is not clear who is responsible here."),
};

/** Who owns and who repairs a reach under a rule, with the reason in words. */
export function verdictOf(
  rule: Pick<ResponsibilityRule, "pattern"> & KindRule,
  spot: Spot,
): Verdict {
  return PATTERNS[rule.pattern](spot, rule);
}

/** Who does each kind of work below the boundary, as the rule has it. */
type KindRule = Pick<ResponsibilityRule, "clearingBy" | "repairBy" | "replacementBy">;

export function unclear(reason: string): Verdict {
  return { holder: "unclear", mender: "unclear", reason };
}

function owners(reason: string, { atMain, tap }: Spot & { readonly tap: string }): Verdict {
  return { holder: "owners", mender: "owners", reason: atMain ? `${reason} ${tap}` : reason };
}

/** Whose the part below the boundary is: the authority’s, or the owners’ all the same. */
interface Below {
  readonly holder: "authority" | "owners";
  /** Said of the pipe before its parts are told apart; empty where the parts say it all. */
  readonly start: string;
}

/**
 * A pipe that the rule divides at a place. Below it, who clears, repairs and replaces is the rule's
 * own data, whoever owns it: many authorities repair there and leave clearing to the owner, others
 * clear their own side.
 */
function divided(spot: Spot, rule: KindRule, { holder, start }: Below): Verdict {
  const menders = kindsOf(rule);
  const lead = start === "" ? "" : `${start} `;
  const owned = holder === "authority" ? " the pipe belongs to the authority" : "";
  const verdicts: Record<Part, Verdict> = {
    lower: {
      holder,
      mender: menders.repair,
      menders,
      reason: `${lead}From the main up to ${spot.boundary}${owned}: ${sayKinds(menders)}.`,
    },
    upper: {
      holder: "owners",
      mender: "owners",
      reason: `${lead}Above ${spot.boundary} ${holder === "authority" ? "the pipe" : "all of it"} belongs to the owners.`,
    },
    unknown: {
      ...unplaced(menders, `${lead}${notEntered(spot.boundary)}`),
      holder: holder === "authority" ? "unclear" : "owners",
    },
  };
  return verdicts[spot.part];
}

function kindsOf({ clearingBy, repairBy, replacementBy }: KindRule): Record<WorkKind, Holder> {
  return { clearing: clearingBy, repair: repairBy, replacement: replacementBy };
}

/** While the boundary is not entered, only work that owners do on both sides of it is settled. */
function unplaced(below: Record<WorkKind, Holder>, reason: string): Verdict {
  const either = (kind: WorkKind): Holder => (below[kind] === "owners" ? "owners" : "unclear");
  const menders = {
    clearing: either("clearing"),
    repair: either("repair"),
    replacement: either("replacement"),
  };
  return { holder: "owners", mender: menders.repair, menders, reason };
}

/** `clearing is up to the owners; repair and replacement are up to the authority`. */
function sayKinds(menders: Record<WorkKind, Holder>): string {
  const holders: readonly Holder[] = ["owners", "authority", "unclear"];
  return holders
    .flatMap((holder) => {
      const kinds = WORK_KINDS.filter((kind) => menders[kind] === holder);
      const verb = kinds.length === 1 ? "is" : "are";
      return kinds.length === 0 ? [] : [`${sayList(kinds)} ${verb} ${UP_TO[holder]}`];
    })
    .join("; ");
}

const UP_TO: Record<Holder, string> = {
  owners: "up to the owners",
  authority: "up to the authority",
  unclear: "not determined by the rule",
};

/**
 * What is proven is the break, so that only the reach that it lies on is open; the rest of the lower
 * part stays the owners’ meanwhile. A break is shown on a video with measurements; a root, grease or
 * another blockage is none.
 */
function whenProven(spot: Spot, rule: KindRule): Verdict {
  if (spot.part !== "lower") return divided(spot, rule, { holder: "authority", start: "" });
  const start = `From the main up to ${spot.boundary}`;
  if (spot.breaks === "") {
    return {
      holder: "owners",
      mender: "owners",
      reason: `${start} the pipe counts as the owners’ until they prove a break there. No break with a station is noted in this section; roots, grease and other blockages are not proof.`,
    };
  }
  const { menders } = unplaced(kindsOf(rule), "");
  return {
    holder: "unclear",
    mender: "unclear",
    menders: {
      clearing: menders?.clearing ?? "unclear",
      repair: "unclear",
      replacement: "unclear",
    },
    reason: `${start} the authority repairs what is proven broken there. ${spot.breaks}: submit that to the authority, with the video and its measurements. It stays unclear until the authority accepts it.`,
  };
}

function notEntered(boundary: string): string {
  return `The rule divides the line at ${boundary}, and its station is not entered. Enter it.`;
}
