import { formatDate } from "../calendar/format-day.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Report, TieInFinding } from "../file/report.ts";
import { type Cft, formatFeet } from "../line/station.ts";
import type { Property } from "../party/party.ts";
import type { TestKind, TieInTest } from "./test.ts";

/** A property that a tie-in may belong to, with what speaks for it and against it. */
export interface Candidate {
  readonly propertyId: string;
  /** Only for the order; no probability. */
  readonly weight: number;
  readonly speaksFor: readonly string[];
  readonly speaksAgainst: readonly string[];
}

interface Clue {
  readonly weight: number;
  readonly sentence: string;
}

/** A test that was seen outweighs position and record: trade practice, evidence before guess. */
const SEEN_WEIGHT: Record<TestKind, number> = {
  excavation: 100,
  dye: 40,
  flow: 35,
  trace: 30,
  statement: 25,
  smoke: 10,
};

const SEEN_WORDS: Record<TestKind, string> = {
  excavation: "Digging showed it",
  dye: "Dye from here was seen",
  flow: "Water from here was seen",
  trace: "A trace points here",
  statement: "A statement names it",
  smoke: "Smoke showed here",
};

/** Within this distance a thing is spoken of as near. */
const NEAR: Cft = 1_500;

/**
 * The properties that a tie-in may belong to, the likeliest first: by its tests, by record entries
 * that nothing answers to, by where it lies, and by what is still without a tie-in. Properties that
 * nothing speaks for are left out. A test that saw nothing weighs little, since slow pipes, traps
 * and blockages hide dye.
 */
export function candidatesFor(
  file: LineFile,
  report: Pick<Report, "tieIns" | "entries">,
  finding: TieInFinding,
): Candidate[] {
  return file.properties
    .map((property) => weigh(cluesOn(property, { file, report, finding }), property))
    .filter((candidate) => candidate.speaksFor.length > 0)
    .toSorted((a, b) => b.weight - a.weight);
}

interface Around {
  readonly file: LineFile;
  readonly report: Pick<Report, "tieIns" | "entries">;
  readonly finding: TieInFinding;
}

function weigh(clues: readonly Clue[], property: Property): Candidate {
  return {
    propertyId: property.id,
    weight: clues.reduce((sum, clue) => sum + clue.weight, 0),
    speaksFor: clues.filter((clue) => clue.weight > 0).map((clue) => clue.sentence),
    speaksAgainst: clues.filter((clue) => clue.weight <= 0).map((clue) => clue.sentence),
  };
}

function cluesOn(property: Property, around: Around): Clue[] {
  return [
    ...testClues(property, around),
    ...entryClues(property, around),
    ...crossingClues(property, around),
    ...tieInClues(property, around),
  ];
}

function testClues(property: Property, { file, finding }: Around): Clue[] {
  return file.tests
    .filter((test) => test.tieInId === finding.tieIn.id && test.propertyId === property.id)
    .map(testClue);
}

function testClue(test: TieInTest): Clue {
  const on = `on ${formatDate(test.performedOn)}`;
  if (test.result === "positive")
    return { weight: SEEN_WEIGHT[test.kind], sentence: `${SEEN_WORDS[test.kind]}, ${on}.` };
  if (test.result === "inconclusive")
    return { weight: 0, sentence: `A ${test.kind} test ${on} came to nothing certain.` };
  return { weight: -3, sentence: `A ${test.kind} test ${on} showed nothing; weak evidence.` };
}

function entryClues(property: Property, { file, report, finding }: Around): Clue[] {
  return file.entries
    .filter((entry) => entry.propertyId === property.id && entry.explanation === "")
    .flatMap((entry) => {
      const found = report.entries.find((each) => each.entryId === entry.id);
      if (found === undefined || found.tieInId !== null) return [];
      return [entryClue(entry.label, { entry: found.station, tieIn: finding.station })];
    });
}

function entryClue(label: string, at: { entry: Cft | null; tieIn: Cft | null }): Clue {
  const nothing = "and nothing answers to it";
  if (at.entry === null || at.tieIn === null)
    return { weight: 6, sentence: `The record shows “${label}” somewhere, ${nothing}.` };
  const apart = Math.abs(at.entry - at.tieIn);
  const weight = apart <= NEAR ? 15 : 5;
  return {
    weight,
    sentence: `The record shows “${label}” at ${formatFeet(at.entry)}, ${formatFeet(apart)} from here, ${nothing}.`,
  };
}

function crossingClues(property: Property, { file, finding }: Around): Clue[] {
  const { station } = finding;
  if (station === null) return [];
  const here = file.crossings.some(
    (crossing) =>
      crossing.propertyId === property.id && crossing.from <= station && station <= crossing.to,
  );
  return here ? [{ weight: 10, sentence: "The line crosses this lot here." }] : [];
}

function tieInClues(property: Property, { report, finding }: Around): Clue[] {
  const own = report.tieIns.filter(
    (each) => each.propertyId === property.id && each.tieIn.id !== finding.tieIn.id && each.live,
  );
  if (own.length === 0) return withoutTieIn(property);
  return own.flatMap((each) => besideOwn(each, finding));
}

function withoutTieIn({ stake }: Property): Clue[] {
  if (stake === "connected")
    return [{ weight: 12, sentence: "It is connected, and no tie-in of its own has been found." }];
  if (stake === "candidate")
    return [{ weight: 10, sentence: "It is perhaps connected, and no tie-in is known for it." }];
  return [];
}

function besideOwn(own: TieInFinding, finding: TieInFinding): Clue[] {
  const has: Clue = { weight: -6, sentence: `It has ${own.tieIn.label} already.` };
  if (own.station === null || finding.station === null) return [has];
  const apart = Math.abs(own.station - finding.station);
  if (apart > NEAR) return [has];
  const near = `Its own tie-in ${own.tieIn.label} is ${formatFeet(apart)} away.`;
  return [{ weight: 8, sentence: near }, has];
}
