import type { LineFile } from "../facts/line-file.ts";
import type { Property } from "../facts/party.ts";
import type { RecordEntry } from "../facts/record.ts";
import type { TestKind, TieInTest } from "../facts/test.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { formatDate } from "../time/format-day.ts";
import { type Clue, type ClueKind, clue } from "./candidate-weights.ts";
import { isControlRun } from "./control-run.ts";
import { shownBy } from "./evidence.ts";
import { onSide } from "./on-side.ts";
import type { SideSaid } from "./standing-said.ts";
import { streetClues } from "./street-clues.ts";

const SEEN_WORDS: Record<TestKind, string> = {
  excavation: "Excavation showed it",
  dye: "Dye from here was seen",
  flow: "Water from here was seen",
  trace: "A trace points here",
  statement: "A statement names it",
  smoke: "Smoke showed here",
};

/** A property that a tie-in may belong to, with what speaks for it and against it. */
export interface Candidate {
  readonly propertyId: string;
  /** Only for the order; no probability. */
  readonly weight: number;
  readonly speaksFor: readonly string[];
  /** What kind each thing is that speaks for it, for papers that may not quote the sentence. */
  readonly grounds: readonly ClueKind[];
  readonly speaksAgainst: readonly string[];
  /** Others that as much speaks for: nothing here tells them apart. */
  readonly tiedWith: readonly string[];
}

/** Within this distance a thing is spoken of as near. */
const NEAR: Cft = 1_500;

/**
 * The properties that a tie-in may belong to, the likeliest first: by its tests, by record entries
 * that nothing answers to, by where it lies (order of house numbers, side of the street, lots
 * crossed), by what is still without a tie-in, and by notes of water bills. The weights stand in
 * candidate-weights.ts. Properties that nothing speaks for are left out; it may be none of the others
 * either. A test that saw nothing weighs little, since slow pipes, traps and blockages hide dye.
 */
export function candidatesFor(
  file: LineFile,
  report: Pick<Report, "tieIns" | "entries">,
  finding: TieInFinding,
): Candidate[] {
  const found = file.properties
    .map((property) => weigh(cluesOn(property, { file, report, finding }), property))
    .filter((candidate) => candidate.speaksFor.length > 0)
    .toSorted((a, b) => b.weight - a.weight);
  return found.map((candidate) => ({
    ...candidate,
    tiedWith: found
      .filter((each) => each !== candidate && each.weight === candidate.weight)
      .map((each) => each.propertyId),
  }));
}

/** What has to be said beside any list of candidates: it may be nobody on it. */
export function nobodyWords(candidates: readonly Candidate[]): string {
  if (candidates.length === 0) return "Nothing on file points to a property.";
  return candidates.length === 1
    ? "It could also be another address not on file, or a street drain."
    : "It could also be none of these: an address not on file, or a street drain.";
}

interface Around {
  readonly file: LineFile;
  readonly report: Pick<Report, "tieIns" | "entries">;
  readonly finding: TieInFinding;
}

function weigh(clues: readonly Clue[], property: Property): Omit<Candidate, "tiedWith"> {
  return {
    propertyId: property.id,
    weight: clues.reduce((sum, clue) => sum + clue.weight, 0),
    speaksFor: clues.filter((clue) => clue.weight > 0).map((clue) => clue.sentence),
    grounds: clues.filter((clue) => clue.weight > 0).map((clue) => clue.kind),
    speaksAgainst: clues.filter((clue) => clue.weight <= 0).map((clue) => clue.sentence),
  };
}

function cluesOn(property: Property, around: Around): Clue[] {
  return [
    ...testClues(property, around),
    ...entryClues(property, around),
    ...crossingClues(property, around),
    ...tieInClues(property, around),
    ...streetClues(property, {
      properties: around.file.properties,
      tieIns: around.report.tieIns,
      finding: around.finding,
    }),
  ];
}

function testClues(property: Property, { file, finding }: Around): Clue[] {
  return file.tests
    .filter((test) => test.tieInId === finding.tieIn.id && test.propertyId === property.id)
    .filter((test) => !isControlRun(test))
    .map(testClue);
}

function testClue(test: TieInTest): Clue {
  const on = `on ${formatDate(test.performedOn)}`;
  if (test.result === "positive") return clue(test.kind, `${SEEN_WORDS[test.kind]}, ${on}.`);
  if (test.result === "inconclusive")
    return clue("test-inconclusive", `A ${test.kind} test ${on} was inconclusive.`);
  const waited = test.waitMinutes === null ? "" : ` in ${test.waitMinutes} minutes`;
  return clue("test-not-seen", `A ${test.kind} test ${on} showed nothing${waited}; weak evidence.`);
}

