import { inClause, inSentence, isTurn, type Said, type Talk, wordsOf } from "./said.ts";

/** `card says fourteen`, `per plan at 11`, `the drawing’s got that at thirty`: the record’s own number. */
const RECORD_SAYS =
  /\b(cards?|records?|permit|plans?|drawing|map|sketch|as builts?|paperwork|paper|sheet|book|plat|print|blueprints?|gis)( (says?|said|shows?|has|have|had|got|puts?|calls?|lists?|marks?|drew|drawn|reads?|claims?|is|was|would have|had got))( (it|that|this|one|him|her|them|a|the|another|that one|this one|wye|tee|tap|lateral|connection|down|in|here|there|there's)){0,4}( (at|for|around|about|like|maybe))*$|\b(they|the (city|county|town)) (have|has|had|show|shows|got|list|put)( (it|one|that|him|her|them))?( (down|in))? (at|for)( (around|about|like))*$|\b(per|by|according to|off) (the )?(city )?(card|record|permit|plan|drawing|map|sketch)( (it's|that's|it is|should be))?( (at|around|about))*$/;

/** The record’s own number: `per plan at 11`. */
export function isOfRecord(talk: Talk, mark: Said): boolean {
  const words = talk.speech.words.slice(Math.max(0, mark.from - 9), mark.from);
  const own = words.filter(({ sentence }) => sentence === mark.sentence);
  return (
    RECORD_SAYS.test(own.map(({ text }) => text).join(" ")) ||
    isRecordOn(talk, mark) ||
    isRecordSaying(talk, mark)
  );
}

/** `I’ve got your card here. Says eighty-five to the tap.`: nothing else was named that says anything. */
function isRecordSaying(talk: Talk, mark: Said): boolean {
  const from = talk.speech.words.findIndex(({ sentence }) => sentence === mark.sentence);
  return (
    /^(and |it |which |now it )?(says|shows|reads|calls|puts|claims)( (it|that|here|the \w+|a \w+))*( (is|at|about|around))*$/.test(
      wordsOf(talk, from, mark.from),
    ) && inSentence(talk, mark.sentence - 1).some((other) => isTurn(other, "record"))
  );
}

/** `Card says forty something, can’t read it. Forty or forty-six.`: whole feet alone, behind what the record says. */
function isRecordOn(talk: Talk, mark: Said): boolean {
  if (mark.what !== "distance" || mark.distance.from % 100 !== 0 || !mark.distance.choice)
    return false;
  const alone = inSentence(talk, mark.sentence).every(({ what }) => what === "distance");
  return alone && inSentence(talk, mark.sentence - 1).some((other) => isTurn(other, "record"));
}

export interface Claims {
  /** From this word on, the clause tells what the record shows. */
  readonly from: ReadonlyMap<number, number>;
}

/** `the card shows a tie-in at forty-four`: everything behind it, until the speaker speaks for himself. */
export function claimedClauses(talk: Talk, recordClauses: Set<number>): Claims {
  const from = new Map<number, number>();
  let open: number | null = null;
  let sentence = -1;
  for (const [clause, marks] of byClause(talk)) {
    if (marks[0] && marks[0].sentence !== sentence) open = null;
    sentence = marks[0]?.sentence ?? sentence;
    const own = marks.find((mark) => isTurn(mark, "self"));
    if (open !== null && !own) {
      from.set(clause, 0);
      recordClauses.add(clause);
    } else open = null;
    for (const mark of marks) {
      if (isTurn(mark, "record", "record-comment")) recordClauses.add(clause);
      if (!isTurn(mark, "record", "record-comment") || !isClaiming(talk, mark)) continue;
      from.set(clause, mark.to);
      open = clause;
    }
  }
  return { from };
}

/** The record at the head of its clause tells something; behind a finding it comments on that. */
function isClaiming(talk: Talk, mark: Said): boolean {
  if (/\b(supposed|shouldn't|belong|business)\b/.test(wordsOf(talk, mark.from, mark.to)))
    return false;
  const clause = inClause(talk, mark.clause);
  const thingBefore = clause.some(
    (other) => other.to <= mark.from && (other.what === "thing" || other.what === "distance"),
  );
  const denied = isTurn(mark, "record-comment") && clause.every((other) => other.from <= mark.from);
  return !thingBefore && !denied;
}

function byClause(talk: Talk): Map<number, Said[]> {
  const map = new Map<number, Said[]>();
  for (const mark of talk.said) map.set(mark.clause, [...(map.get(mark.clause) ?? []), mark]);
  return map;
}

/** Told as what the record shows, and not by what the speaker sees himself. */
export function isClaimed(mark: Said, clause: readonly Said[], claims: Claims): boolean {
  const from = claims.from.get(mark.clause);
  if (from === undefined || mark.from < from) return false;
  return !clause.some(
    (other) => isTurn(other, "self") && other.from >= from && other.to <= mark.from,
  );
}
