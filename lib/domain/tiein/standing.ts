import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Standing } from "../facts/pairing.ts";
import type { RecordEntry } from "../facts/record.ts";
import type { CoverageSpan } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { type Course, compassAt } from "../plan/course.ts";
import type { Doubt } from "../reconcile/doubt.ts";
import { bandOf, pairTolerance } from "../reconcile/likeness.ts";
import type { AxisGap } from "../record/axis.ts";
import { counterTolerance } from "../run/convert.ts";
import { unseenPart } from "../run/coverage.ts";
import { sidesAgree, type TieInPlace, together } from "../run/sighting.ts";
import type { Link, Links } from "./links.ts";
import { documentingRuling, rulingInForce } from "./ruling-in-force.ts";
import {
  type ComparedSaid,
  type SeenSaid,
  type ShownSaid,
  type StandingSaid,
  standingSentence,
} from "./standing-said.ts";
import { STANDING_EN } from "./standing-words-en.ts";
import { STANDING_ES } from "./standing-words-es.ts";

/** An entry on the axis, before and after its record's shift and scale. */
export interface EntryPlace {
  readonly recordStation: Cft | null;
  readonly station: Cft | null;
  readonly gap: AxisGap | null;
}

export interface StandingFacts {
  readonly file: Pick<LineFile, "line" | "tieIns" | "entries" | "records" | "runs" | "rulings">;
  readonly places: ReadonlyMap<string, TieInPlace>;
  readonly entryPlaces: ReadonlyMap<string, EntryPlace>;
  readonly links: Links;
  /** Tie-ins, and entries, left over that may have a counterpart after all. */
  readonly doubtful: ReadonlyMap<string, Doubt>;
  readonly doubtfulEntries: ReadonlyMap<string, Doubt>;
  /** Tie-ins left over that fit an entry nearly as well as the one proposed for it, with the entry. */
  readonly nearTies: ReadonlyMap<string, string>;
  /** Entries left over that fit a tie-in nearly as well as the entry proposed for it. */
  readonly nearTieEntries: ReadonlyMap<string, string>;
  /** Entries that their record has twice, with the one that they repeat. */
  readonly doubled: ReadonlyMap<string, string>;
  readonly coverage: readonly CoverageSpan[];
  /** Where the line lies on the ground; null where no bearing is on file. */
  readonly course: Course | null;
}

/** How a thing stands, whether that rests on a person's word, and why. */
interface StandingFinding {
  readonly standing: Standing;
  readonly decided: boolean;
  /** In English, and in Spanish: the same facts, the same numbers. */
  readonly sentence: string;
  readonly sentenceEs: string;
}

/** How a thing stands, before it is put into words. */
interface Stood {
  readonly standing: Standing;
  readonly decided: boolean;
  readonly said: readonly StandingSaid[];
}

/** Branches that carry no sewage of a building. */
const NOT_SANITARY: ReadonlySet<TieIn["kind"]> = new Set([
  "yard-drain",
  "roof-drain",
  "cleanout-riser",
]);

/** True where the tie-in may be a building's branch, so that record entries are set against it. */
export function maybeSanitary(tieIn: TieIn): boolean {
  return !NOT_SANITARY.has(tieIn.kind);
}

/**
 * How a tie-in stands, in this order: proven inactive; not a sanitary branch; on record, by the
 * accepted or else the proposed entry, seen there or elsewhere; accepted by a ruling that stands for
 * an entry; undocumented, with what was ruled on it.
 */
export function tieInStanding(tieIn: TieIn, facts: StandingFacts): StandingFinding {
  return worded(tieInStood(tieIn, facts));
}

/**
 * How a record entry stands: as the tie-in that it is paired with; else not inspected where no run
 * looked all around its place or the record gives none; else not seen, unless which place in the
 * pipe the record means is in doubt.
 */
export function entryStanding(entry: RecordEntry, facts: StandingFacts): StandingFinding {
  return worded(entryStood(entry, facts));
}

function worded({ standing, decided, said }: Stood): StandingFinding {
  return {
    standing,
    decided,
    sentence: standingSentence(STANDING_EN, said),
    sentenceEs: standingSentence(STANDING_ES, said),
  };
}

function tieInStood(tieIn: TieIn, facts: StandingFacts): Stood {
  const { settledBy, settledReason } = tieIn;
  const settled = { settledBy, settledReason };
  const decided = settledBy !== "";
  if (tieIn.inactive)
    return { standing: "inactive", decided, said: [{ kind: "inactive", settled }] };
  if (!maybeSanitary(tieIn))
    return {
      standing: "not-a-sanitary-branch",
      decided,
      said: [{ kind: "not-sanitary", tieInKind: tieIn.kind, settled }],
    };
  const link = facts.links.byTieIn.get(tieIn.id);
  return link ? linkedStood(link, facts) : ruled(tieIn, facts);
}

