import type { ObscuredBy } from "../../facts/run.ts";
import type { Cft } from "../../length/station.ts";
import { keyOf } from "../../say/key.ts";
import { axisOf, counterOf, fromMainOf } from "../footage/axis.ts";
import { withoutStrangers } from "../footage/company.ts";
import { withoutCorrected } from "../footage/correct.ts";
import { withoutCounted } from "../footage/counted.ts";
import { type Ground, groundOf } from "../footage/ground.ts";
import { inOrder, placeAt } from "../footage/place.ts";
import { withRepaired } from "../footage/repaired.ts";
import type { NarrationRun, SpokenReading } from "../footage/run-told.ts";
import { middleOf } from "../footage/track.ts";
import { withoutDepthCalls } from "../footage/voices.ts";
import { isOfRecord } from "../meaning/record-claims.ts";
import {
  inClause,
  inSentence,
  isTurn,
  lettersOf,
  type Of,
  quoteOf,
  type Said,
  talkOf,
  wordsOf,
} from "../meaning/said.ts";
import { marksIn } from "../meaning/scan.ts";
import { senseOf } from "../meaning/sense.ts";
import type { Cue } from "../transcript/cues.ts";
import type { SaidLine, TranscriptProblem } from "../transcript/said-line.ts";
import { speechOf } from "../transcript/speech.ts";
import { parseTranscript } from "../transcript/transcript.ts";
import type { Distance } from "../vocabulary/mark.ts";
import type { Draft, DraftGap, DraftLog, RecordSaid, SetAside } from "./draft.ts";
import { heardIn } from "./finds.ts";
import type { Heard } from "./heard.ts";
import { merged } from "./merge.ts";
import { asOneFind } from "./one-find.ts";
import { withStretches } from "./stretch.ts";

/**
 * Drafts the observation log of a run from what its technician said: a row for every thing seen,
 * with the words it rests on. Distances between two spoken readings are worked out by time and
 * marked so; nothing is placed that the talk does not place. Every row is for a person to accept,
 * mend or drop.
 */
export function draftLog(text: string, run: NarrationRun): DraftLog {
  const transcript = parseTranscript(text);
  const speech = speechOf(transcript.cues, transcript.format);
  const talk = withoutCorrected(
    withoutStrangers(
      withRepaired(withoutCounted(withoutDepthCalls(talkOf(speech, marksIn(speech.words))))),
    ),
  );
  const sense = senseOf(talk);
  const said = mainSaid(groundOf(talk, sense, axisOf(talk, sense, { run, mainSaid: null })));
  const axis = axisOf(talk, sense, { run, mainSaid: said });
  const ground = groundOf(talk, sense, axis);
  const heard = withStretches(ground, heardIn(ground));
  const whole = merged(ground, absorbed(heard));
  const rows = asOneFind(ground, whole).filter((row) => row.kind !== "main");
  const drafts = absorbed(rows).map((row, index, all) =>
    draftOf(ground, row, sameBefore(all, index)),
  );
  const alone = heard.filter((row) => row.kind === "remark" && saidOf(heard, row) === undefined);
  return {
    format: transcript.format,
    drafts,
    recordSaid: recordSaidIn([
      ...drafts,
      ...alone.map((row, index, all) => draftOf(ground, row, sameBefore(all, index))),
    ]),
    gaps: gapsOf(ground, rows),
    readings: readingsOf(ground),
    measuredFrom: axis.measuredFrom,
    said: saidLines(transcript.cues),
    setAside: setAsideIn(ground),
    mainCounter: axis.measuredFrom === "main" ? 0 : said,
    problems: [...transcript.problems, ...askedIn(ground)],
  };
}

/** The cues as they follow one another in what was said: one space between two. */
function saidLines(cues: readonly Cue[]): SaidLine[] {
  let from = 0;
  return cues.map(({ text, start }): SaidLine => {
    const line = {
      from,
      to: from + text.length,
      text,
      second: start === null ? null : start / 1000,
    };
    from = line.to + 1;
    return line;
  });
}

/** Where the speaker said that the camera is at the main; at zero it went in, wherever that was. */
function mainSaid(ground: Ground): Cft | null {
  const mains = heardIn(ground).filter(
    (row) =>
      row.kind === "main" &&
      row.place.reading === "read" &&
      row.place.clause !== null &&
      row.place.counter !== null &&
      row.place.counter > 0 &&
      !isFromMain(ground, row.place.clause),
  );
  const main = mains.at(-1);
  return main === undefined ? null : (readCloser(ground, main) ?? main.place.counter);
}

/** So much apart, hundredths of a foot, both are the main. */
const CLOSER = 100;

/** `Eighty-six and there’s the main. Eighty-six two.`: read off once more, to the tenth. */
function readCloser({ talk }: Ground, { mark, place }: Heard): Cft | null {
  const next = talk.said
    .slice(mark.at + 1)
    .find(
      (other): other is Of<"distance"> =>
        other.what === "distance" && other.distance.kind === "at" && other.sentence > mark.sentence,
    );
  if (next === undefined || place.counter === null || next.sentence > mark.sentence + 1)
    return null;
  const between = talk.said.slice(mark.at + 1, next.at).some(({ what }) => what === "thing");
  const { from } = next.distance;
  const closer = from % 100 !== 0 && place.counter % 100 === 0;
  return closer && !between && Math.abs(from - place.counter) < CLOSER ? from : null;
}

