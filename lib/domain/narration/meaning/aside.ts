import type { Word } from "../transcript/word.ts";
import { inClause, labelOf, type Of, type Said, type Talk } from "./said.ts";
import { partsOf } from "./sentences.ts";

/** Words by which somebody points at what is there. */
const POINTING =
  /\b(there's|there is|here's|here is|right here|right there|you got|you've got|i've got|we've got|we got|i got|see that|see this|see it|look at|i see|you can see)\b/;
/** `he laid it in nineteen and forty-eight, in joints of clay`: how it came to be. */
const MADE = /\b(laid|built|dug|developer|contractor|installed)\b/;
/** `this kind of pipe gets holes in it`, `roots will do that`, `in one of these`: of the kind, not of this one. */
const KIND =
  /^(that's|this is|it's) what (roots|trees|clay|cast|people|they) (do|does)|\b((this|that) (kind|type|sort|brand|stuff) of|these old|those old|this old|that old) [\w']+( [\w']+)? (gets?|pulls?|cracks?|breaks?|rots?|rusts?|does|do|goes|go|will|fails?)\b|\b(in|on|of|with) one of (these|those)\b|\b(they|roots|trees|it'll|they'll|people) (do|does) that\b/;
/** What others or the speaker did at another time, with the time told. */
const DONE_BEFORE =
  /^(had|did|saw|found|ran) (a|an|one|some)\b|\b(we|i|they|he|she|guys?|plumbers?|crew|company|city|owners?|somebody|landlord|seller)( \w+)? (cut|cleared|cleaned|snaked|rodded|jetted|pulled|punched|replaced|fixed|patched|lined|dug|repaired|broke|hit|had|did|saw|found|put)\b|\bthere (was|were)\b/;
const BEFORE =
  /\b(last (week|month|year|spring|summer|fall|winter|time|job|guy|monday|tuesday|wednesday|thursday|friday|saturday|sunday)|(a|two|three|few|couple) (years?|months?|weeks?) (ago|back)|yesterday|years ago|in (january|february|march|april|may|june|july|august|september|october|november|december)|back in|the last (guy|crew|company|one)|another job|next door)\b/;
/** `my uncle had a belly like that`, `we did one on Birch`, `that was the other job`: seen in another pipe. */
const KIN =
  "(?:brother|sister|mother|mom|father|dad|uncle|aunt|cousin|neighbor|boss|buddy|friend|wife|husband|grandma|grandpa|roommate|mother in law|brother in law|sister in law|father in law|son|daughter|tio|tío|tía|tia|primo|prima|compadre|suegra|suegro|hermano)";
const ELSEWHERE = new RegExp(
  [
    String.raw`\b(?:my|his|her|their|our)(?: own)? ${KIN}(?:'s)?(?: (?:has|had|have|got|also|once|always)){1,2}\b`,
    String.raw`\b(?:the|that|this|an|my|our|one) ?other (?:job|guy|guys|fella|fellow|customer|street|town|property)\b|\b(?:different|another|last|next|previous|yesterday) job\b`,
    String.raw`\b(?:had|did|saw|found|dug|remember|reminds? me of|reminded me of|like)(?: (?:a|one|another|this|that|the)){0,2}(?: (?:one|job|line|house|lateral)){0,2} (?:(?:over|down|out|up) )?(?:on|in|at|over on) (?!the |this |that |it|my |our |your |both |top|left|right|here|there|about|a |an |each |one |two |\d)[\w']+`,
    String.raw`\b(?:that|the) one (?:over |down |up |out |back )?(?:on|at|by) (?!the |this |that |it|my |our |your |left|right|top|here|there|\d)[\w']+ (?:we|i|they)\b`,
    String.raw`\b(?:house|one|job|place|line) (?:i|we|they) (?:did|had|saw|ran|lined|dug)\b`,
    String.raw`\b(?:i|we) (?:did|had|ran|saw|lined|dug) one\b|\bmine (?:was|had|is|has|got)\b|\bmy (?:own )?(?:house|place)\b|\bthe other (?:house|one|place) (?:was|had|did)\b|\bthat one had the\b`,
    String.raw`\b(?:theirs|his|hers)(?: (?:was|were|had|is|has|got))\b|\b(?:the|that) other one (?:from|on|over|we|i|yesterday|last|this morning)\b|\b(?:one|job|guy|lady|house) from (?:this morning|yesterday|earlier today|the other day|last [a-z]+)\b|\b(?:worst|best|biggest|only|weirdest)(?: one| thing)? (?:i|we)(?:'ve)?(?: ever)? (?:saw|seen|had|did|found|pulled) (?:was|were)\b`,
    String.raw`^(?:and )?(?:told|telling) (?:her|him|them|me|us) (?:it|that|she|he|they|there|the)\b`,
  ].join("|"),
);
/** `lady in forty-two had hers lined`. */
const THEIRS = /\b(had|got|needs|needed|have|has|replaced|lined|did) (his|hers|theirs)\b/;
/** Told on of another job: `that was forty feet in and it was a wrench`. */
const WENT_ON =
  /^(?:(?:and|but|so|well|yeah|no|oh) )*(?:that|it|they|he|she|we|you)(?: (?:one|just|really))? (?:was|were|had|did|took|ran|lost|found|broke|ended|turned)\b/;
