import type { Side } from "../line/line.ts";
import type { Cft } from "../line/station.ts";

/** What the strip tells on each page of the file. */
export const STRIP_TOPICS = ["all", "who", "record", "camera", "agree", "answers", "cost"] as const;
export type StripTopic = (typeof STRIP_TOPICS)[number];

/** A thing on the strip that can be selected, with the id that tables share. */
export interface StripMark {
  readonly id: string;
  readonly kind: "main" | "entry" | "tie-in" | "fault" | "point" | "water" | "upper-end";
  readonly station: Cft;
  readonly toStation: Cft | null;
  /** Half width of the whisker; 0 where exact. */
  readonly whisker: Cft;
  readonly side: Side;
  readonly label: string;
  /** Second line, such as whose it is. */
  readonly detail: string;
  /** Loud: undocumented or held. Always drawn with a shape and a word as well. */
  readonly loud: boolean;
  /** The whole mark in one sentence, for the text alternative. */
  readonly sentence: string;
}

export interface StripJoin {
  readonly entryId: string;
  readonly tieInId: string;
  readonly state: "accepted" | "proposed" | "alternative";
}

/** A stretch of the pipe, of one material. */
export interface StripPipe {
  readonly from: Cft;
  readonly to: Cft;
  readonly material: string;
  readonly words: string;
}

/** A band under the pipe: served-by, who answers, cost, coverage. */
export interface StripBand {
  readonly title: string;
  readonly cells: readonly {
    readonly from: Cft;
    readonly to: Cft;
    readonly words: string;
    readonly loud: boolean;
    readonly hatch: "none" | "sparse" | "dense" | "cross";
  }[];
}

/** Everything drawn on a strip, in stations; scaled by whoever draws it. */
export interface StripDrawing {
  readonly extent: Cft;
  readonly ticks: readonly Cft[];
  readonly above: readonly StripMark[];
  readonly below: readonly StripMark[];
  readonly onPipe: readonly StripMark[];
  readonly joins: readonly StripJoin[];
  readonly pipes: readonly StripPipe[];
  readonly bands: readonly StripBand[];
  readonly title: string;
}
