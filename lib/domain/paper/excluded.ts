import { heldStretches } from "./common.ts";
import { knownOwner, type LetterFacts } from "./facts.ts";

/** What the amounts leave out besides what is discovered later. */
export function excludedParts({ report, words }: LetterFacts): string[] {
  const held = heldStretches(report.reaches);
  const where = (holder: "authority" | "unclear") =>
    held.filter((each) => each.holder === holder).map(({ from, to }) => words.stretch(from, to));
  const unknown = report.tieIns.filter((each) => each.live && knownOwner(each) === null);
  return [
    ...where("authority").map(words.split.excludedAuthority),
    ...where("unclear").map(words.split.excludedUnclear),
    ...(unknown.length === 0
      ? []
      : [words.split.excludedUnknown(words.list(unknown.map(({ tieIn }) => tieIn.label)))]),
  ];
}