function entryStood(entry: RecordEntry, facts: StandingFacts): Stood {
  const firstId = facts.doubled.get(entry.id);
  const first = facts.file.entries.find((each) => each.id === firstId);
  if (first === undefined) return ownStood(entry, facts);
  const stood = ownStood(first, facts);
  return { ...stood, said: [{ kind: "written-twice" }, ...stood.said] };
}

function ownStood(entry: RecordEntry, facts: StandingFacts): Stood {
  const link = facts.links.byEntry.get(entry.id);
  const tieIn = link && facts.file.tieIns.find((each) => each.id === link.tieInId);
  if (link && tieIn) {
    const own = linkedStood(link, facts);
    const whole = tieInStood(tieIn, facts);
    const gone = whole.standing === "inactive" || whole.standing === "not-a-sanitary-branch";
    if (!gone) return own;
    return { ...own, standing: whole.standing, said: [...own.said, ...whole.said] };
  }
  const found = unpaired(entry, facts);
  const said = [found.said];
  if (entry.explanation === "") return { standing: found.standing, decided: false, said };
  const { explanation, explainedBy: by } = entry;
  return {
    standing: found.standing,
    decided: true,
    said: [...said, { kind: "explained", by, explanation }],
  };
}

function linkedStood(link: Link, facts: StandingFacts): Stood {
  const entry = facts.file.entries.find((each) => each.id === link.entryId);
  const place = facts.places.get(link.tieInId);
  const entryPlace = facts.entryPlaces.get(link.entryId);
  const tieIn = facts.file.tieIns.find(({ id }) => id === link.tieInId);
  const course = tieIn?.parentId === null ? facts.course : null;
  const { elsewhere, compared } = comparison({ entry, place, entryPlace, course });
  return {
    standing: elsewhere ? "on-record-seen-elsewhere" : "on-record-and-seen",
    decided: link.accepted !== null,
    said: [
      {
        kind: "linked",
        shown: entry ? shownOf(entry, facts) : null,
        seen: seenOf(place, facts),
        compared,
        acceptedBy: link.accepted?.decidedBy ?? null,
      },
    ],
  };
}

interface Compared {
  readonly entry: RecordEntry | undefined;
  readonly place: TieInPlace | undefined;
  readonly entryPlace: EntryPlace | undefined;
  /** Null where there is no bearing, and for a branch of a branch, which has none. */
  readonly course: Course | null;
}

/** Whether the two lie apart, with the numbers. */
function comparison({ entry, place, entryPlace, course }: Compared): {
  readonly elsewhere: boolean;
  readonly compared: ComparedSaid | null;
} {
  const seenAt = place?.station ?? null;
  const recordedAt = entryPlace?.station ?? null;
  if (seenAt === null || recordedAt === null) return { elsewhere: false, compared: null };
  const off = Math.abs(seenAt - recordedAt);
  const tolerance = pairTolerance(
    { station: seenAt, uncertainty: place?.uncertainty ?? 0 },
    { uncertainty: entry?.uncertainty ?? 0 },
  );
  const recorded = entry?.side ?? "unknown";
  const seen = place?.side ?? "unknown";
  const sameSide = sidesAgree(recorded, seen);
  return {
    elsewhere: bandOf(off, tolerance, sameSide) !== "same",
    compared: {
      off,
      tolerance,
      allowedFor: recordedAt !== entryPlace?.recordStation,
      sides: sameSide
        ? null
        : {
            recorded: { side: recorded, compass: compassAt(course, recordedAt, recorded) },
            seen: { side: seen, compass: compassAt(course, seenAt, seen) },
          },
    },
  };
}

/** What nobody has recorded, as the authority ruled on it. */
function ruled(tieIn: TieIn, facts: StandingFacts): Stood {
  const stood = undocumented(tieIn, facts);
  const ruling = rulingInForce(facts.file.rulings, tieIn.id);
  if (ruling === null) return stood;
  const said = [...stood.said, { kind: "ruled", ruling } as const];
  return documentingRuling(facts.file.rulings, tieIn.id)
    ? { standing: "accepted-by-ruling", decided: true, said }
    : { ...stood, said };
}

