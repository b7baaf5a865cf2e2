import type { LineFile } from "../file/line-file.ts";
import type { EntryFinding, Report, TieInFinding } from "../file/report.ts";
import { formatFeet, plainFeet } from "../line/station.ts";
import type { ReachFinding } from "../responsibility/reach-finding.ts";
import { bearsDemand } from "./evidence.ts";
import type { Hold, HoldCause, HoldStop, Waiver } from "./hold.ts";
import { type RulingEffect, rulingEffects } from "./ruling-effects.ts";
import { ruledWords } from "./ruling-in-force.ts";

type HoldFile = Pick<
  LineFile,
  | "line"
  | "authority"
  | "agreements"
  | "entries"
  | "crossings"
  | "properties"
  | "runs"
  | "observations"
  | "rulings"
  | "waivers"
>;
type HoldFacts = Pick<Report, "tieIns" | "entries" | "proposals" | "reaches" | "stations">;

/** Holds say what they stop; the kinds of work and money that each cause makes unsafe or unfair. */
const STOPS: Record<HoldCause, readonly HoldStop[]> = {
  "tie-in-owner-unknown": ["capping", "lining", "final-split", "demand"],
  "tie-in-undecided": ["capping", "lining", "final-split", "demand"],
  "ruling-not-done": ["lining", "final-split"],
  "entry-undecided": ["final-split", "submission"],
  "entry-not-inspected": ["lining", "final-split"],
  "station-relative-only": ["capping", "lining", "final-split", "digging"],
  "responsibility-unclear": ["final-split", "demand"],
  "easement-missing": ["submission", "digging"],
  "crossing-seen": ["capping", "lining", "digging"],
};

interface Cause {
  readonly cause: HoldCause;
  readonly subjectId: string;
  readonly subjectLabel: string;
  readonly sentence: string;
  readonly closes: string;
  /** Where it stops less than its cause usually does. */
  readonly stops?: readonly HoldStop[];
}

/**
 * Every hard stop on the line, in the order of their causes. A hold goes when its cause is
 * settled; a waiver leaves it there, with the name of who lets the work go on.
 */
export function holdsOn(file: HoldFile, facts: HoldFacts): Hold[] {
  const causes = [
    ...facts.tieIns.flatMap((finding) => tieInCause(finding, facts)),
    ...rulingEffects(file, facts.tieIns).flatMap(rulingCause),
    ...facts.entries.flatMap((finding) => entryCause(finding, file)),
    ...facts.tieIns.flatMap(relativeCause),
    ...unclearCauses(facts.reaches),
    ...easementCauses(file),
    ...crossingCauses(file, facts),
  ];
  return causes.map((cause) => hold(cause, file.waivers));
}

/** True where something unwaived stops this kind of work or money on the line. */
export function isStopped(holds: readonly Hold[], stop: HoldStop): boolean {
  return holds.some((each) => each.waiver === null && each.stops.includes(stop));
}

function hold(cause: Cause, waivers: readonly Waiver[]): Hold {
  const key = `${cause.cause}:${cause.subjectId}`;
  const waiver = waivers.findLast((each) => each.holdKey === key) ?? null;
  return { key, ...cause, stops: cause.stops ?? STOPS[cause.cause], waiver };
}

/** An undocumented branch stops until tests or its owner say whose it is; an undecided one until a person decides. */
function tieInCause(finding: TieInFinding, { proposals }: HoldFacts): Cause[] {
  const { tieIn, standing } = finding;
  const name = nameOf(tieIn);
  const subject = { subjectId: tieIn.id, subjectLabel: name };
  const known = bearsDemand(finding.level, tieIn.ownerAccepted);
  if (standing === "undocumented" && finding.live && !known)
    return [
      {
        cause: "tie-in-owner-unknown",
        ...subject,
        sentence: `${name}${atWords(finding)} is on no record, and it is not proven whose it is. ${finding.levelReason}`,
        closes:
          "A repeated dye test with a negative control, digging, the owner’s or the authority’s written acceptance, or a record entry that a person accepts for it",
      },
    ];
  if (standing === "accepted-by-ruling") return acceptedCause(finding);
  if (isThoughtDead(finding))
    return [
      {
        cause: "tie-in-undecided",
        ...subject,
        sentence: `${name}${atWords(finding)} is thought dead but not proven dead; behind it somebody’s sewage may have nowhere to go.`,
        closes: "A named person’s word that it is proven inactive, with how that was shown",
      },
    ];
  if (finding.decided || standing === "undocumented") return [];
  const waits = proposals.some((each) => each.tieInId === tieIn.id);
  return [
    {
      cause: "tie-in-undecided",
      ...subject,
      sentence: waits
        ? `${name} waits for a person’s decision. ${finding.sentence}`
        : `What is said of ${name}${atWords(finding)} is not settled by a named person.`,
      closes: waits ? "A named person accepts or refuses the pairing" : "A named person settles it",
    },
  ];
}

/** The authority's word documents the branch; whose it is may still be open. */
function acceptedCause(finding: TieInFinding): Cause[] {
  const { tieIn, propertyId, live } = finding;
  if (propertyId !== null || !live) return [];
  const name = nameOf(tieIn);
  return [
    {
      cause: "tie-in-owner-unknown",
      subjectId: tieIn.id,
      subjectLabel: name,
      sentence: `${name}${atWords(finding)} is accepted by the authority, but nobody has said whose it is.`,
      closes: "A named person’s word whose it is, with what shows it",
      stops: ["capping", "final-split", "demand"],
    },
  ];
}

