import {
  formerId,
  instant,
  key,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  several,
  type ValuesOf,
  words,
} from "./field.ts";

/** Accepted as an observation (perhaps mended), or dropped. */
export type DraftDecision = ValuesOf<typeof DRAFT_DECISION>;

const DRAFT_DECISION = {
  /** The draft's key: stable for the same text. */
  key,
  state: oneOf(["accepted", "dropped"]),
  /** The observation that was made of it; null where it was dropped. */
  observationId: maybe(formerId),
};

/** What a technician said while the camera ran, as it was brought in; never changed afterwards. */
export type Narration = RowOf<typeof NARRATION>;

export const NARRATION = row({
  one: "narration",
  fields: {
    runId: ref("runs"),
    /** The transcript as pasted or uploaded: WebVTT, SRT, lines with m:ss, or plain text. */
    text: words,
    addedBy: words,
    addedAt: instant,
    /** What a person made of each drafted row; the drafts follow from the text. */
    decided: several(DRAFT_DECISION),
  },
});
