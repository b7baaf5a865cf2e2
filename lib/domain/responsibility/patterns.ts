import { sayList } from "../split/say-list.ts";
import {
  type Boundary,
  type ResponsibilityRule,
  type RulePattern,
  WORK_KINDS,
  type WorkKind,
} from "./authority.ts";
import type { Holder } from "./reach-finding.ts";

/** Where a reach lies against the rule's boundary; `unknown` while the boundary is not entered. */
export type Part = "lower" | "upper" | "unknown";

export interface Spot {
  readonly part: Part;
  /** `the right-of-way line at 12.0 ft`; for an unknown one `the right-of-way line`. */
  readonly boundary: string;
  /** The reach begins at the main connection. */
  readonly atMain: boolean;
  /** Faults seen on the lower part, in words; empty where none is placed there. */
  readonly faultsBelow: string;
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
  "authority-in-right-of-way": (spot) => divided(spot),
  "divided-at-cleanout": (spot) => divided(spot),
  "owners-own-authority-mends-lower": (spot) => mendedBelow(spot, "Owners own all of the pipe."),
  "by-kind-of-work": byKind,
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

/** Who does each kind of work below the boundary. */
type KindRule = Pick<ResponsibilityRule, "clearingBy" | "repairBy" | "replacementBy">;

export function unclear(reason: string): Verdict {
  return { holder: "unclear", mender: "unclear", reason };
}

function owners(reason: string, { atMain, tap }: Spot & { readonly tap: string }): Verdict {
  return { holder: "owners", mender: "owners", reason: atMain ? `${reason} ${tap}` : reason };
}

function divided({ part, boundary }: Spot): Verdict {
  const verdicts: Record<Part, Verdict> = {
    lower: {
      holder: "authority",
      mender: "authority",
      reason: `From the main up to ${boundary} the pipe is the authority’s.`,
    },
    upper: {
      holder: "owners",
      mender: "owners",
      reason: `Above ${boundary} the pipe is the owners’.`,
    },
    unknown: unclear(notEntered(boundary)),
  };
  return verdicts[part];
}

function mendedBelow({ part, boundary }: Spot, start: string): Verdict {
  const verdicts: Record<Part, Verdict> = {
    lower: {
      holder: "owners",
      mender: "authority",
      reason: `${start} From the main up to ${boundary} the authority mends.`,
    },
    upper: {
      holder: "owners",
      mender: "owners",
      reason: `${start} Above ${boundary} they mend it too.`,
    },
    unknown: { holder: "owners", mender: "unclear", reason: `${start} ${notEntered(boundary)}` },
  };
  return verdicts[part];
}

/** By kind of work (San Diego and its county, say): owners hold all; below the boundary the rule says who does what. */
function byKind(spot: Spot, { clearingBy, repairBy, replacementBy }: KindRule): Verdict {
  const start = "Owners hold the pipe; who works on it goes by the kind of work.";
  const below: Record<WorkKind, Holder> = {
    clearing: clearingBy,
    repair: repairBy,
    replacement: replacementBy,
  };
  const verdicts: Record<Part, Verdict> = {
    lower: {
      holder: "owners",
      mender: below.repair,
      menders: below,
      reason: `${start} From the main up to ${spot.boundary}: ${sayKinds(below)}.`,
    },
    upper: {
      holder: "owners",
      mender: "owners",
      reason: `${start} Above ${spot.boundary} all of it is the owners’.`,
    },
    unknown: unplaced(below, `${start} ${notEntered(spot.boundary)}`),
  };
  return verdicts[spot.part];
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

function whenProven(spot: Spot): Verdict {
  if (spot.part !== "lower") return divided(spot);
  if (spot.faultsBelow === "") {
    return {
      holder: "owners",
      mender: "owners",
      reason: `From the main up to ${spot.boundary} the pipe counts as the owners’ until they prove that the fault lies there. No fault with a station is noted there.`,
    };
  }
  return unclear(
    `From the main up to ${spot.boundary} the authority mends what is proven to be broken there. ${spot.faultsBelow}: put that to the authority. It stays unclear until the authority accepts it.`,
  );
}

function notEntered(boundary: string): string {
  return `The rule divides the line at ${boundary}, and none is entered. Enter its station.`;
}