function undocumented(tieIn: TieIn, facts: StandingFacts): Stood {
  const place = facts.places.get(tieIn.id);
  const seen = seenOf(place, facts);
  const standing = "undocumented";
  const open = (said: StandingSaid): Stood => ({ standing, decided: false, said: [said] });
  if (facts.file.entries.length === 0) return open({ kind: "no-record-yet", seen });
  if ((place?.station ?? null) === null) return open({ kind: "never-tied", seen });
  const labelOf = (entryId: string | undefined) =>
    facts.file.entries.find((each) => each.id === entryId)?.label ?? null;
  const conflict = facts.links.conflicts.find((each) => each.tieInId === tieIn.id);
  if (conflict) {
    const entry = labelOf(conflict.entryId) ?? "";
    return open({ kind: "conflict", seen, entry, off: Math.abs(conflict.distance) });
  }
  const tied = labelOf(facts.nearTies.get(tieIn.id));
  if (tied !== null) return open({ kind: "near-tie", seen, entry: tied });
  const doubt = facts.doubtful.get(tieIn.id);
  if (doubt) {
    const entry = labelOf(doubt.otherId ?? undefined) ?? "";
    return open({ kind: "doubtful", seen, why: doubt.why, entry });
  }
  const unplaced = facts.file.entries.find((entry) => isUnplaced(entry, facts));
  if (unplaced) return open({ kind: "unplaced-entry", seen, entry: unplaced.label });
  return { standing, decided: true, said: [{ kind: "no-entry", seen }] };
}

/** On the record without a place that can be compared, and nobody has said what became of it. */
function isUnplaced(entry: RecordEntry, { entryPlaces, links }: StandingFacts): boolean {
  const station = entryPlaces.get(entry.id)?.station ?? null;
  return station === null && entry.explanation === "" && !links.byEntry.has(entry.id);
}

function unpaired(
  entry: RecordEntry,
  facts: StandingFacts,
): { readonly standing: Standing; readonly said: StandingSaid } {
  const place = facts.entryPlaces.get(entry.id);
  const station = place?.station ?? null;
  const notInspected = (said: StandingSaid) =>
    ({ standing: "on-record-not-inspected", said }) as const;
  if (station === null)
    return notInspected({
      kind: "no-station",
      entry: entry.label,
      gap: place?.gap ?? "no-distance",
    });
  const shown = shownOf(entry, facts);
  const { upperEnd } = facts.file.line;
  const slack = together(counterTolerance(station), 100);
  if (upperEnd !== null && station - slack > upperEnd)
    return notInspected({ kind: "beyond-end", shown, upperEnd });
  const window = {
    from: Math.max(0, station - slack),
    to: Math.min(station + slack, upperEnd ?? Number.MAX_SAFE_INTEGER),
  };
  const unseen = unseenPart(facts.coverage, window) ?? beyond(facts.coverage, window);
  if (unseen) return notInspected({ kind: "not-inspected", shown, unseen });
  const doubt = facts.doubtfulEntries.get(entry.id);
  if (doubt) {
    const tieIn = tieInLabel(facts, doubt.otherId);
    const said = { kind: "place-unclear", shown, why: doubt.why, tieIn } as const;
    return { standing: "on-record-place-unclear", said };
  }
  const nearly = tieInLabel(facts, facts.nearTieEntries.get(entry.id) ?? null);
  return { standing: "on-record-not-seen", said: { kind: "not-seen", shown, ...window, nearly } };
}

function tieInLabel({ file }: StandingFacts, tieInId: string | null): string {
  const tieIn = file.tieIns.find((each) => each.id === tieInId);
  return tieIn ? tieIn.label.trim() || "a tie-in" : "";
}

function beyond(
  coverage: readonly CoverageSpan[],
  { to }: { readonly to: Cft },
): CoverageSpan | null {
  const end = coverage.at(-1)?.to ?? 0;
  return end < to ? { from: end, to, state: "not-inspected" } : null;
}

function shownOf(entry: RecordEntry, { file, entryPlaces }: StandingFacts): ShownSaid {
  const place = entryPlaces.get(entry.id);
  const station = place?.recordStation ?? null;
  const moved = place && place.station !== station ? place.station : null;
  const record = file.records.find((each) => each.id === entry.recordId) ?? null;
  const off = entry.uncertainty ?? 0;
  return { record, label: entry.label, station, off, moved };
}

function seenOf(place: TieInPlace | undefined, { file }: StandingFacts): SeenSaid | null {
  if (!place) return null;
  const ids = new Set(place.sightings.map((each) => each.runId));
  const runs = file.runs.filter((run) => ids.has(run.id)).map((run) => run.name);
  return { station: place.station, uncertainty: place.uncertainty ?? 0, runs };
}