/** `twenty feet from the main`: no footage at the main itself. */
function isFromMain({ talk }: Ground, clause: number): boolean {
  return inClause(talk, clause).some(
    (mark) => mark.what === "distance" && mark.distance.base === "main" && mark.distance.from > 0,
  );
}

/** Without what the row beside it tells: a belly’s water, and what the record says, which goes to that row. */
function absorbed(rows: readonly Heard[]): Heard[] {
  return rows
    .filter((row) => row.kind !== "remark" && !rows.some((other) => isBelly(other, row)))
    .map((row) => {
      const water = rows.filter((other) => isBelly(row, other));
      const said = rows.filter(
        (other) => other === row || (other.kind === "remark" && saidOf(rows, other) === row),
      );
      const aboutRecord = said.map((other) => other.aboutRecord).filter(Boolean);
      // `Fifty and a half, water. … It dips down.`
      const read = [row, ...water].find(({ place }) => place.reading === "read");
      const before = read !== undefined && read.mark.at < row.mark.at;
      return {
        ...row,
        aboutRecord: aboutRecord.join("; "),
        place: before ? read.place : row.place,
      };
    });
}

/**
 * The find there of which a remark on the record was made: the branch, where it names a place; else
 * the find that was told last before it, or the next.
 */
function saidOf(rows: readonly Heard[], remark: Heard): Heard | undefined {
  const there = rows.filter((other) => other.kind !== "remark" && overlap(other, remark));
  if (!remark.beside) return there.find(({ kind }) => kind === "tie-in");
  return there.findLast(({ mark }) => mark.at < remark.mark.at) ?? there[0];
}

function isBelly(other: Heard, row: Heard): boolean {
  return (
    row.kind === "water" &&
    other.fault === "belly" &&
    (other.mark.sentence === row.mark.sentence || overlap(other, row))
  );
}

function overlap(a: Heard, b: Heard): boolean {
  const from = a.place.counter;
  const at = b.place.counter;
  if (from === null || at === null) return false;
  return at <= (a.place.toCounter ?? from) + 200 && (b.place.toCounter ?? at) >= from - 200;
}

/** What rows, and remarks that are none, tell about the record. */
function recordSaidIn(drafts: readonly Draft[]): RecordSaid[] {
  return drafts
    .filter(({ aboutRecord }) => aboutRecord !== "")
    .toSorted((a, b) => a.span.from - b.span.from)
    .map(({ key, aboutRecord, fromMain, videoSecond }) => ({
      key,
      aboutRecord,
      fromMain,
      videoSecond,
    }));
}

function sameBefore(rows: readonly Heard[], index: number): number {
  return rows.slice(0, index).filter((row) => row.mark.at === rows[index]?.mark.at).length;
}

function draftOf(ground: Ground, row: Heard, nth: number): Draft {
  const quote = quoteOf(ground.talk, ...row.clauses);
  const word = ground.talk.speech.words[row.mark.from];
  return {
    key: keyOf(`${row.kind} ${word?.from ?? 0} ${nth} ${quote}`),
    kind: row.kind === "main" ? "remark" : row.kind,
    counter: row.place.counter,
    toCounter: row.place.toCounter,
    fromMain: row.place.fromMain ?? fromMainOf(row.place.counter, ground.axis),
    toFromMain: fromMainOf(row.place.toCounter, ground.axis),
    reading: row.place.reading,
    slack: row.place.slack,
    clock: row.clock,
    fault: row.fault,
    degree: row.degree,
    reduction: row.reduction,
    waterDepth: row.waterDepth,
    material: row.material,
    upstreamMaterial: row.upstreamMaterial,
    diameter: row.diameter,
    fitting: row.fitting,
    videoSecond: secondOf(row.mark),
    quote,
    span: lettersOf(ground.talk, ...row.clauses),
    hedges: row.hedges,
    aboutRecord: row.aboutRecord,
    note: row.notes.join("; "),
  };
}

function secondOf(mark: Said): number | null {
  return mark.time === null ? null : Math.floor(mark.time / 1000);
}

/** Every spoken distance that is used as a place: those on the camera’s way, and those of rows. */
function readingsOf(ground: Ground): SpokenReading[] {
  const { talk, axis, track } = ground;
  const spoken = new Set(track.points.filter((point) => point.spoken).map(({ at }) => at));
  return talk.said.flatMap((mark): SpokenReading[] => {
    if (mark.what !== "distance" || !spoken.has(mark.at)) return [];
    // `I’ve reset it`: zero by what was done, not read out.
    if (/^reset/.test(wordsOf(talk, mark.from, mark.to))) return [];
    const { base } = mark.distance;
    const quote = quoteOf(talk, mark.clause, mark.clause);
    return endsOf(mark.distance).flatMap((end) => {
      const counter = counterOf(end, base, axis);
      return counter === null ? [] : [{ counter, videoSecond: secondOf(mark), quote }];
    });
  });
}

