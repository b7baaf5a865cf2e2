import type { Cft } from "../line/station.ts";
import type { ObscuredBy } from "../run/run.ts";
import { withoutCorrected } from "./correct.ts";
import type { Draft, DraftGap, DraftLog, NarrationRun, SpokenReading } from "./draft.ts";
import { type Heard, heardIn } from "./heard.ts";
import { keyOf } from "./key.ts";
import { merged } from "./merge.ts";
import { type Ground, groundOf, inOrder, placesOf } from "./place.ts";
import { inSentence, isTurn, type Of, quoteOf, type Said, talkOf } from "./said.ts";
import { marksIn } from "./scan.ts";
import { senseOf } from "./sense.ts";
import { speechOf } from "./speech.ts";
import { withEnds } from "./stretch.ts";
import { parseTranscript } from "./transcript.ts";

/**
 * Drafts the observation log of a run from what its technician said: a row for every thing seen,
 * with the words it rests on. Distances between two spoken readings are worked out by time and
 * marked so; nothing is placed that the talk does not place. Every row is for a person to accept,
 * mend or drop.
 */
export function draftLog(text: string, run: NarrationRun): DraftLog {
  const transcript = parseTranscript(text);
  const speech = speechOf(transcript.cues, transcript.format);
  const talk = withoutCorrected(talkOf(speech, marksIn(speech.words)));
  const sense = senseOf(talk);
  const first = groundOf(talk, sense, run);
  const mainCounter = mainSaid(first);
  const ground = groundOf(talk, sense, { ...run, mainCounter: run.mainCounter ?? mainCounter });
  const rows = merged(withEnds(ground, absorbed(heardIn(ground)))).filter(
    (row) => row.kind !== "main",
  );
  return {
    format: transcript.format,
    drafts: absorbed(rows).map((row, index, all) => draftOf(ground, row, sameBefore(all, index))),
    gaps: gapsOf(ground, rows),
    readings: readingsOf(ground),
    mainCounter,
    problems: transcript.problems,
  };
}

/** Where the speaker said that the camera is at the main. */
function mainSaid(ground: Ground): Cft | null {
  const mains = heardIn(ground).filter(
    (row) =>
      row.kind === "main" &&
      row.place.reading === "read" &&
      row.place.clause !== null &&
      row.place.counter !== null,
  );
  return mains.at(-1)?.place.counter ?? null;
}

/** Water that a belly holds is told by the belly. */
function absorbed(rows: readonly Heard[]): Heard[] {
  const bellies = rows.filter((row) => row.fault === "belly");
  return rows.filter(
    (row) =>
      row.kind !== "water" ||
      !bellies.some((belly) => belly.mark.sentence === row.mark.sentence || overlap(belly, row)),
  );
}

function overlap(a: Heard, b: Heard): boolean {
  const from = a.place.counter;
  const at = b.place.counter;
  if (from === null || at === null) return false;
  return at <= (a.place.toCounter ?? from) + 200 && (b.place.toCounter ?? at) >= from - 200;
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
    reading: row.place.reading,
    slack: row.place.slack,
    clock: row.clock,
    fault: row.fault,
    material: row.material,
    diameter: row.diameter,
    fitting: row.fitting,
    videoSecond: secondOf(row.mark),
    quote,
    hedges: row.hedges,
    aboutRecord: row.aboutRecord,
    note: row.notes.join("; "),
  };
}

function secondOf(mark: Said): number | null {
  return mark.time === null ? null : Math.floor(mark.time / 1000);
}

function readingsOf(ground: Ground): SpokenReading[] {
  const marks = new Map(ground.talk.said.map((mark) => [mark.at, mark]));
  return ground.track.flatMap((point) => {
    const mark = marks.get(point.at);
    return mark
      ? [
          {
            counter: point.counter,
            videoSecond: secondOf(mark),
            quote: quoteOf(ground.talk, mark.clause, mark.clause),
          },
        ]
      : [];
  });
}

/** Stretches under water, and those where the speaker says that nothing could be seen. */
function gapsOf(ground: Ground, rows: readonly Heard[]): DraftGap[] {
  const wet = rows.flatMap((row) => {
    const under = isUnder(ground, row);
    return under ? gapOf(ground, row, "under-water") : [];
  });
  return [...wet, ...unseen(ground, wet)];
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
  return [
    { key: keyOf(`gap ${row.mark.from} ${quote}`), fromCounter: counter, toCounter, cause, quote },
  ];
}

function unseen(ground: Ground, wet: readonly DraftGap[]): DraftGap[] {
  return ground.talk.said.flatMap((mark): DraftGap[] => {
    if (!isTurn(mark, "unseen", "unrecorded")) return [];
    const range = inSentence(ground.talk, mark.sentence).find(
      (other): other is Of<"distance"> =>
        other.what === "distance" && other.distance.to !== null && !other.distance.choice,
    );
    const place = range && placesOf(ground, range)[0];
    const ends = inOrder(place?.counter ?? null, place?.toCounter ?? null);
    if (!range || ends.counter === null || ends.toCounter === null) return [];
    if (wet.some((gap) => gap.fromCounter === ends.counter)) return [];
    const quote = quoteOf(
      ground.talk,
      Math.min(mark.clause, range.clause),
      Math.max(mark.clause, range.clause),
    );
    const cause = isTurn(mark, "unrecorded") ? "not-recorded" : "not-in-view";
    return [
      {
        key: keyOf(`gap ${mark.from} ${quote}`),
        fromCounter: ends.counter,
        toCounter: ends.toCounter,
        cause,
        quote,
      },
    ];
  });
}
