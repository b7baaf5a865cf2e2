/** The ten questions of a line's file, in order; also the navigation. */
export const QUESTIONS = [
  "who",
  "record",
  "camera",
  "reconcile",
  "responsibility",
  "cost",
  "notices",
  "authority",
  "schedule",
  "history",
] as const;
export type Question = (typeof QUESTIONS)[number];

export interface QuestionAnswer {
  readonly question: Question;
  /** The question as asked on the screen. */
  readonly asked: string;
  readonly sentence: string;
  /** What would close it; null when there is nothing left to do. */
  readonly closes: string | null;
  /** Where that is done, as a path under the line; left out where it is the question's own page. */
  readonly where?: string;
  /** Higher is more pressing; 0 when closed. */
  readonly pressing: number;
}

export const DUE_KINDS = ["late", "due", "blocked", "waiting"] as const;
export type DueKind = (typeof DUE_KINDS)[number];

/** Who has to move before a thing is done; `date`: nobody, a day has to come. */
export const WAITS_ON = ["office", "neighbor", "authority", "utility", "crew", "date"] as const;
export type WaitsOn = (typeof WAITS_ON)[number];

/** One thing due or blocked, over all lines or on one. */
export interface DueThing {
  readonly lineId: string;
  readonly sentence: string;
  readonly on: string | null;
  readonly kind: DueKind;
  /** Who has to move. */
  readonly waitsOn: WaitsOn;
  /** Which question's page settles it. */
  readonly question: Question;
  /** Where that is done, as a path under the line; left out where it is the question's own page. */
  readonly where?: string;
}

/** What the office counts over all lines: those open, closed and on the desk, and the things due. */
export const TALLIES = ["open", "closed", "on-the-desk", ...DUE_KINDS] as const;
export type Tallies = Readonly<Record<(typeof TALLIES)[number], number>>;

/** An open question as the desk shows it. */
export type OpenAnswer = Omit<QuestionAnswer, "pressing">;
