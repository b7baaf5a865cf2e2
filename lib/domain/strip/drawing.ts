import type { Side } from "../facts/line.ts";
import type { Cft } from "../length/station.ts";

/** What the strip tells on each page of the file. */
export const STRIP_TOPICS = [
  "all",
  "who",
  "record",
  "camera",
  "reconcile",
  "responsibility",
  "cost",
] as const;
export type StripTopic = (typeof STRIP_TOPICS)[number];

/** A thing on the strip that can be selected, with the id that tables share. */
export interface StripMark {
  readonly id: string;
  readonly kind:
    | "main"
    | "entry"
    | "tie-in"
    | "fault"
    | "point"
    | "water"
    | "upper-end"
    | "hold"
    | "work";
  readonly station: Cft;
  readonly toStation: Cft | null;
  /** Half width of the whisker; 0 where exact. */
  readonly whisker: Cft;
  readonly side: Side;
  readonly label: string;
  /** Second line, such as whose it is. */
  readonly detail: string;
  /** The second line where there is room for a word or two. */
  readonly brief?: string;
  /** Loud: undocumented or held. Always drawn with a shape and a word as well. */
  readonly loud: boolean;
  /** The whole mark in one sentence, for the text alternative. */
  readonly sentence: string;
  /** Where it stands for several too close to be drawn apart: how many, and which where that is known. */
  readonly crowd?: { readonly count: number; readonly ids: readonly string[] };
}

export interface StripJoin {
  readonly entryId: string;
  readonly tieInId: string;
  readonly state: "accepted" | "proposed" | "alternative";
  /** Tie-in minus entry, both as drawn; 0 where they stand at one station. */
  readonly distance?: Cft;
  /** Paired otherwise than in the pairing it is held against. */
  readonly differs?: boolean;
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
    /** What a table calls the stretch, where one does. */
    readonly id?: string;
    /** The words where there is room for few. */
    readonly brief?: string;
    /** Somebody's land that the pipe only crosses: drawn as land, whether or not it is held. */
    readonly lot?: boolean;
  }[];
}

/** Where north is on a strip, at its main connection. */
export interface StripNorth {
  /** Degrees clockwise from the upper edge of the drawing. */
  readonly turn: number;
  /** The bearing, to stand beside the arrow. */
  readonly words: string;
  /** What above and below the pipe are not, to stand under it. */
  readonly note: string;
  /** All of it in words, for the text alternative. */
  readonly sentence: string;
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
  /** Null, or left out, where the bearing of the line is not known or not told. */
  readonly north?: StripNorth | null;
}

/** What one run of the camera looked at. */
export interface StripRun {
  readonly id: string;
  readonly name: string;
  /** Where it went in and where it ended, on the line; null where that is not known. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** Why it ended, in a word or two; empty where nobody noted it. */
  readonly ending: string;
  readonly cells: StripBand["cells"];
  readonly sentence: string;
}

/** Where something lies that tables name, whether or not the drawing has a mark for it. */
export interface StripSpot {
  readonly id: string;
  readonly from: Cft;
  readonly to: Cft;
  /** The mark that stands for it, where there is one. */
  readonly markId: string | null;
  readonly sentence: string;
}

/** Another way to pair record and camera, to be drawn beside the proposed one. */
export interface StripChoice {
  readonly key: string;
  readonly joins: readonly StripJoin[];
  readonly sentence: string;
}

/** The drawing of a whole file: what a strip on paper shows, and what only the screen has room for. */
export interface FileDrawing extends StripDrawing {
  readonly holds: readonly StripMark[];
  /** Priced work that has a place, where the page is about money. */
  readonly work: readonly StripMark[];
  readonly runs: readonly StripRun[];
  readonly spots: readonly StripSpot[];
  /** What has no station: named beside the drawing, never put on it. */
  readonly beside: readonly {
    readonly id: string;
    readonly label: string;
    readonly sentence: string;
  }[];
  readonly choices: readonly StripChoice[];
}
