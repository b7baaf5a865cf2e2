import type { Hold, HoldCause, HoldStop, RaisedHold, Waiver } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import type { EntryFinding, Report, TieInFinding } from "../findings/report.ts";
import { formatFeet, plainFeet } from "../length/station.ts";
import type { Stretch } from "../length/stretch.ts";
import { LIKELY_LIMIT } from "../reconcile/likeness.ts";
import { propertyLabel } from "../sharing/sharers.ts";
import { around, placeOfTieIn } from "../stops/stopped-by.ts";
import { contradicts, evidenceLevel } from "../tiein/evidence.ts";
import { isOwnerOpen, isUnsettled } from "../tiein/open-question.ts";
import { type RulingEffect, rulingEffects } from "../tiein/ruling-effects.ts";
import { ruledWords } from "../tiein/ruling-in-force.ts";
import { branchCauses } from "./branch-holds.ts";
import { crossingCauses } from "./crossing-holds.ts";
import { landCauses } from "./land-holds.ts";
import { needCauses } from "./need-holds.ts";
import { utilityCauses } from "./utility-holds.ts";

type HoldFile = Pick<
  LineFile,
  | "line"
  | "scope"
  | "options"
  | "changeOrders"
  | "authority"
  | "agreements"
  | "entries"
  | "crossings"
  | "land"
  | "properties"
  | "runs"
  | "anchors"
  | "reconnections"
  | "observations"
  | "rulings"
  | "waivers"
  | "units"
  | "parties"
  | "roles"
  | "householdCalls"
  | "tieIns"
  | "events"
  | "testDays"
  | "locateTickets"
  | "utilityResponses"
  | "permits"
  | "permitSteps"
  | "tests"
>;
type HoldFacts = Pick<
  Report,
  "today" | "tieIns" | "entries" | "proposals" | "reaches" | "stations" | "runCoverage" | "extent"
>;

/** Holds say what they stop; the kinds of work and money that each cause makes unsafe or unfair. */
const STOPS: Record<HoldCause, readonly HoldStop[]> = {
  "tie-in-owner-unknown": ["capping", "lining", "bursting", "final-split", "demand"],
  "tie-in-undecided": ["capping", "lining", "bursting", "final-split", "demand"],
  "ruling-not-done": ["lining", "bursting", "final-split"],
  "entry-undecided": ["final-split", "submission"],
  "entry-not-inspected": ["lining", "bursting", "final-split"],
  "entry-place-unclear": ["lining", "bursting", "final-split", "submission"],
  "station-relative-only": ["capping", "lining", "bursting", "final-split", "digging"],
  "responsibility-unclear": ["final-split", "demand"],
  "easement-missing": ["submission", "digging"],
  "crossing-seen": ["clearing", "jetting", "capping", "lining", "bursting", "digging"],
  "crossing-not-ruled-out": ["clearing", "lining", "bursting"],
  "land-unknown": ["submission", "digging"],
  "branch-unmeasured": ["closing-branches"],
  "utility-open": ["digging", "bursting"],
  "household-need": ["pause", "test-visit"],
};

/**
 * Every hard stop on the line, in the order of their causes. A hold goes when its cause is
 * settled; a waiver leaves it there, with the name of who lets the work go on.
 */
export function holdsOn(file: HoldFile, facts: HoldFacts): Hold[] {
  const causes = [
    ...facts.tieIns.flatMap((finding) => tieInCause(finding, file, facts)),
    ...rulingEffects(file, facts.tieIns).flatMap((effect) => rulingCause(effect, facts)),
    ...facts.entries.flatMap((finding) => entryCause(finding, file)),
    ...facts.tieIns.flatMap(relativeCause),
    ...unclearCauses(facts.reaches),
    ...easementCauses(file),
    ...landCauses(file, facts),
    ...crossingCauses(file, facts),
    ...branchCauses(file, facts),
    ...utilityCauses(file, facts),
    ...needCauses(file, facts),
  ];
  return causes.map((cause) => hold(cause, file.waivers));
}

/** What somebody in a house needs is nobody else’s to waive: they are called. */
export function isWaivable(cause: HoldCause): boolean {
  return cause !== "household-need";
}

