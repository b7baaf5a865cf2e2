import type { TieInFinding } from "../findings/report.ts";
import { newestPicture } from "../run/newest-picture.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterPicture } from "./letter.ts";

/** The newest still of a tie-in, with where and when it was seen. */
export function stillOf(
  { file, words }: LetterFacts,
  { tieIn, station, uncertainty }: TieInFinding,
): LetterPicture[] {
  const found = newestPicture(file, tieIn.id);
  if (found === null) return [];
  const where = station === null ? words.finding.relative : words.about(station, uncertainty ?? 0);
  const caption = words.picture.caption(tieIn.label, where, words.day(found.run.ranOn));
  return [{ uploadId: found.uploadId, caption, alt: words.picture.alt(caption) }];
}

/** In the order of their stations; what has none comes last. */
export function byStation(a: { station: number | null }, b: { station: number | null }): number {
  return (a.station ?? Number.MAX_SAFE_INTEGER) - (b.station ?? Number.MAX_SAFE_INTEGER);
}
