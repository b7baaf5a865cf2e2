import type { LineFile } from "../../facts/line-file.ts";
import type { Narration } from "../../facts/narration.ts";
import type { Anchor, Gap, Observation, Reading, Run } from "../../facts/run.ts";
import { type Cft, plainFeet, toTenth } from "../../length/station.ts";
import { converterFor } from "../../run/convert.ts";
import { knownPoints } from "../../run/footage.ts";
import type { DraftReading } from "../footage/run-told.ts";
import type { Draft, DraftGap, DraftLog } from "./draft.ts";
import { draftLog } from "./draft-log.ts";

/** What a narration says, drafted anew from its text and what its run is tied to. */
export function logOf(
  file: Pick<LineFile, "runs" | "anchors">,
  { runId, text }: Pick<Narration, "runId" | "text">,
): DraftLog {
  const run = file.runs.find(({ id }) => id === runId);
  return draftLog(text, {
    looks: run?.looks ?? "upstream",
    measuredFrom: run?.measuredFrom ?? null,
    mainCounter: run === undefined ? null : mainCounterOf(run, file.anchors),
  });
}

/**
 * The counter reading at the main connection: 0 where the footage is measured from there, else below
 * its lowest known point a run goes on foot for foot. Null where nothing ties the run, or its known
 * points contradict one another.
 */
export function mainCounterOf(run: Run, anchors: readonly Anchor[]): Cft | null {
  const [lowest] = knownPoints(run, anchors).sort((a, b) => a.station - b.station);
  const { toStation, way } = converterFor(run, anchors);
  if (lowest === undefined || toStation(lowest.counter) === null) return null;
  return lowest.counter - way * lowest.station;
}

/** What a person may mend in a draft before accepting it. */
type DraftedFields = Pick<
  Observation,
  | "kind"
  | "toCounter"
  | "clock"
  | "fault"
  | "degree"
  | "reduction"
  | "waterDepth"
  | "material"
  | "diameter"
  | "fitting"
  | "uncertainty"
  | "videoSecond"
  | "note"
> & { readonly counter: Cft | null };

/** A draft as the fields of an observation; hedges and what was said of the record are in the note. */
export function draftedFields(draft: Draft): DraftedFields {
  const { kind, counter, toCounter, clock, fault, diameter, fitting } = draft;
  return {
    kind,
    counter,
    toCounter,
    clock,
    fault,
    degree: draft.degree,
    reduction: draft.reduction,
    waterDepth: draft.waterDepth,
    material: draft.upstreamMaterial,
    diameter,
    fitting,
    uncertainty: draft.slack === 0 ? null : toTenth(draft.slack),
    videoSecond: draft.videoSecond,
    note: noteOf(draft),
  };
}

/** How its place was found, in the words of a log: what lies beyond is worked out as well. */
export function readingOf({ reading }: Pick<Draft, "reading">): Reading {
  return reading === "beyond" ? "between" : reading;
}

/** A gap as drafted, with the words it rests on. */
export function draftedGap(gap: DraftGap): Omit<Gap, "id" | "runId"> {
  const { fromCounter, toCounter, cause, quote } = gap;
  return { fromCounter, toCounter, cause, note: `said: “${quote}”` };
}

const SLACK_WORDS: Record<DraftReading, string> = {
  read: "footage as spoken,",
  between: "footage interpolated by time,",
  beyond: "footage estimated by speed beyond the last reading,",
};

function noteOf({ note, hedges, aboutRecord, reading, slack }: Draft): string {
  const said = hedges.map((hedge) => `“${hedge}”`).join(", ");
  const parts = [
    note,
    said === "" ? "" : `spoken with ${said}`,
    aboutRecord === "" ? "" : `about the record: “${aboutRecord}”`,
    slack === 0 ? "" : `${SLACK_WORDS[reading]} ± ${plainFeet(toTenth(slack))} ft`,
  ];
  return parts.filter((part) => part !== "").join("; ");
}
