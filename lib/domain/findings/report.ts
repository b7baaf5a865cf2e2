import type { AlignmentDecision } from "../facts/alignment-decision.ts";
import type { Hold } from "../facts/hold.ts";
import type { Side, TieIn } from "../facts/line.ts";
import type { Band, Standing } from "../facts/pairing.ts";
import type { EvidenceLevel } from "../facts/test.ts";
import type { Cft } from "../length/station.ts";
import type { CompassPoint } from "../plan/compass.ts";
import type { TieFinding } from "../plan/ties.ts";
import type { Day } from "../time/day.ts";
import type { Capacity } from "./capacity.ts";
import type { Clock } from "./clock.ts";
import type { SplitOutcome } from "./outcome.ts";
import type { ReachFinding } from "./reach-finding.ts";

/** Where an observation lies on the line, as far as its run can tell. */
export interface StationedObservation {
  readonly observationId: string;
  readonly runId: string;
  /** Null: relative only. */
  readonly station: Cft | null;
  readonly toStation: Cft | null;
  /** The larger of what the run's counter and what the reading itself may be off. */
  readonly uncertainty: Cft | null;
  readonly side: Side;
  /** The side as a head that turns showed it: told, but nothing is decided by it. */
  readonly unsureSide: Side;
}

/** A tie-in with everything computed about it. */
export interface TieInFinding {
  readonly tieIn: TieIn;
  readonly station: Cft | null;
  readonly uncertainty: Cft | null;
  readonly side: Side;
  /** The wind that its side faces; null while the line has no bearing. */
  readonly compass: CompassPoint | null;
  readonly sightings: readonly StationedObservation[];
  readonly standing: Standing;
  /** False while the standing rests on a proposal that nobody has accepted. */
  readonly decided: boolean;
  /** The standing in one sentence with its numbers. */
  readonly sentence: string;
  /** The same in Spanish. */
  readonly sentenceEs: string;
  readonly entryId: string | null;
  readonly propertyId: string | null;
  readonly level: EvidenceLevel;
  readonly levelReason: string;
  /** Carries sewage of a building, as far as is known: counted in served-by and split. */
  readonly live: boolean;
}

export interface EntryFinding {
  readonly entryId: string;
  /** On the line's axis, before shift and scale. */
  readonly recordStation: Cft | null;
  /** After the shift and scale of the reconciliation. */
  readonly station: Cft | null;
  /** The wind that its recorded side faces there. */
  readonly compass: CompassPoint | null;
  readonly standing: Standing;
  readonly decided: boolean;
  readonly sentence: string;
  readonly sentenceEs: string;
  readonly tieInId: string | null;
}

/** A pairing that the program puts to a person. */
export interface ProposedPairing {
  readonly entryId: string;
  readonly tieInId: string;
  /** Tie-in minus entry, after shift and scale. */
  readonly distance: Cft;
  /** Tie-in minus entry as recorded. */
  readonly rawDistance: Cft;
  readonly tolerance: Cft;
  readonly band: Band;
  readonly reasons: readonly string[];
  /** Another assignment is as good or nearly: a person must look. */
  readonly nearTie: boolean;
}

export interface Alignment {
  readonly shift: Cft;
  /** Parts per million on top of 1: 10000 is a card that reads 1 % short. */
  readonly scale: number;
  readonly explained: number;
  readonly of: number;
  /** Entries within the tolerance when the records are taken as written. */
  readonly plain: number;
  /** The person's word that shift and scale rest on; null while they are the program's proposal. */
  readonly decision: AlignmentDecision | null;
  /** What the search finds by itself, to hold a decision against. */
  readonly proposed: { readonly shift: Cft; readonly scale: number; readonly explained: number };
  /** Records that are read by a shift and scale of their own. */
  readonly own: readonly {
    readonly recordId: string;
    readonly shift: Cft;
    readonly scale: number;
    readonly explained: number;
    readonly of: number;
    readonly decision: AlignmentDecision | null;
  }[];
  readonly sentence: string;
}

/** Another way to pair record and camera that the numbers allow, nearly as good or as good. */
export interface Alternative {
  readonly key: string;
  /** The one record of several that is taken otherwise; null: all of them. */
  readonly recordId: string | null;
  /** Where the record's zero would be taken to be. */
  readonly shift: Cft;
  readonly scale: number;
  readonly explained: number;
  readonly pairs: readonly {
    readonly entryId: string;
    readonly tieInId: string;
    readonly distance: Cft;
  }[];
  /** What it would change against the proposals, in one sentence. */
  readonly sentence: string;
}

/** How far an anchor lies from where the run's other anchors would put it. */
export interface AnchorResidual {
  readonly anchorId: string;
  readonly runId: string;
  /** Null where there is no other anchor to hold it against. */
  readonly residual: Cft | null;
  readonly sentence: string;
}

/** What one run looked at, as far as its stations are known. */
export interface RunCoverage {
  readonly runId: string;
  readonly spans: readonly CoverageSpan[];
  /** Where it started and where it ended, on the line; null: relative only. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** How it started and ended in words: `from the alley cleanout up to 88.4 ft, where it was blocked`. */
  readonly sentence: string;
}

/** A stretch of the trunk that at least one run looked at, or did not. */
export interface CoverageSpan {
  readonly from: Cft;
  readonly to: Cft;
  readonly state:
    | "seen"
    | "under-water"
    | "blocked"
    | "not-in-view"
    | "not-recorded"
    | "not-inspected";
}

/** Something in the file that contradicts itself; shown, never guessed away. */
export interface Problem {
  readonly path: string;
  readonly reason: string;
  readonly sentence: string;
}

/** Every computed answer on one line. A function of the line's file and today. */
export interface Report {
  readonly today: Day;
  readonly problems: readonly Problem[];
  readonly stations: readonly StationedObservation[];
  readonly tieIns: readonly TieInFinding[];
  readonly entries: readonly EntryFinding[];
  readonly alignment: Alignment | null;
  readonly proposals: readonly ProposedPairing[];
  readonly alternatives: readonly Alternative[];
  readonly residuals: readonly AnchorResidual[];
  readonly runCoverage: readonly RunCoverage[];
  readonly coverage: readonly CoverageSpan[];
  readonly reaches: readonly ReachFinding[];
  /** Load, slope and flow; not a design. */
  readonly capacity: Capacity;
  /** What two tapes from fixed points come to, in the file’s order. */
  readonly ties: readonly TieFinding[];
  readonly holds: readonly Hold[];
  /** One per rule, in the order of SPLIT_RULES. */
  readonly splits: readonly SplitOutcome[];
  readonly clocks: readonly Clock[];
  /** Upper end of what is known: the trunk's end, or the farthest thing on it. */
  readonly extent: Cft;
}
