import type { LineFile } from "../file/line-file.ts";
import type { CoverageSpan } from "../file/report.ts";
import type { Side, TieIn } from "../line/line.ts";
import { type Cft, formatFeet, plainFeet } from "../line/station.ts";
import { TIE_IN_KIND_WORDS } from "../line/words.ts";
import { bandOf, pairTolerance } from "../reconcile/likeness.ts";
import type { Standing } from "../reconcile/pairing.ts";
import type { AxisGap } from "../record/axis.ts";
import type { RecordEntry } from "../record/record.ts";
import { counterTolerance } from "../run/convert.ts";
import { unseenPart } from "../run/coverage.ts";
import { sidesAgree, type TieInPlace, together } from "../run/sighting.ts";
import type { Link, Links } from "./links.ts";

/** An entry on the axis, before and after its record's shift and scale. */
export interface EntryPlace {
  readonly recordStation: Cft | null;
  readonly station: Cft | null;
  readonly gap: AxisGap | null;
}

export interface StandingFacts {
  readonly file: Pick<LineFile, "line" | "tieIns" | "entries" | "records" | "runs">;
  readonly places: ReadonlyMap<string, TieInPlace>;
  readonly entryPlaces: ReadonlyMap<string, EntryPlace>;
  readonly links: Links;
  /** Tie-ins left over that the record may show after all, with the entry. */
  readonly doubtful: ReadonlyMap<string, string>;
  readonly coverage: readonly CoverageSpan[];
}

/** How a thing stands, whether that rests on a person's word, and why. */
interface StandingFinding {
  readonly standing: Standing;
  readonly decided: boolean;
  readonly sentence: string;
}

/** Branches that carry no sewage of a building. */
const NOT_SANITARY: ReadonlySet<TieIn["kind"]> = new Set([
  "yard-drain",
  "roof-drain",
  "cleanout-riser",
]);

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

/** True where the tie-in may be a building's branch, so that record entries are set against it. */
export function maybeSanitary(tieIn: TieIn): boolean {
  return !NOT_SANITARY.has(tieIn.kind);
}

/**
 * How a tie-in stands, in this order: proven inactive; not a sanitary branch; on record, by the
 * accepted or else the proposed entry, seen there or elsewhere; undocumented.
 */
export function tieInStanding(tieIn: TieIn, facts: StandingFacts): StandingFinding {
  const settled = settledWords(tieIn);
  if (tieIn.inactive)
    return {
      standing: "inactive",
      decided: tieIn.settledBy !== "",
      sentence: `Taken out of use${settled || ": who proved it is not noted"}.`,
    };
  if (!maybeSanitary(tieIn))
    return {
      standing: "not-a-sanitary-branch",
      decided: tieIn.settledBy !== "",
      sentence: `A ${TIE_IN_KIND_WORDS[tieIn.kind]}, no branch of a building${settled}.`,
    };
  const link = facts.links.byTieIn.get(tieIn.id);
  return link ? linkedStanding(link, facts) : undocumented(tieIn, facts);
}

/**
 * How a record entry stands: as the tie-in that it is paired with; else not seen where a run
 * looked all around its place, and not inspected where none did or its place is not known.
 */
export function entryStanding(entry: RecordEntry, facts: StandingFacts): StandingFinding {
  const link = facts.links.byEntry.get(entry.id);
  const tieIn = link && facts.file.tieIns.find((each) => each.id === link.tieInId);
  if (link && tieIn) {
    const own = linkedStanding(link, facts);
    const whole = tieInStanding(tieIn, facts);
    const gone = whole.standing === "inactive" || whole.standing === "not-a-sanitary-branch";
    if (!gone) return own;
    return { ...own, standing: whole.standing, sentence: `${own.sentence} ${whole.sentence}` };
  }
  const found = unpairedStanding(entry, facts);
  if (entry.explanation === "") return { ...found, decided: false };
  const by = entry.explainedBy === "" ? "" : ` by ${entry.explainedBy}`;
  return {
    ...found,
    decided: true,
    sentence: `${found.sentence} Explained${by}: ${stopped(entry.explanation)}`,
  };
}

