import { TIE_IN_KIND_WORDS } from "../facts/line-words.ts";
import type { CoverageSpan } from "../findings/report.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import { IF_WORDS } from "../reconcile/rivals.ts";
import type { AxisGap } from "../record/axis.ts";
import { capital } from "../say/capital.ts";
import { onSide } from "./on-side.ts";
import { ruledWords } from "./ruling-in-force.ts";
import {
  type ComparedSaid,
  type SeenSaid,
  type SettledSaid,
  type ShownSaid,
  type StandingWords,
  settledPart,
  stopped,
} from "./standing-said.ts";

const GAP_WORDS: Record<AxisGap, string> = {
  "no-record": "belongs to no record",
  "no-distance": "has no distance on the record",
  "measured-from-unknown": "is on a record that does not say where it measures from",
  "no-length": "is measured from the upper end, and the length of the line is not known",
  "beyond-length": "is measured from the upper end, and lies beyond the length on the record",
  "below-main": "has a distance below the main connection",
  "not-a-length": "has a distance that is not a length",
};

const UNSEEN_WORDS: Record<CoverageSpan["state"], string> = {
  seen: "was seen",
  "under-water": "was under water",
  blocked: "was blocked",
  "not-in-view": "was not in view",
  "not-recorded": "was not recorded",
  "not-inspected": "was reached by no run",
};

/** Standings in English. */
export const STANDING_EN: StandingWords = {
  inactive: ({ settled }) =>
    `Out of use${settledWords(settled) || ": it is not noted who proved it"}.`,
  "not-sanitary": ({ tieInKind, settled }) =>
    `A ${TIE_IN_KIND_WORDS[tieInKind]}, not a building branch${settledWords(settled)}.`,
  linked: ({ shown, seen, compared, acceptedBy }) =>
    `${shown ? shownWords(shown) : "The record shows it"}; ${seenWords(seen)}${comparedWords(compared)}. ${saidWords(acceptedBy)}`,
  "no-record-yet": ({ seen }) => `${capital(seenWords(seen))}; no record has been entered yet.`,
  "never-tied": ({ seen }) =>
    `${capital(seenWords(seen))}; its run was never tied to the main, so it can't be set against the record yet.`,
  conflict: ({ seen, entry, off }) =>
    `${capital(seenWords(seen))}; the nearest entry, ${entry || "unnamed"}, is ${formatFeet(off)} away: too far to match without a reason.`,
  doubtful: ({ seen, why, entry }) =>
    why === "not-established"
      ? `${capital(seenWords(seen))}; too little of the record matches the camera to say no entry matches it.`
      : `${capital(seenWords(seen))}; it may be ${entry || "an entry"} ${IF_WORDS[why]}, but there isn’t enough evidence.`,
  "unplaced-entry": ({ seen, entry }) =>
    `${capital(seenWords(seen))}; it may be ${entry || "an entry"}, which the record does not place.`,
  "near-tie": ({ seen, entry }) =>
    `${capital(seenWords(seen))}; ${entry || "an entry"} fits it nearly as well as the tie-in that it is proposed for.`,
  "no-entry": ({ seen }) => `${capital(seenWords(seen))}; no matching entry on record.`,
  "no-station": ({ entry, gap }) =>
    `${entry || "The entry"} ${GAP_WORDS[gap]}, so no run is known to have covered it.`,
  "beyond-end": ({ shown, upperEnd }) =>
    `${shownWords(shown)}; that is beyond the upper end at ${formatFeet(upperEnd)}.`,
  "not-inspected": ({ shown, unseen }) =>
    `${shownWords(shown)}; the pipe from ${plainFeet(unseen.from)} to ${formatFeet(unseen.to)} ${UNSEEN_WORDS[unseen.state]}, so it may be there, unseen.`,
  "not-seen": ({ shown, from, to, nearly }) =>
    `${shownWords(shown)}; the camera saw the pipe from ${plainFeet(from)} to ${formatFeet(to)} and no branch of its own there${nearly === "" ? "" : `, but ${nearly} fits it nearly as well as the entry that is proposed for it`}.`,
  "place-unclear": ({ shown, why, tieIn }) =>
    why === "not-established"
      ? `${shownWords(shown)}; too little of the record matches the camera to tell where in the pipe that is.`
      : `${shownWords(shown)}; it may be ${tieIn || "a tie-in"} ${IF_WORDS[why]}, so its location in the pipe isn’t clear yet.`,
  "written-twice": () => "It appears twice on the record and counts as one.",
  ruled: ({ ruling }) => `It ${ruledWords(ruling)}.`,
  explained: ({ by, explanation }) =>
    `Explained${by === "" ? "" : ` by ${by}`}: ${stopped(explanation)}`,
};

/** `Side sewer card 1184`: what a record is called in sentences. */
export function recordName(record: { title: string; kind: string; number: string }): string {
  return record.title.trim() || `The ${record.kind} ${record.number}`.trim();
}

/** `Card 1184 shows House 14 at 34.0 ft (36.3 ft with its zero allowed for)`. */
function shownWords({ record, label, station, off, moved }: ShownSaid): string {
  const name = record ? recordName(record) : "The record";
  const what = `${name} shows ${label.trim() || "a connection"}`;
  if (station === null) return what;
  const allowed = moved === null ? "" : ` (${formatFeet(moved)} with the zero corrected)`;
  const unsure = off === 0 ? "" : `, give or take ${formatFeet(off)}`;
  return `${what} at ${formatFeet(station)}${unsure}${allowed}`;
}

/** `seen at 36.5 ft, give or take 1.0 ft, in Run 1 and Run 2`. */
function seenWords(seen: SeenSaid | null): string {
  if (seen === null) return "seen";
  const runs = seen.runs.map((name) => name || "a run").join(" and ");
  const where = runs === "" ? "" : ` in ${runs}`;
  if (seen.station === null) return `seen${where} at no known station`;
  const at = formatFeet(seen.station);
  if (seen.uncertainty === 0) return `at ${at} as measured`;
  return `seen at ${at}, give or take ${formatFeet(seen.uncertainty)},${where || " by the camera"}`;
}

/** Whether the two lie apart, with the numbers. */
function comparedWords(compared: ComparedSaid | null): string {
  if (compared === null) return ", with no station to compare";
  const { off, tolerance, allowedFor, sides } = compared;
  const allowed = allowedFor ? " after correcting the record’s zero" : "";
  const limit = off <= tolerance ? "within" : "beyond";
  const opposite = sides
    ? `; ${onSide(sides.recorded)} on the record, ${onSide(sides.seen)} in the pipe`
    : "";
  return `: ${formatFeet(off)} difference${allowed}, ${limit} the ${formatFeet(tolerance)} tolerance${opposite}`;
}

function saidWords(acceptedBy: string | null): string {
  return acceptedBy === null
    ? "Proposed; no one has accepted it yet."
    : `${acceptedBy || "Someone"} accepted the match.`;
}

function settledWords(settled: SettledSaid): string {
  return settledPart(settled, (name) => ` as ${name} settled`);
}