function hold(cause: RaisedHold, waivers: readonly Waiver[]): Hold {
  const key = `${cause.cause}:${cause.subjectId}`;
  const waiver = isWaivable(cause.cause)
    ? (waivers.findLast((each) => each.holdKey === key) ?? null)
    : null;
  return { key, ...cause, stops: cause.stops ?? STOPS[cause.cause], waiver };
}

/**
 * An undocumented branch stops until tests or its owner say whose it is; an undecided one until a person
 * decides. Tests that show one owner settle nothing by themselves, and against another's name they stop.
 */
function tieInCause(
  finding: TieInFinding,
  file: HoldFile,
  { proposals, tieIns }: HoldFacts,
): RaisedHold[] {
  const { tieIn, standing } = finding;
  const name = nameOf(tieIn);
  const stretch = placeOfTieIn(finding, tieIns);
  const subject = { subjectId: tieIn.id, subjectLabel: name, stretch };
  if (isOwnerOpen(finding))
    return [
      {
        cause: "tie-in-owner-unknown",
        ...subject,
        sentence: `${name}${atWords(finding)} is not on record and its owner is not proven. ${finding.levelReason}`,
        closes:
          "A second dye test with a negative control, excavation, written acceptance by the owner or the authority, or a record entry matched to it",
      },
    ];
  const asTested = testedCause(finding, file);
  if (asTested !== null) return [{ ...subject, ...asTested }];
  if (standing === "accepted-by-ruling") return acceptedCause(finding, stretch);
  if (isThoughtDead(finding))
    return [
      {
        cause: "tie-in-undecided",
        ...subject,
        sentence: `${name}${atWords(finding)} is believed inactive but not proven; someone’s sewage may have nowhere to go.`,
        closes: "A named person confirms it is proven inactive, and how",
      },
    ];
  if (finding.decided || standing === "undocumented") return [];
  const waits = proposals.some((each) => each.tieInId === tieIn.id);
  return [
    {
      cause: "tie-in-undecided",
      ...subject,
      sentence: waits
        ? `${name} needs a decision by a named person. ${finding.sentence}`
        : `The status of ${name}${atWords(finding)} has not been confirmed by a named person.`,
      closes: waits ? "A named person accepts or rejects the match" : "A named person settles it",
    },
  ];
}

/** What tests showed and nobody has settled, or what speaks against how it was settled. */
function testedCause(
  finding: TieInFinding,
  { tests, properties }: HoldFile,
): Pick<RaisedHold, "cause" | "sentence" | "closes" | "stops"> | null {
  const { tieIn, propertyId, live } = finding;
  if (!live) return null;
  const houseOf = (id: string) => {
    const property = properties.find((each) => each.id === id);
    return property === undefined ? "a property that is not in the file" : propertyLabel(property);
  };
  const evidence = evidenceLevel(tieIn, tests);
  const shown = houseOf(evidence.propertyId ?? "");
  const name = `${nameOf(tieIn)}${atWords(finding)}`;
  if (contradicts(propertyId, evidence))
    return {
      cause: "tie-in-undecided",
      sentence: `${name} is assigned to ${houseOf(propertyId ?? "")}, but tests point to ${shown}.`,
      closes: "A named person settles it as the tests show, or tests tell the two apart",
    };
  if (!isUnsettled(finding)) return null;
  return {
    cause: "tie-in-undecided",
    sentence: `Tests show that ${name} serves ${shown}; no one has settled it yet.`,
    closes: "A named person settles the owner",
    stops: ["capping", "final-split", "demand"],
  };
}

/** The authority's word documents the branch; whose it is may still be open. */
function acceptedCause(finding: TieInFinding, stretch: Stretch | null): RaisedHold[] {
  const { tieIn, propertyId, live } = finding;
  if (propertyId !== null || !live) return [];
  const name = nameOf(tieIn);
  return [
    {
      cause: "tie-in-owner-unknown",
      subjectId: tieIn.id,
      subjectLabel: name,
      sentence: `${name}${atWords(finding)} is accepted by the authority, but its owner is not settled.`,
      closes: "A named person settles the owner, with the evidence",
      stretch,
      stops: ["capping", "final-split", "demand"],
    },
  ];
}