/** `Side sewer card 1184`: what a record is called in sentences. */
export function recordName(record: { title: string; kind: string; number: string }): string {
  return record.title.trim() || `The ${record.kind} ${record.number}`.trim();
}

function linkedStanding(link: Link, facts: StandingFacts): StandingFinding {
  const entry = facts.file.entries.find((each) => each.id === link.entryId);
  const place = facts.places.get(link.tieInId);
  const entryPlace = facts.entryPlaces.get(link.entryId);
  const shown = entry ? shownWords(entry, facts) : "The record shows it";
  const seen = place ? seenWords(place, facts) : "seen";
  const said = link.accepted
    ? `${link.accepted.decidedBy || "Somebody"} accepted that they are the same.`
    : "Proposed; nobody has accepted it yet.";
  const compared = comparison({ entry, place, entryPlace });
  return {
    standing: compared.elsewhere ? "on-record-seen-elsewhere" : "on-record-and-seen",
    decided: link.accepted !== null,
    sentence: `${shown}; ${seen}${compared.words}. ${said}`,
  };
}

interface Compared {
  readonly entry: RecordEntry | undefined;
  readonly place: TieInPlace | undefined;
  readonly entryPlace: EntryPlace | undefined;
}

/** Whether the two lie apart, with the numbers. */
function comparison({ entry, place, entryPlace }: Compared): { elsewhere: boolean; words: string } {
  const seenAt = place?.station ?? null;
  const recordedAt = entryPlace?.station ?? null;
  if (seenAt === null || recordedAt === null)
    return { elsewhere: false, words: ", with no station to compare by" };
  const off = Math.abs(seenAt - recordedAt);
  const tolerance = pairTolerance(seenAt, place?.uncertainty ?? 0);
  const sameSide = sidesAgree(entry?.side ?? "unknown", place?.side ?? "unknown");
  const band = bandOf(off, tolerance, sameSide);
  const allowed =
    recordedAt === entryPlace?.recordStation ? "" : " once the record's zero is allowed for";
  const limit = off <= tolerance ? "within" : "beyond";
  const sides = sameSide ? "" : sideWords(entry?.side, place?.side);
  return {
    elsewhere: band !== "same",
    words: `: ${formatFeet(off)} apart${allowed}, ${limit} the ${formatFeet(tolerance)} that readings may differ by${sides}`,
  };
}

function sideWords(recorded: Side | undefined, seen: Side | undefined): string {
  return `; ${recorded ?? "unknown"} on the record, ${seen ?? "unknown"} in the pipe`;
}

function undocumented(tieIn: TieIn, facts: StandingFacts): StandingFinding {
  const place = facts.places.get(tieIn.id);
  const seen = capital(place ? seenWords(place, facts) : "seen");
  const conflict = facts.links.conflicts.find((each) => each.tieInId === tieIn.id);
  const standing = "undocumented";
  if (facts.file.entries.length === 0)
    return { standing, decided: false, sentence: `${seen}; no record has been entered yet.` };
  if ((place?.station ?? null) === null)
    return {
      standing,
      decided: false,
      sentence: `${seen}; its run was never tied to the main, so it can't be set against the record yet.`,
    };
  if (conflict) {
    const entry = facts.file.entries.find((each) => each.id === conflict.entryId);
    return {
      standing,
      decided: false,
      sentence: `${seen}; the nearest entry, ${entry?.label || "unnamed"}, lies ${formatFeet(Math.abs(conflict.distance))} off: too far to be the same without a reason.`,
    };
  }
  const maybe = facts.file.entries.find((each) => each.id === facts.doubtful.get(tieIn.id));
  if (maybe)
    return {
      standing,
      decided: false,
      sentence: `${seen}; it may be ${maybe.label || "an entry"} if the record has another zero, which is too little shown to say.`,
    };
  return { standing, decided: true, sentence: `${seen}; no entry on record answers to it.` };
}

