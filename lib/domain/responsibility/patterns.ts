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

/**
 * The nine patterns found in US codes (Seattle, Riverbank, Portland TX, Lynnwood, Clark Regional,
 * San Francisco, San Diego, Durango, Portland OR), each as a function of where the reach lies.
 */
const PATTERNS: Record<RulePattern, (spot: Spot, kinds: KindRule) => Verdict> = {
  "owners-to-main": (spot) =>
    owners("Owners own and mend the pipe up to the main, without the connection itself.", {
      ...spot,
      tap: "The connection at the main is the authority’s.",
    }),
  "owners-including-tap": (spot) =>
    owners("Owners own and mend the pipe up to the main, with the connection itself.", {
      ...spot,
      tap: "The tap, tee or saddle at the main is the owners’.",
    }),
  "owners-from-outside-of-main": (spot) =>
    owners(
      "The authority stops at the outside of the main; the pipe from there up is the owners’.",
      {
        ...spot,
        tap: "A fitting on the outside of the main is the owners’.",
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
      start: "Owners hold the pipe; who works on it goes by the kind of work.",
    }),
  "authority-when-proven": whenProven,
  unclear: () => unclear("The authority’s own rule says that it is not clear who answers here."),
};

/** Who holds and who mends a reach under a rule, with the reason in words. */
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
 * own data, whoever holds it: San Francisco repairs and the owner clears (sfpuc.gov, How to Take Care
 * of Your Sewer Lateral); so in the District of Columbia (21 DCMR 202.1 and 204.3) and in Lynnwood
 * (Sewer Line Cleaning, roles and responsibilities); Clark Regional clears its own side
 * (crwwd.com, What do I do if I have a sewer stoppage).
 */
function divided(spot: Spot, rule: KindRule, { holder, start }: Below): Verdict {
  const menders = kindsOf(rule);
  const lead = start === "" ? "" : `${start} `;
  const owned = holder === "authority" ? " the pipe is the authority’s" : "";
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
      reason: `${lead}Above ${spot.boundary} ${holder === "authority" ? "the pipe" : "all of it"} is the owners’.`,
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

/** `clearing is the owners’; repair and replacement are the authority’s`. */
function sayKinds(menders: Record<WorkKind, Holder>): string {
  const holders: readonly Holder[] = ["owners", "authority", "unclear"];
  return holders
    .flatMap((holder) => {
      const kinds = WORK_KINDS.filter((kind) => menders[kind] === holder);
      const verb = kinds.length === 1 ? "is" : "are";
      return kinds.length === 0 ? [] : [`${sayList(kinds)} ${verb} ${POSSESSED[holder]}`];
    })
    .join("; ");
}

const POSSESSED: Record<Holder, string> = {
  owners: "the owners’",
  authority: "the authority’s",
  unclear: "not settled by the rule",
};

/**
 * What is proven is the break, so that only the stretch that it lies on is open; the rest of the lower
 * part stays the owners’ meanwhile. Durango (durangogov.org, Property Owner’s Responsibilities): a break, shown on a video with measurements, and no root, grease or other blockage.
 */
function whenProven(spot: Spot, rule: KindRule): Verdict {
  if (spot.part !== "lower") return divided(spot, rule, { holder: "authority", start: "" });
  const start = `From the main up to ${spot.boundary}`;
  if (spot.breaks === "") {
    return {
      holder: "owners",
      mender: "owners",
      reason: `${start} the pipe counts as the owners’ until they prove a break there. No break with a station is noted on this stretch; roots, grease and other blockages prove none.`,
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
    reason: `${start} the authority repairs what is proven to be broken there. ${spot.breaks}: put that to the authority, with the video and its measurements. It stays unclear until the authority accepts it.`,
  };
}

function notEntered(boundary: string): string {
  return `The rule divides the line at ${boundary}, and none is entered. Enter its station.`;
}
