import type { Word } from "../transcript/word.ts";
import type { Mark } from "./mark.ts";
import { PLAIN_THING, type Thing } from "./things.ts";

const PLACING: ReadonlySet<Mark["what"]> = new Set(["clock", "distance", "diameter", "material"]);

/** What people count: nobody says “another one” of water or grease. */
const COUNTED: ReadonlySet<Thing["kind"]> = new Set(["tie-in", "fault", "bend", "cleanout"]);

/**
 * `there’s another one, right-hand side`: with a place, size or pipe beside it and no thing named in
 * the sentence, it is one more of what was named last.
 */
export function withNameless(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const named: { last: Thing | null; branch: Thing | null } = { last: null, branch: null };
  return withNextHas(withOneMore(marks, words), words).flatMap((mark): Mark[] => {
    if (mark.what === "thing" && COUNTED.has(mark.thing.kind)) named.last = mark.thing;
    if (mark.what === "thing" && mark.thing.kind === "tie-in") named.branch = mark.thing;
    const beside = marks.filter(
      (other) => words[other.from]?.sentence === words[mark.from]?.sentence,
    );
    const meant = meantBy(named, { mark, beside, words });
    if (meant === null || !isNameless(mark, { beside, words })) return [mark];
    const thing: Thing = {
      ...meant,
      fitting: "unknown",
      many: false,
      weak: false,
      describes: false,
    };
    return [
      { ...mark, to: mark.to - 1 },
      { what: "thing", thing, from: mark.to - 1, to: mark.to },
    ];
  });
}

/** What a branch does, and nothing else that people count. */
const JOINS =
  /^(right |just )?(coming|comes|came|ties|tied|tying|joins|joining|feeding|feeds|entering|enters|hooked|teed|tapped|dumping|dumps) (in|into|on|up)\b/;
const BRANCH: Thing = { ...PLAIN_THING, kind: "tie-in" };

function textFrom(words: readonly Word[], from: number): string {
  return words
    .slice(from, from + 4)
    .map(({ text }) => text)
    .join(" ");
}

/** `and the very next joint’s got them too`, `next length, same thing`: one more of the same. */
const NEXT_HAS =
  /^(?:next|following|other|second|third) (?:joint|bell|length|piece|stick|section|hub|one)s?(?: (?:has|have|had|got|is|does|up|over|down|after|that|there))* (?:it|them|some|one|(?:the |that )?same(?: thing| deal| way| story| problem)?)(?= |$)/;

function withNextHas(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const found = words.flatMap(({ sentence }, at): Mark[] => {
    const own = words.slice(at, at + 9).filter((word) => word.sentence === sentence);
    const said = NEXT_HAS.exec(own.map(({ text }) => text).join(" "))?.[0];
    const named = marks.some(
      (mark) => mark.what === "thing" && words[mark.from]?.sentence === sentence,
    );
    return said === undefined || named
      ? []
      : [{ what: "turn", turn: "another", from: at, to: at + said.split(" ").length }];
  });
  const free = marks.filter(
    (mark) => !found.some(({ from, to }) => mark.from < to && mark.to > from),
  );
  return [...free, ...found].sort((a, b) => a.from - b.from);
}

/** `there’s one on the right too`: one more, though nobody says another. */
function withOneMore(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const found = words.flatMap(({ text }, at): Mark[] => {
    const shown = /^(there's|here's|got|see)$/.test(text) && words[at + 1]?.text === "one";
    const to = words[at + 2]?.text === "more" ? at + 3 : at + 2;
    const placed = /^(on|at|over|coming|comes|up|here|right) /.test(textFrom(words, to));
    return shown && placed ? [{ what: "turn", turn: "another", from: at, to }] : [];
  });
  const left = marks.filter(
    (mark) => !found.some(({ from, to }) => mark.from < to && mark.to > from),
  );
  return [...left, ...found].sort((a, b) => a.from - b.from);
}

/** Who or what joins, where only that is said: `this’ll be 408’s, comes in on the right`. */
const WHOSE = /\b(this|somebody|someone|who|that'll|neighbor|\d{3,5}|house)\b/;

/** `that’s 412, on the right` */
const NUMBERED =
  /^(?:that's|this is|that'll be|here's|there's) (?:number )?\d{3,5}(?:'s)?(?! (?:feet|foot|inch|dollars|bucks|point))\b/;

/** `somebody else comes in here on the right`: a branch told by what it does alone. */
export function withJoining(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  const found = words.flatMap(({ sentence }, at): Mark[] => {
    const joins = / (in|into)\b/.test(textFrom(words, at)) && JOINS.test(textFrom(words, at));
    if (!joins && !NUMBERED.test(textFrom(words, at))) return [];
    const beside = marks.filter((mark) => words[mark.from]?.sentence === sentence);
    if (beside.some(({ what }) => what === "thing")) return [];
    const read = beside.some((mark) => mark.what === "distance" && mark.distance.kind === "at");
    const lead = words.slice(Math.max(0, at - 10), at).filter((word) => word.sentence === sentence);
    const whose = joins && WHOSE.test(lead.map(({ text }) => text).join(" "));
    const sided = beside.some(({ what }) => what === "clock");
    return joinsHere([whose, sided, read])
      ? [{ what: "thing", thing: BRANCH, from: at, to: at + 1 }]
      : [];
  });
  return [...marks, ...found].sort((a, b) => a.from - b.from);
}

/** Two of the three: who joins, on which side, at what footage. */
function joinsHere(told: readonly boolean[]): boolean {
  return told.filter(Boolean).length >= 2;
}

interface Beside {
  readonly beside: readonly Mark[];
  readonly words: readonly Word[];
}

/** `another one … that’s gotta be 1636` */
const HOUSE =
  /\b(?:that's|this is|be|this one's|is) (?:the |for |number |probably )*\d{2,5}\b(?! (?:feet|foot|inch|point|\d))/;

/** On a side, or joining, it is a branch; else what was named last. */
function meantBy(
  { last, branch }: { readonly last: Thing | null; readonly branch: Thing | null },
  { mark, beside, words }: Beside & { readonly mark: Mark },
): Thing | null {
  const behind = words
    .slice(mark.to, mark.to + 9)
    .map(({ text }) => text)
    .join(" ");
  if (JOINS.test(behind) || HOUSE.test(behind)) return branch ?? BRANCH;
  return (beside.some((other) => other.what === "clock") ? branch : null) ?? last;
}

function isNameless(mark: Mark, { beside, words }: Beside): boolean {
  if (mark.what !== "turn" || mark.turn !== "another") return false;
  // `a crack at fourteen, another one at twenty`: read off, the first is done with.
  const named = beside.some(
    (other) =>
      other.what === "thing" &&
      !beside.some(
        (read) => read.what === "distance" && read.from > other.from && read.to <= mark.from,
      ),
  );
  const placed =
    beside.some((other) => PLACING.has(other.what)) || JOINS.test(textFrom(words, mark.to));
  return (
    !named &&
    placed &&
    /^(one|more|it|them|some|same|thing|deal|way|story|problem)$/.test(
      words[mark.to - 1]?.text ?? "",
    ) &&
    mark.to - mark.from > 1
  );
}