/** A branch that has to come off holds until it is off: lining would seal it, a split would count it. */
function rulingCause(
  { ruling, label, holds, asks }: RulingEffect,
  { tieIns }: HoldFacts,
): RaisedHold[] {
  if (!holds || asks === null) return [];
  const finding = tieIns.find(({ tieIn }) => tieIn.id === ruling.tieInId);
  return [
    {
      cause: "ruling-not-done",
      subjectId: ruling.tieInId,
      subjectLabel: label,
      sentence: `${label} ${ruledWords(ruling)}. That is not done yet.`,
      closes: "A named person confirms it is done, and how and when",
      stretch: finding === undefined ? null : placeOfTieIn(finding, tieIns),
    },
  ];
}

function isThoughtDead({ tieIn }: TieInFinding): boolean {
  return tieIn.kind === "old-septic-line" && !tieIn.inactive;
}

function entryCause(finding: EntryFinding, file: HoldFile): RaisedHold[] {
  if (finding.decided || finding.tieInId !== null) return [];
  const entry = file.entries.find((each) => each.id === finding.entryId);
  const subjectLabel = entry?.label || "an entry";
  const { entryId: subjectId, sentence } = finding;
  const stretch = around(finding.station ?? finding.recordStation, LIKELY_LIMIT);
  const common = { subjectId, subjectLabel, sentence, stretch };
  if (finding.standing === "on-record-not-inspected")
    return [
      {
        cause: "entry-not-inspected",
        ...common,
        closes: "A run that sees the pipe there, a match, or a named person’s explanation",
      },
    ];
  if (finding.standing === "on-record-place-unclear")
    return [
      {
        cause: "entry-place-unclear",
        ...common,
        stretch: null,
        closes: "A named person accepts how the record lines up, matches it, or explains it",
      },
    ];
  return [
    {
      cause: "entry-undecided",
      ...common,
      closes: "A match that a person accepts, or a named person’s explanation",
    },
  ];
}

function relativeCause(finding: TieInFinding): RaisedHold[] {
  if (finding.station !== null || finding.standing === "inactive") return [];
  const { tieIn } = finding;
  return [
    {
      cause: "station-relative-only",
      subjectId: tieIn.id,
      subjectLabel: nameOf(tieIn),
      sentence: `${nameOf(tieIn)} was seen in a run that was never tied to the main, so its location is unknown.`,
      closes:
        "A known point on its run, such as the main connection or a cleanout with a known station, or a measured station",
      stretch: null,
    },
  ];
}

/** One hold for each unbroken stretch that costs something or serves somebody. */
function unclearCauses(reaches: readonly ReachFinding[]): RaisedHold[] {
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
      sentence: `Who is responsible for the pipe from ${where} is unclear. ${reason}`.trim(),
      closes: "A rule of the authority or a recorded agreement that covers it",
      stretch: { from, to },
    };
  });
}

function easementCauses(file: HoldFile): RaisedHold[] {
  return file.crossings
    .filter((crossing) => crossing.easement !== "recorded")
    .map((crossing) => {
      const property = file.properties.find((each) => each.id === crossing.propertyId);
      const subjectLabel = property?.address.street || "a crossed lot";
      const where = `${plainFeet(crossing.from)} to ${formatFeet(crossing.to)}`;
      const state =
        crossing.easement === "none"
          ? "no easement is recorded for it, so no one digs there without the owner’s consent"
          : "it is not known yet whether an easement is recorded";
      return {
        cause: "easement-missing" as const,
        subjectId: crossing.id,
        subjectLabel,
        sentence: `The line crosses ${subjectLabel} from ${where}; ${state}.`,
        closes:
          "An easement’s recording number, or a named person’s waiver once the owner consents in writing",
        stretch: { from: crossing.from, to: crossing.to },
      };
    });
}

function nameOf({ label }: TieInFinding["tieIn"]): string {
  return label.trim() || "Unlabeled tie-in";
}

function atWords({ station }: TieInFinding): string {
  return station === null ? "" : ` at ${formatFeet(station)}`;
}