/** Farther apart, hundredths of a foot, the two were not read off: `somewhere between 45 and 50`. */
const GUESS = 200;

function endsOf(distance: Distance): Cft[] {
  if (distance.choice && Math.abs((distance.to ?? distance.from) - distance.from) > GUESS)
    return [];
  if (distance.choice) return [middleOf(distance)];
  return distance.to === null ? [distance.from] : [distance.from, distance.to];
}

/** The words of a mark as they stand in the text. */
function wordsAsSpoken(ground: Ground, mark: Said): string {
  const { spoken, words } = ground.talk.speech;
  return spoken.slice(words[mark.from]?.from ?? 0, words[mark.to - 1]?.to ?? 0);
}

function setAsideIn(ground: Ground): SetAside[] {
  return ground.talk.said.flatMap((mark): SetAside[] => {
    const why = whyAside(ground, mark);
    return why === null
      ? []
      : [{ words: wordsAsSpoken(ground, mark), why, second: secondOf(mark) }];
  });
}

function whyAside(ground: Ground, mark: Said): string | null {
  if (mark.what === "other") return mark.why;
  if (mark.what === "diameter") return "a pipe size";
  if (mark.what !== "distance") return null;
  if (ground.track.outliers.has(mark.at)) return "it does not fit the footages around it";
  if (ground.sense.unreal.has(mark.at))
    return isAboutRecord(ground, mark)
      ? "said about the record, not as seen"
      : "not read off as the camera passed";
  return mark.distance.kind === "extent" ? "a length, not a place" : null;
}

function isAboutRecord({ talk, sense }: Ground, mark: Said): boolean {
  const told = inSentence(talk, mark.sentence).some(({ clause }) =>
    sense.recordClauses.has(clause),
  );
  return told || isOfRecord(talk, mark);
}

/** A number with feet, or read off like a footage, that fits nothing around it: asked, never used. */
function askedIn(ground: Ground): TranscriptProblem[] {
  return ground.talk.said.flatMap((mark): TranscriptProblem[] => {
    if (mark.what !== "distance" || !ground.track.outliers.has(mark.at)) return [];
    if (mark.distance.weight < ASKED) return [];
    const line = ground.talk.speech.words[mark.from]?.line ?? 1;
    const words = wordsAsSpoken(ground, mark);
    return [{ line, message: `“${words}” does not fit the footages around it and was not used` }];
  });
}

/** What weighs less is mostly no distance. */
const ASKED = 2;

/** Stretches under water, and those where the speaker says that nothing could be seen. */
function gapsOf(ground: Ground, rows: readonly Heard[]): DraftGap[] {
  const wet = rows.flatMap((row) => {
    const under = isUnder(ground, row);
    return under ? gapOf(ground, row, "under-water") : [];
  });
  return [...wet, ...unseen(ground)];
}

function isUnder(ground: Ground, row: Heard): boolean {
  if (row.kind !== "water" && row.fault !== "belly") return false;
  return /\b(under ?water|submerged|(camera|lens|head|we're|goes|went|going)( is)? under|can't see|swimming|dunked)\b/i.test(
    quoteOf(ground.talk, ...row.clauses),
  );
}

function gapOf(ground: Ground, row: Heard, cause: ObscuredBy): DraftGap[] {
  const { counter, toCounter } = row.place;
  if (counter === null || toCounter === null) return [];
  const quote = quoteOf(ground.talk, ...row.clauses);
  const span = lettersOf(ground.talk, ...row.clauses);
  const key = keyOf(`gap ${row.mark.from} ${quote}`);
  return [{ key, fromCounter: counter, toCounter, cause, quote, span }];
}

function unseen(ground: Ground): DraftGap[] {
  return ground.talk.said.flatMap((mark): DraftGap[] => {
    if (!isTurn(mark, "unseen", "unrecorded")) return [];
    const range = inSentence(ground.talk, mark.sentence).find(
      (other): other is Of<"distance"> =>
        other.what === "distance" && other.distance.to !== null && !other.distance.choice,
    );
    const place = range && placeAt(ground, range);
    const ends = inOrder(place?.counter ?? null, place?.toCounter ?? null);
    if (!range || ends.counter === null || ends.toCounter === null) return [];
    const clauses = [
      Math.min(mark.clause, range.clause),
      Math.max(mark.clause, range.clause),
    ] as const;
    const quote = quoteOf(ground.talk, ...clauses);
    const cause = isTurn(mark, "unrecorded") ? "not-recorded" : "not-in-view";
    return [
      {
        key: keyOf(`gap ${mark.from} ${quote}`),
        fromCounter: ends.counter,
        toCounter: ends.toCounter,
        cause,
        quote,
        span: lettersOf(ground.talk, ...clauses),
      },
    ];
  });
}