/** From here on what was told is told once more. */
const RECAP =
  /\b(to sum (it )?up|sum it up|in summary|summary|summing up|recap|to recap|all told|altogether|so overall|in closing|to wrap (it )?up|wrapping up|(read|go over|going over|run through|run over|say) (me|it|that|them|this|these|those|everything)( all)?( back| over| again| through| one more time)+|read back|one more time for|to review|in review|(today|here) we (found|saw|have found))\b/;

/** Clauses of sentences that make no rows: what is so in general, and what sums up. */
export function asideClauses(talk: Talk): Set<number> {
  const aside = awayClauses(talk);
  let recap = false;
  for (const part of partsOf(talk.speech.words)) {
    const text = part.map((word) => word.text).join(" ");
    if (isElsewhere(talk, part, text)) for (const clause of breathOf(talk, part)) aside.add(clause);
    recap = (recap && !isFurther(talk, part)) || isRecap(talk, part, text);
    if (recap || isListed(talk, part, text) || isAside(talk, part, text))
      for (const { clause } of part) aside.add(clause);
  }
  return aside;
}

/** Clauses that go on telling of another job. */
function awayClauses(talk: Talk): Set<number> {
  const found = new Set<number>();
  let away = false;
  for (const part of partsOf(talk.speech.words)) {
    const text = part.map((word) => word.text).join(" ");
    const here = POINTING.test(text) || /\b(?:here|now|this)\b/.test(text);
    const on: boolean = away && WENT_ON.test(text);
    away = !here && (on || BEFORE.test(text) || ELSEWHERE.test(text));
    if (away && WENT_ON.test(text)) for (const { clause } of part) found.add(clause);
  }
  return found;
}

/** So many things told before, named in one sentence with no footage, are gone through once more. */
const LISTED = 3;

/** How people begin who go through it: two are enough. */
const SUMS =
  /^(?:(?:okay|alright|all right|well|yeah|and|anyway) )*(?:so|all told|basically|overall|anyway|that's|that makes|what|the|main|i'd|your|just|other than|besides|between)\b/;

/** What is before the lens as it is said. */
const SHOWS = new RegExp(`${POINTING.source}|\\bhere\\b`);

/** `so that’s two taps, the crack, the belly and some roots` */
function isListed(talk: Talk, part: readonly Word[], text: string): boolean {
  const clauses = new Set(part.map(({ clause }) => clause));
  const marks = [...clauses].flatMap((clause) => inClause(talk, clause));
  if (
    marks.some((mark) => mark.what === "distance" && mark.distance.weight > 1 && isNew(talk, mark))
  )
    return false;
  if (isSameChange(talk, marks)) return true;
  const things = marks.filter((mark) => mark.what === "thing");
  const known = things.filter((mark) => isKnown(talk, mark, things[0]?.at ?? 0));
  if (known.length < things.length) return false;
  const labels = new Set(known.map((mark) => labelOf(mark))).size;
  return labels >= LISTED || (labels === 2 && SUMS.test(text) && !SHOWS.test(text));
}

/** `PVC to clay. So it’s plastic out of the house and then clay.`: the last two once more. */
function isSameChange(talk: Talk, marks: readonly Said[]): boolean {
  const pipes = marks.filter((mark) => mark.what === "material");
  const told = new Set(pipes.map(({ material }) => material));
  const before = talk.said
    .slice(0, pipes[0]?.at ?? 0)
    .flatMap((old) => (old.what === "material" ? [old.material] : []));
  const last = before.at(-1);
  const other = before.findLast((material) => material !== last);
  return told.size === 2 && told.has(last ?? "unknown") && told.has(other ?? "unknown");
}

function isKnown(talk: Talk, mark: Of<"thing">, before: number): boolean {
  return talk.said
    .slice(0, before)
    .some((old) => old.what === "thing" && labelOf(old) === labelOf(mark));
}

/** A footage that was not read off before. */
function isNew(talk: Talk, mark: Of<"distance">): boolean {
  return !talk.said
    .slice(0, mark.at)
    .some(
      (old) => old.what === "distance" && Math.abs(old.distance.from - mark.distance.from) < 100,
    );
}

function isElsewhere(talk: Talk, part: readonly Word[], text: string): boolean {
  return ELSEWHERE.test(text) && !isReadIn(talk, part[0]?.breath ?? -1);
}

/** A footage was told in that breath. */
function isReadIn(talk: Talk, breath: number): boolean {
  return talk.said.some(
    (mark) =>
      mark.what === "distance" &&
      mark.distance.kind === "at" &&
      talk.speech.words[mark.from]?.breath === breath,
  );
}