function entryClues(property: Property, { file, report, finding }: Around): Clue[] {
  return file.entries
    .filter((entry) => entry.propertyId === property.id && entry.explanation === "")
    .flatMap((entry) => {
      const found = report.entries.find((each) => each.entryId === entry.id);
      if (found === undefined || found.tieInId !== null) return [];
      const shown = entryClue(entry, { entry: found.station, tieIn: finding.station });
      // How a branch far away is built says nothing of this one.
      if (shown.kind === "entry-far") return [shown];
      const recorded = { side: entry.side, compass: found.compass };
      return [shown, ...buildClues(entry, finding), ...sideClues(recorded, finding)];
    });
}

/** Near or far by as much as the record says that it may be off. */
function entryClue(
  { label, uncertainty }: Pick<RecordEntry, "label" | "uncertainty">,
  at: { entry: Cft | null; tieIn: Cft | null },
): Clue {
  const off = uncertainty ?? 0;
  const nothing = "with no matching tie-in";
  if (at.entry === null || at.tieIn === null)
    return clue("entry-unplaced", `The record shows “${label}” somewhere, ${nothing}.`);
  const apart = Math.abs(at.entry - at.tieIn);
  return clue(
    apart <= Math.max(NEAR, off) ? "entry-near" : "entry-far",
    `The record shows “${label}” at ${formatFeet(at.entry)}${off > 0 ? `, give or take ${formatFeet(off)}` : ""}, ${formatFeet(apart)} from here, ${nothing}.`,
  );
}

/** Size and material, where the record and the camera both say something. */
function buildClues(entry: RecordEntry, { tieIn }: TieInFinding): Clue[] {
  const sizes = entry.diameter !== null && tieIn.diameter !== null;
  const materials = entry.material !== "unknown" && tieIn.material !== "unknown";
  if (!sizes && !materials) return [];
  const otherSize = sizes && entry.diameter !== tieIn.diameter;
  const otherMaterial = materials && entry.material !== tieIn.material;
  if (otherSize && sizes)
    return [
      clue("other-build", `The record shows ${entry.diameter} in; this is ${tieIn.diameter} in.`),
    ];
  if (otherMaterial) return [clue("other-build", "The record shows another material.")];
  return sizes && materials ? [clue("same-build", "Size and material are as on the record.")] : [];
}

function sideClues(recorded: SideSaid, { side, compass }: TieInFinding): Clue[] {
  const clear = (each: string) => each === "left" || each === "right";
  if (!clear(recorded.side) || !clear(side) || recorded.side === side) return [];
  const sentence = `The record shows it on the ${onSide(recorded)}; this is on the ${onSide({ side, compass })}.`;
  return [clue("other-side", sentence)];
}

function crossingClues(property: Property, { file, finding }: Around): Clue[] {
  const { station } = finding;
  if (station === null) return [];
  const here = file.crossings.some(
    (crossing) =>
      crossing.propertyId === property.id && crossing.from <= station && station <= crossing.to,
  );
  return here ? [clue("lot-crossed", "The line crosses this lot here.")] : [];
}

function tieInClues(property: Property, { file, report, finding }: Around): Clue[] {
  const others = report.tieIns.filter((each) => each.tieIn.id !== finding.tieIn.id && each.live);
  const own = others.flatMap((each) => {
    if (each.propertyId === property.id) return [{ each, shown: false }];
    const shown = each.propertyId === null && shownBy(file.tests, each.tieIn) === property.id;
    return shown ? [{ each, shown }] : [];
  });
  if (own.length === 0) return [...withoutTieIn(property, file), ...waterClues(property)];
  return own.flatMap((each) => besideOwn(each, finding));
}

function withoutTieIn({ id, stake }: Property, { entries }: LineFile): Clue[] {
  if (stake !== "connected" && stake !== "candidate") return [];
  const unrecorded = entries.length > 0 && !entries.some((entry) => entry.propertyId === id);
  return [
    stake === "connected"
      ? clue("connected-without", "It is connected, and no tie-in of its own has been found.")
      : clue("candidate-without", "It is possibly connected, and no tie-in is known for it."),
    ...(unrecorded ? [clue("no-record", "No record shows a connection for it.")] : []),
  ];
}

/** Water that is billed at an address has to leave it somewhere (trade practice). */
function waterClues({ note }: Property): Clue[] {
  if (
    !/\bwater\b[^.]*\b(bill|account|meter)|\b(bill|account|meter)[a-z]*\b[^.]*\bwater\b/i.test(note)
  )
    return [];
  return [clue("water-note", `Its note says: ${note.trim()}`)];
}

function besideOwn(
  { each: own, shown }: { readonly each: TieInFinding; readonly shown: boolean },
  finding: TieInFinding,
): Clue[] {
  const has = clue(
    "has-own",
    shown ? `Tests show ${own.tieIn.label} to be its own.` : `It has ${own.tieIn.label} already.`,
  );
  if (own.station === null || finding.station === null) return [has];
  const apart = Math.abs(own.station - finding.station);
  if (apart > NEAR) return [has];
  const near = `Its own tie-in ${own.tieIn.label} is ${formatFeet(apart)} away.`;
  return [clue("own-tie-in-near", near), has];
}