function unpairedStanding(
  entry: RecordEntry,
  facts: StandingFacts,
): Pick<StandingFinding, "standing" | "sentence"> {
  const place = facts.entryPlaces.get(entry.id);
  const station = place?.station ?? null;
  const shown = shownWords(entry, facts);
  if (station === null) {
    const why = GAP_WORDS[place?.gap ?? "no-distance"];
    return {
      standing: "on-record-not-inspected",
      sentence: `${entry.label || "The entry"} ${why}, so no run can be said to have looked there.`,
    };
  }
  const { upperEnd } = facts.file.line;
  const slack = together(counterTolerance(station), 100);
  if (upperEnd !== null && station - slack > upperEnd)
    return {
      standing: "on-record-not-inspected",
      sentence: `${shown}; that is beyond the upper end at ${formatFeet(upperEnd)}.`,
    };
  const window = {
    from: Math.max(0, station - slack),
    to: Math.min(station + slack, upperEnd ?? Number.MAX_SAFE_INTEGER),
  };
  const unseen = unseenPart(facts.coverage, window) ?? beyond(facts.coverage, window);
  if (unseen)
    return {
      standing: "on-record-not-inspected",
      sentence: `${shown}; the pipe from ${plainFeet(unseen.from)} to ${formatFeet(unseen.to)} ${UNSEEN_WORDS[unseen.state]}, so it may be there unseen.`,
    };
  return {
    standing: "on-record-not-seen",
    sentence: `${shown}; the camera saw the pipe from ${plainFeet(window.from)} to ${formatFeet(window.to)} and no branch of its own there.`,
  };
}

function beyond(
  coverage: readonly CoverageSpan[],
  { to }: { readonly to: Cft },
): CoverageSpan | null {
  const end = coverage.at(-1)?.to ?? 0;
  return end < to ? { from: end, to, state: "not-inspected" } : null;
}

/** `Card 1184 shows House 14 at 34.0 ft (36.3 ft with its zero allowed for)`. */
function shownWords(entry: RecordEntry, { file, entryPlaces }: StandingFacts): string {
  const record = file.records.find((each) => each.id === entry.recordId);
  const name = record ? recordName(record) : "The record";
  const label = entry.label.trim() || "a connection";
  const place = entryPlaces.get(entry.id);
  if (!place || place.recordStation === null) return `${name} shows ${label}`;
  const moved = place.station !== null && place.station !== place.recordStation;
  const allowed = moved ? ` (${formatFeet(place.station)} with its zero allowed for)` : "";
  return `${name} shows ${label} at ${formatFeet(place.recordStation)}${allowed}`;
}

/** `seen at 36.5 ft, give or take 1.0 ft, in Run 1 and Run 2`. */
function seenWords(place: TieInPlace, { file }: StandingFacts): string {
  const ids = new Set(place.sightings.map((each) => each.runId));
  const runs = file.runs.filter((run) => ids.has(run.id)).map((run) => run.name || "a run");
  const where = runs.length === 0 ? "" : ` in ${runs.join(" and ")}`;
  if (place.station === null) return `seen${where} at no known station`;
  const at = formatFeet(place.station);
  if (place.uncertainty === 0) return `at ${at} as measured`;
  return `seen at ${at}, give or take ${formatFeet(place.uncertainty ?? 0)},${where || " by the camera"}`;
}

function settledWords({ settledBy, settledReason }: TieIn): string {
  const by = settledBy === "" ? "" : ` as ${settledBy} settled`;
  return settledReason.trim() === "" ? by : `${by}: ${settledReason.trim().replace(/\.$/, "")}`;
}

function stopped(text: string): string {
  return /[.!?]$/.test(text.trim()) ? text.trim() : `${text.trim()}.`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
