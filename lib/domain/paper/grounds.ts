import type { ClueKind } from "../tiein/candidate-weights.ts";
import { candidatesFor } from "../tiein/candidates.ts";
import { isControlRun } from "../tiein/control-run.ts";
import type { LetterFacts } from "./facts.ts";

const RECORD: readonly ClueKind[] = ["entry-near", "entry-far", "entry-unplaced"];
const PLACE: readonly ClueKind[] = [
  "between-neighbors",
  "beside-neighbor",
  "numbers-join-here",
  "own-tie-in-near",
];

/**
 * Why the reader is asked about a tie-in, as clauses: tests that were seen at their place first,
 * then what the record and the ground show, and only where none of that speaks, where it lies and
 * that nothing is known. Notes of the office and of other people stay out.
 */
export function groundsOf(facts: LetterFacts): string[] {
  const { words, place } = facts;
  const { inquiry } = words;
  const kinds = kindsFor(facts);
  const has = (some: readonly ClueKind[]) => some.some((kind) => kinds.includes(kind));
  const shown = [
    ...testsSeen(facts),
    ...(has(RECORD) ? [inquiry.groundRecord(place)] : []),
    ...(has(["lot-crossed"]) ? [inquiry.groundCrossed(place)] : []),
  ];
  if (shown.length > 0) return shown;
  return has(PLACE) ? [inquiry.groundPlace(place)] : [inquiry.groundUnknown(place)];
}

function kindsFor({ file, report, asked, property }: LetterFacts): readonly ClueKind[] {
  if (asked === null) return [];
  return (
    candidatesFor(file, report, asked).find(({ propertyId }) => propertyId === property?.id)
      ?.grounds ?? []
  );
}

function testsSeen({ file, asked, property, words, place }: LetterFacts): string[] {
  return file.tests
    .filter(
      (test) =>
        test.tieInId === asked?.tieIn.id &&
        test.propertyId === property?.id &&
        test.result === "positive" &&
        !isControlRun(test),
    )
    .map((test) => words.inquiry.ground[test.kind](place, words.day(test.performedOn)));
}
