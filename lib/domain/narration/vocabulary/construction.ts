import type { Word } from "../transcript/word.ts";
import { FAULTS_TOLD } from "./fault-told.ts";
import { LOOKS_LIKE } from "./looks-like.ts";
import type { Mark } from "./mark.ts";
import { THINGS_TOLD } from "./thing-told.ts";
import type { Thing } from "./things.ts";
import type { Construction } from "./told.ts";

/** So many words of the sentence behind belong to what is said of its subject. */
const BEHIND = 14;

/** A stretch of talk by its letters, and the word at each letter. */
interface Stretch {
  readonly text: string;
  /** Index of the word that begins at this letter. */
  readonly starts: ReadonlyMap<number, number>;
  /** Its own words end here; what follows is the sentence behind. */
  readonly own: number;
}

const CONSTRUCTIONS: readonly Construction[] = [...THINGS_TOLD, ...FAULTS_TOLD, ...LOOKS_LIKE];

/**
 * The marks with what is told by constructions: a subject, and what is said of it. A mark stands at
 * its subject; what names the same within its words is dropped.
 */
export function withConstructions(marks: readonly Mark[], words: readonly Word[]): Mark[] {
  let whole = [...marks];
  for (const stretch of stretchesOf(words))
    for (const one of CONSTRUCTIONS)
      for (const found of stretch.text.matchAll(one.said))
        whole = withFound(whole, words, { stretch, one, found });
  return whole;
}

function withFound(
  marks: Mark[],
  words: readonly Word[],
  {
    stretch,
    one,
    found,
  }: {
    readonly stretch: Stretch;
    readonly one: Construction;
    readonly found: RegExpMatchArray;
  },
): Mark[] {
  const start = found.index ?? 0;
  const head = stretch.starts.get(start);
  const from = head === undefined ? undefined : pastMeasures(marks, head);
  const last = stretch.starts.get(found[0].lastIndexOf(" ") + 1 + start);
  if (from === undefined || last === undefined || start >= stretch.own) return marks;
  const thing = one.means(found, stretch.text.slice(start, start + found[0].length + 60));
  const covers = one.covers ?? (({ kind }: Thing) => kind === thing?.kind);
  const inside = (mark: Mark) => mark.to > from && mark.from <= last;
  const named = marks.filter((mark) => inside(mark) && mark.what === "thing");
  const other = named.some((mark) => mark.what === "thing" && !covers(mark.thing));
  if (thing === null || other) return marks;
  const same = named.some((mark) => mark.what === "thing" && isAlike(mark.thing, thing));
  if (same) return marks;
  const again = isTold(marks, words, { from, covers });
  const mark: Mark[] = again ? [] : [{ what: "thing", thing, from, to: from + 1 }];
  const left = marks.filter(
    (old) =>
      !(
        inside(old) &&
        (old.what === "thing" ||
          (old.what === "turn" &&
            (thing.kind === "blockage" || /^(change|closes)$/.test(old.turn))))
      ) && !(old.from <= from && old.to > from),
  );
  return [...left, ...mark].sort((a, b) => a.from - b.from);
}

/** The word at which a mark can stand without covering a size or a distance. */
function pastMeasures(marks: readonly Mark[], head: number): number {
  const over = marks.find(
    (mark) => mark.from <= head && mark.to > head && mark.what !== "thing" && mark.what !== "turn",
  );
  return over?.to ?? head;
}

/** `there’s a break in the pipe, a piece is missing, you can see dirt`: the same, told closely. */
function isTold(
  marks: readonly Mark[],
  words: readonly Word[],
  { from, covers }: { readonly from: number; readonly covers: (thing: Thing) => boolean },
): boolean {
  const before = marks.findLast(
    (mark) => mark.to <= from && (mark.what === "thing" || mark.what === "distance"),
  );
  if (before?.what !== "thing" || before.thing.kind !== "fault" || !covers(before.thing))
    return false;
  const [a, b] = [words[before.from], words[from]];
  return a?.breath === b?.breath && (b?.sentence ?? 0) - (a?.sentence ?? 0) <= 1;
}

function isAlike(a: Thing, b: Thing): boolean {
  return a.kind === b.kind && a.fault === b.fault;
}

/** Every sentence with the beginning of the one behind it in the same breath. */
function stretchesOf(words: readonly Word[]): Stretch[] {
  const stretches: Stretch[] = [];
  for (let from = 0; from < words.length; ) {
    const { sentence, breath } = words[from] ?? { sentence: -1, breath: -1 };
    let to = from;
    while (words[to]?.sentence === sentence) to += 1;
    let end = to;
    while (
      end < to + BEHIND &&
      words[end]?.breath === breath &&
      (words[end]?.sentence ?? 0) <= sentence + 1
    )
      end += 1;
    stretches.push(stretchOf(words, from, { to, end }));
    from = to;
  }
  return stretches;
}

function stretchOf(
  words: readonly Word[],
  from: number,
  { to, end }: { readonly to: number; readonly end: number },
): Stretch {
  const starts = new Map<number, number>();
  let text = "";
  let own = 0;
  for (let at = from; at < end; at += 1) {
    if (text !== "") text += " ";
    starts.set(text.length, at);
    text += words[at]?.text ?? "";
    if (at === to - 1) own = text.length;
  }
  return { text, starts, own };
}
