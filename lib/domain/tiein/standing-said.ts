import type { Side, TieIn, TieInKind } from "../facts/line.ts";
import type { PermitRecord } from "../facts/record.ts";
import type { Ruling } from "../facts/ruling.ts";
import type { CoverageSpan } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import type { CompassPoint } from "../plan/compass.ts";
import type { DoubtWhy } from "../reconcile/doubt.ts";
import type { AxisGap } from "../record/axis.ts";

/** What a record shows, and where. */
export interface ShownSaid {
  readonly record: Pick<PermitRecord, "title" | "kind" | "number"> | null;
  /** Empty where the entry has no label. */
  readonly label: string;
  /** As the record has it. */
  readonly station: Cft | null;
  /** How far off the record says that may be; 0 where it does not say. */
  readonly off: Cft;
  /** Once the record's zero is allowed for; null where that changes nothing. */
  readonly moved: Cft | null;
}

/** Where a tie-in was seen, and by what. */
export interface SeenSaid {
  readonly station: Cft | null;
  /** 0: as a person measured it. */
  readonly uncertainty: Cft;
  /** The runs that saw it by name; empty names where a run has none. */
  readonly runs: readonly string[];
}

/** A side looking upstream, and the wind that it faces where the line's bearing tells. */
export interface SideSaid {
  readonly side: Side;
  readonly compass: CompassPoint | null;
}

export interface ComparedSaid {
  readonly off: Cft;
  readonly tolerance: Cft;
  readonly allowedFor: boolean;
  /** Only where they lie on opposite sides. */
  readonly sides: { readonly recorded: SideSaid; readonly seen: SideSaid } | null;
}

export type SettledSaid = Pick<TieIn, "settledBy" | "settledReason">;

/** Everything that a standing rests on, without a word of any language. */
export type StandingSaid =
  | { readonly kind: "inactive"; readonly settled: SettledSaid }
  | {
      readonly kind: "not-sanitary";
      readonly tieInKind: TieInKind;
      readonly settled: SettledSaid;
    }
  | {
      readonly kind: "linked";
      readonly shown: ShownSaid | null;
      readonly seen: SeenSaid | null;
      /** Null: one of the two has no station. */
      readonly compared: ComparedSaid | null;
      /** Null: proposed. */
      readonly acceptedBy: string | null;
    }
  | { readonly kind: "no-record-yet"; readonly seen: SeenSaid | null }
  | { readonly kind: "never-tied"; readonly seen: SeenSaid | null }
  | {
      readonly kind: "conflict";
      readonly seen: SeenSaid | null;
      readonly entry: string;
      readonly off: Cft;
    }
  | {
      readonly kind: "doubtful";
      readonly seen: SeenSaid | null;
      readonly why: DoubtWhy;
      /** The entry that it may be; empty where none can be named. */
      readonly entry: string;
    }
  | { readonly kind: "unplaced-entry"; readonly seen: SeenSaid | null; readonly entry: string }
  | { readonly kind: "near-tie"; readonly seen: SeenSaid | null; readonly entry: string }
  | { readonly kind: "no-entry"; readonly seen: SeenSaid | null }
  | { readonly kind: "no-station"; readonly entry: string; readonly gap: AxisGap }
  | { readonly kind: "beyond-end"; readonly shown: ShownSaid; readonly upperEnd: Cft }
  | { readonly kind: "not-inspected"; readonly shown: ShownSaid; readonly unseen: CoverageSpan }
  | {
      readonly kind: "not-seen";
      readonly shown: ShownSaid;
      readonly from: Cft;
      readonly to: Cft;
      /** A tie-in that the entry might nearly as well be; empty where there is none. */
      readonly nearly: string;
    }
  | {
      readonly kind: "place-unclear";
      readonly shown: ShownSaid;
      readonly why: DoubtWhy;
      /** The tie-in that it may be; empty where none can be named. */
      readonly tieIn: string;
    }
  /** The record has the entry twice; it stands as the first does. */
  | { readonly kind: "written-twice" }
  | { readonly kind: "ruled"; readonly ruling: Ruling }
  | { readonly kind: "explained"; readonly by: string; readonly explanation: string };

/** One catalog: what is said, as one sentence. */
export type StandingWords = {
  readonly [Kind in StandingSaid["kind"]]: (
    said: Extract<StandingSaid, { readonly kind: Kind }>,
  ) => string;
};

/** The parts of a standing in one language, one after another. */
export function standingSentence(words: StandingWords, said: readonly StandingSaid[]): string {
  return said.map((each) => sentenceOf(words, each)).join(" ");
}

function sentenceOf<Kind extends StandingSaid["kind"]>(
  words: StandingWords,
  said: Extract<StandingSaid, { readonly kind: Kind }>,
): string {
  const say = words[said.kind as Kind] as (
    each: Extract<StandingSaid, { readonly kind: Kind }>,
  ) => string;
  return say(said);
}

/** A text with a full stop, unless it ends with a mark of its own. */
export function stopped(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}

/** Who settled it and why, in a catalog's own words: ` as Ruth settled: dug up`. */
export function settledPart(
  { settledBy, settledReason }: SettledSaid,
  byWords: (name: string) => string,
): string {
  const by = settledBy === "" ? "" : byWords(settledBy);
  const reason = settledReason.trim().replace(/\.$/, "");
  return reason === "" ? by : `${by}: ${reason}`;
}
