import { counterOf } from "../footage/axis.ts";
import type { Ground } from "../footage/ground.ts";
import { type Place, placesOf } from "../footage/place.ts";
import { recordOwner } from "../meaning/about.ts";
import {
  inClause,
  inSentence,
  isTurn,
  type Of,
  quoteOf,
  type Said,
  sentenceWords,
} from "../meaning/said.ts";
import { BARE, type Heard, NOWHERE, spanOf } from "./heard.ts";

/**
 * What was said about the record by itself: `the card shows one at forty-four, not seeing it`. No row
 * of a log, as nothing was seen. It stands where the record puts it, if the camera passes there about
 * then, else where it was said. One that gives no place is said of the find beside it.
 */
export function recordRemarks(ground: Ground): Heard[] {
  const { talk, sense } = ground;
  const bySentence = new Map<number, Said>();
  for (const clause of sense.recordClauses) {
    const mark = inClause(talk, clause).find((other) => isTurn(other, "record", "record-comment"));
    const owned = mark && recordOwner(talk, sense, { clause, sentence: mark.sentence });
    if (mark && !owned && !bySentence.has(mark.sentence)) bySentence.set(mark.sentence, mark);
  }
  return [...bySentence.values()].flatMap((mark): Heard[] => {
    const marks = inSentence(talk, mark.sentence);
    const says =
      marks.some((other) => /^(distance|thing|material)$/.test(other.what)) &&
      CLAIMS.test(sentenceWords(talk, mark.sentence));
    const last = marks.at(-1)?.clause ?? mark.clause;
    const clauses = spanOf([mark.clause, last]);
    const aboutRecord = quoteOf(talk, ...clauses);
    const place = remarkPlace(ground, mark) ?? NOWHERE;
    const beside =
      place.counter === null ||
      (!marks.some(isPlace) && !AWAITED.test(sentenceWords(talk, mark.sentence)));
    return says
      ? [{ ...BARE, mark, kind: "remark", place, aboutRecord, beside, notes: [], clauses }]
      : [];
  });
}

function isPlace(mark: Said): boolean {
  return mark.what === "distance" && mark.distance.kind === "at";
}

/** By the record it had to be here, and is not. */
const AWAITED = /\b(should|supposed|by now|there'd|not seeing|don't see|didn't see|no sign)\b/;

/** What a record does, or does not. */
const CLAIMS =
  /\b(shows?|has|have|had|says?|said|puts?|calls?|lists?|marks?|drew|got|not|no|nothing|never|isn't|doesn't|don't|didn't|wasn't|missing|per|according|supposed)\b/;

/** Past a record's place by more than this, hundredths of a foot, the camera is not about there. */
const ABOUT = 300;

function remarkPlace(ground: Ground, mark: Said): Place | null {
  const { points } = ground.track;
  const before = points.findLast(({ at }) => at < mark.at);
  if (!before || (before.counter === 0 && !points.some(({ at }) => at > mark.at))) return null;
  const [place] = placesOf(ground, mark);
  const claimed = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> => other.what === "distance",
  );
  if (place?.reading === "read" || !claimed) return before.counter === 0 ? null : (place ?? null);
  const counter = counterOf(claimed.distance.from, claimed.distance.base, ground.axis);
  const after = points.find(({ at }) => at > mark.at) ?? before;
  const [low, high] = [before.leaves, after.counter].sort((a, b) => a - b);
  const near = counter !== null && counter >= (low ?? 0) - ABOUT && counter <= (high ?? 0) + ABOUT;
  return place && near ? { ...place, counter, reading: "between" } : (place ?? null);
}
