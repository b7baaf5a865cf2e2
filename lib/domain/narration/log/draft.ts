import type { Fitting, Material } from "../../facts/line.ts";
import type { Degree, Fault, FootageFrom, ObscuredBy, ObservationKind } from "../../facts/run.ts";
import type { Cft } from "../../length/station.ts";
import type { DraftReading, SpokenReading } from "../footage/run-told.ts";
import type {
  NarrationFormat,
  SaidLine,
  TextSpan,
  TranscriptProblem,
} from "../transcript/said-line.ts";

/** One row of an observation log as drafted from what was said. A person accepts, mends or drops it. */
export interface Draft {
  /** The same for the same words at the same place of the text. */
  readonly key: string;
  readonly kind: ObservationKind;
  /** On the run's footage; null where nothing said tells where it is. */
  readonly counter: Cft | null;
  readonly toCounter: Cft | null;
  /** Feet from the main (hundredths); null where the footage at the main is not known. */
  readonly fromMain: Cft | null;
  /** The same of a stretch's other end. */
  readonly toFromMain: Cft | null;
  readonly reading: DraftReading;
  /** How far off the counter may be, by the speaker's own words or by working out. */
  readonly slack: Cft;
  readonly clock: number | null;
  readonly fault: Fault | null;
  readonly degree: Degree | null;
  /** Percent of the bore that it takes. */
  readonly reduction: number | null;
  /** Inches of water that stand there. */
  readonly waterDepth: number | null;
  /** Of a branch; of the pipe, what begins here as the camera goes. */
  readonly material: Material;
  /** Of the pipe, what lies upstream of here, as a log keeps it; else as the material. */
  readonly upstreamMaterial: Material;
  readonly diameter: number | null;
  readonly fitting: Fitting;
  readonly videoSecond: number | null;
  /** The words that it rests on, as they stand in the text. */
  readonly quote: string;
  /** Where these stand in what was said (`DraftLog.said`). */
  readonly span: TextSpan;
  /** Hedges as spoken: `maybe`, `looks like`. */
  readonly hedges: readonly string[];
  /** What was said about the record here: `not on the card`. */
  readonly aboutRecord: string;
  /** The rest in plain words, for the note. */
  readonly note: string;
}

/** A stretch that could not be seen, as spoken. */
export interface DraftGap {
  readonly key: string;
  readonly fromCounter: Cft;
  readonly toCounter: Cft;
  readonly cause: ObscuredBy;
  readonly quote: string;
  readonly span: TextSpan;
}

/** What was said about the record, of a row or by itself. */
export interface RecordSaid {
  /** Of the row with which it is kept; by itself a key of its own. */
  readonly key: string;
  readonly aboutRecord: string;
  /** Where it was said of, feet from the main (hundredths); null where nothing tells. */
  readonly fromMain: Cft | null;
  /** Null in text without times. */
  readonly videoSecond: number | null;
}

/** A number that was spoken and is no place, with why. */
export interface SetAside {
  readonly words: string;
  readonly why: string;
  /** Null in text without times. */
  readonly second: number | null;
}

export interface DraftLog {
  readonly format: NarrationFormat;
  readonly drafts: readonly Draft[];
  readonly gaps: readonly DraftGap[];
  /** Every counter reading that was spoken, in the order of speaking. */
  readonly readings: readonly SpokenReading[];
  /** What the footages are measured from, by the talk; by the run where the talk leaves it open. */
  readonly measuredFrom: FootageFrom;
  /** All that was said, piece by piece, in the order of speaking. */
  readonly said: readonly SaidLine[];
  /** All that was said about the record, in the order of speaking. */
  readonly recordSaid: readonly RecordSaid[];
  /** Numbers that are no place. */
  readonly setAside: readonly SetAside[];
  /** The footage at the main connection, where the speaker said that the camera is there. */
  readonly mainCounter: Cft | null;
  readonly problems: readonly TranscriptProblem[];
}