/** A branch that has to come off holds until it is off: lining would seal it, a split would count it. */
function rulingCause({ ruling, label, holds, asks }: RulingEffect): Cause[] {
  if (!holds || asks === null) return [];
  return [
    {
      cause: "ruling-not-done",
      subjectId: ruling.tieInId,
      subjectLabel: label,
      sentence: `${label} ${ruledWords(ruling)}. That is not done yet.`,
      closes: "A named person’s word that it is done, with how and when",
    },
  ];
}

function isThoughtDead({ tieIn }: TieInFinding): boolean {
  return tieIn.kind === "old-septic-line" && !tieIn.inactive;
}

function entryCause(finding: EntryFinding, file: HoldFile): Cause[] {
  if (finding.decided || finding.tieInId !== null) return [];
  const entry = file.entries.find((each) => each.id === finding.entryId);
  const subjectLabel = entry?.label || "an entry";
  const common = { subjectId: finding.entryId, subjectLabel, sentence: finding.sentence };
  if (finding.standing === "on-record-not-inspected")
    return [
      {
        cause: "entry-not-inspected",
        ...common,
        closes: "A run that sees the pipe there, a pairing, or a named person’s explanation",
      },
    ];
  return [
    {
      cause: "entry-undecided",
      ...common,
      closes: "A pairing that a person accepts, or a named person’s explanation",
    },
  ];
}

function relativeCause(finding: TieInFinding): Cause[] {
  if (finding.station !== null || finding.standing === "inactive") return [];
  const { tieIn } = finding;
  return [
    {
      cause: "station-relative-only",
      subjectId: tieIn.id,
      subjectLabel: nameOf(tieIn),
      sentence: `${nameOf(tieIn)} was seen in a run that was never tied to the main: nobody can say where on the line it is.`,
      closes:
        "An anchor on its run, such as the main connection or a cleanout of known station, or a measured station",
    },
  ];
}

/** One hold for each unbroken stretch that costs something or serves somebody. */
function unclearCauses(reaches: readonly ReachFinding[]): Cause[] {
  const stretches: { from: number; to: number; reason: string }[] = [];
  for (const reach of reaches) {
    if (reach.holder !== "unclear") continue;
    const last = stretches.at(-1);
    if (last && last.to === reach.from) last.to = reach.to;
    else stretches.push({ from: reach.from, to: reach.to, reason: reach.reason });
  }
  return stretches.map(({ from, to, reason }) => {
    const where = `${plainFeet(from)} to ${formatFeet(to)}`;
    return {
      cause: "responsibility-unclear" as const,
      subjectId: `${from}-${to}`,
      subjectLabel: where,
      sentence: `Who answers for the pipe from ${where} is unclear. ${reason}`.trim(),
      closes: "A rule of the authority or a recorded agreement that covers it",
    };
  });
}

function easementCauses(file: HoldFile): Cause[] {
  return file.crossings
    .filter((crossing) => crossing.easement !== "recorded")
    .map((crossing) => {
      const property = file.properties.find((each) => each.id === crossing.propertyId);
      const subjectLabel = property?.address.street || "a crossed lot";
      const where = `${plainFeet(crossing.from)} to ${formatFeet(crossing.to)}`;
      const state =
        crossing.easement === "none"
          ? "no easement is recorded for it, so nobody digs there without the owner’s consent"
          : "whether an easement is recorded for it is not known yet";
      return {
        cause: "easement-missing" as const,
        subjectId: crossing.id,
        subjectLabel,
        sentence: `The line crosses ${subjectLabel} from ${where}; ${state}.`,
        closes:
          "The recording number of an easement, or a named person’s waiver once the owner consents in writing",
      };
    });
}

/** Something that crosses the pipe may be a gas line bored through it: nobody cuts, lines or digs there. */
function crossingCauses(file: HoldFile, { stations }: HoldFacts): Cause[] {
  const seen = file.observations.filter((each) => each.kind === "crossing");
  const told = new Set(seen.map((each) => each.runId));
  const closes =
    "The utility’s own word what crosses and that it is made safe, noted with a named person’s waiver";
  return [
    ...seen.map((each) => {
      const station = stations.find((at) => at.observationId === each.id)?.station ?? null;
      const where = station === null ? "at no known station" : `at ${formatFeet(station)}`;
      return {
        cause: "crossing-seen" as const,
        subjectId: each.id,
        subjectLabel: `crossing ${where}`,
        sentence: `The camera saw something cross the pipe ${where}: it may be a gas line, so nothing is cut, lined or dug there until it is known.`,
        closes,
      };
    }),
    ...file.runs
      .filter((run) => run.crossingSeen === "yes" && !told.has(run.id))
      .map((run) => ({
        cause: "crossing-seen" as const,
        subjectId: run.id,
        subjectLabel: run.name || "a run",
        sentence: `${run.name || "A run"} saw something cross the pipe: it may be a gas line, so nothing is cut, lined or dug until it is known what and where.`,
        closes,
      })),
  ];
}

function nameOf({ label }: TieInFinding["tieIn"]): string {
  return label.trim() || "Unlabelled tie-in";
}

function atWords({ station }: TieInFinding): string {
  return station === null ? "" : ` at ${formatFeet(station)}`;
}