/** Where nothing is read off, all of one breath speaks of the same pipe. */
function breathOf(talk: Talk, part: readonly Word[]): Set<number> {
  const breath = part[0]?.breath;
  return new Set(
    talk.speech.words.filter((word) => word.breath === breath).map(({ clause }) => clause),
  );
}

/** `that’s two taps so far`: counted, not seen once more. */
const COUNTED =
  /\b(?:one|two|three|four|five|six|seven|eight|\d|both|all)(?! inch) [\w']+(?: [\w']+)? (?:so far|total|in all|in total|altogether|all told)\b|\b(?:that's|that makes|makes|got|have|is) (?:one|two|three|four|five|six|seven|eight|\d) [\w']+(?: [\w']+)? now\b|\b(?:so |and )(?:that's|that makes)(?: the)? (?:two|three|four|five|six|both)(?! inch)\b|^(?:that's|that makes) the (?:two|three|four|five)\b|\bthe (?:one|two|three|four|couple|few|only)(?: bad| main)? (?:spots?|places?|areas?)\b|\b(?:both|all (?:two|three|four|five|\d))(?: of)? (?:your|the|these|those|our|my)\b/;

function isAside(talk: Talk, part: readonly Word[], text: string): boolean {
  if (COUNTED.test(text)) return true;
  if (THEIRS.test(text) || ELSEWHERE.test(text)) return true;
  if (DONE_BEFORE.test(text) && BEFORE.test(text) && !POINTING.test(text)) return true;
  const clauses = new Set(part.map(({ clause }) => clause));
  const marks = [...clauses].flatMap((clause) => inClause(talk, clause));
  if (isQuestion(talk, part, text)) return true;
  if (marks.some((mark) => mark.what === "distance" && mark.distance.kind === "at")) return false;
  if (MADE.test(text) && marks.some((mark) => mark.what === "other" && mark.why === "a year"))
    return true;
  return KIND.test(text);
}

/** Asks whether something is there, or what it is: `Did you see any roots?`, `Is that a crack?`. */
const ASKS =
  /^(?:(?:and|so|but|okay|now|wait|oh|hey|well|then) )*(?:did|do|does|have|has|any|was there|what|why|how|who|whose|could|would|should|(?:is|are|was|were) (?:that|this|it|there|those|these|you|we|he|she))\b/;
const OF_THIS = /^(?:[a-z]+ )?(?:is|are|was|were) (?:that|this|it|those|these)\b/;
/** What answers that it is so. */
const YES =
  /^(?:(?:oh|uh|well|and) )*(?:yes|yeah|yep|yup|yessir|sure|correct|right|uh huh|mm hm|mhm|exactly|it is|that is|that's it)\b/;

const NO =
  /^(?:(?:oh|uh|well) )*(?:no(?! (?:idea|clue|telling|way|question|doubt))|nope|nah|naw)\b/;

/** Asked and answered in one go: `what are we in that's cast iron`. */
const ANSWERED =
  /\b(?:that's|it's|(?<!\b(?:chance|think|say|saying|sure|if|know|mean|like|what|why|how|when|where|hope|guess|swear) )(?:that|it|there) was|yeah|yes|yep|there's|here's|no)\b/;

/** Nothing is seen by asking; a yes behind it says that it is. */
function isQuestion(talk: Talk, part: readonly Word[], text: string): boolean {
  if (part[0]?.asks !== true || !ASKS.test(text)) return false;
  if (ANSWERED.test(text) || POINTING.test(text)) return false;
  const next = (part.at(-1)?.sentence ?? 0) + 1;
  const answer = talk.speech.words
    .filter(({ sentence }) => sentence === next)
    .map((word) => word.text)
    .join(" ");
  // `Thirty. Is that a crack?`: whoever reads off and asks has something before the lens.
  if (OF_THIS.test(text) && isReadIn(talk, part[0].breath)) return NO.test(answer);
  return !YES.test(answer);
}

function isRecap(talk: Talk, part: readonly Word[], text: string): boolean {
  return RECAP.test(text) && isLate(talk, part[0]?.sentence ?? 0);
}

/** Read off farther than anything before it: `I’ll say it again`, and then the camera goes on. */
function isFurther(talk: Talk, part: readonly Word[]): boolean {
  const own = new Set(part.map(({ clause }) => clause));
  const read = talk.said.filter(
    (mark): mark is Of<"distance"> => mark.what === "distance" && mark.distance.kind === "at",
  );
  const first = read.find(({ clause }) => own.has(clause));
  if (first === undefined || first.distance.weight <= 1) return false;
  return read.every(({ at, distance }) => at >= first.at || distance.from < first.distance.from);
}

/** Only what comes after most of the talk can sum it up. */
function isLate(talk: Talk, sentence: number): boolean {
  const things = talk.said.filter((mark) => mark.what === "thing");
  return things.filter((mark) => mark.sentence < sentence).length * 2 >= things.length;
}
