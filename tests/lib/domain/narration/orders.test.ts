import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// One walk of twelve finds, told in the orders in which people tell a find and its footage. Every
// order has to give the same log; the sentences are invented, the footages are those said.

const FINDS = [
  ["tie-in", "a wye on the left"],
  ["crack", "a crack along the top"],
  ["roots", "some roots at the joint"],
  ["offset-joint", "an offset, maybe an inch"],
  ["tie-in", "a tap on the right, looks like it was hammered in"],
  ["broken", "a broken piece of pipe at three o'clock"],
  ["open-joint", "an open joint with a gap you can see"],
  ["deposit", "a bunch of grease on the walls"],
  ["hole", "a hole in the bottom"],
  ["belly", "a belly holding a little water"],
  ["infiltration", "some water dripping in from the top"],
  ["deformed", "a spot where it's going egg shaped"],
] as const;
const READ = [
  ["Five feet two", 5.17],
  ["Eleven and a half", 11.5],
  ["Sixteen point eight", 16.8],
  ["Twenty-three", 23],
  ["Twenty-nine four", 29.4],
  ["Thirty-six", 36],
  ["Forty-one and a half", 41.5],
  ["Forty-eight three", 48.3],
  ["Fifty-five", 55],
  ["Sixty-two foot six", 62.5],
  ["Sixty-nine", 69],
  ["Seventy-five point one", 75.1],
] as const;

type Told = (read: string, find: string) => readonly string[];

const ORDERS: readonly (readonly [string, Told])[] = [
  ["footage, find", (n, f) => [`${n}, ${f}.`]],
  ["find at footage", (n, f) => [`There's ${f} at ${n}.`]],
  ["find, then the footage by itself", (n, f) => [`There's ${f}.`, `That's at ${n}.`]],
  ["footage by itself, then the find", (n, f) => [`${n}.`, `You can see ${f}.`]],
  ["footage, chatter, find", (n, f) => [`${n}.`, "Let me get focused.", `Okay, there's ${f}.`]],
  ["find, chatter, footage", (n, f) => [`Okay, there's ${f}.`, "Not great.", `${n}.`]],
  ["coming up on", (n, f) => [`Coming up on ${n} now.`, `And right there, you've got ${f}.`]],
  [
    "in one long sentence",
    (n, f) => [`What do we have, we've got ${f}, and that is at, let's see, ${n} on the counter.`],
  ],
  ["footage twice", (n, f) => [`${n}, ${n}, ${f}.`]],
  ["told again", (n, f) => [`${n}, ${f}.`, `So that's ${f} at ${n}.`]],
];

const WAYS = ["timed", "captions", "plain"] as const;

test.each(ORDERS.flatMap(([name, told]) => WAYS.map((way) => [name, way, told] as const)))(
  "a walk told as %s, %s, gives its log",
  (_, way, told) => {
    const cues: (readonly [string, number])[] = [
      ["Okay, we're in at the cleanout, zero on the counter, six inch clay.", 0],
      ...READ.flatMap(([read, feet], at) => {
        let time = 12 + Math.round(feet * 3);
        return told(read, FINDS[at]?.[1] ?? "").map((words): readonly [string, number] => {
          const cue = [words, time] as const;
          time += words.length * 0.06 + 2;
          return cue;
        });
      }),
      ["And we're at the main, eighty-two.", 258],
    ];
    const { drafts } = draftLog(written(cues, way), {
      looks: "downstream",
      measuredFrom: null,
      mainCounter: null,
    });
    const rows = drafts.filter(({ kind }) => kind !== "material");
    expect(rows.map(({ kind, fault, counter }) => [fault ?? kind, (counter ?? 0) / 100])).toEqual(
      READ.map(([, feet], at) => [FINDS[at]?.[0], feet]),
    );
  },
);

function written(cues: readonly (readonly [string, number])[], way: (typeof WAYS)[number]): string {
  if (way === "plain") return cues.map(([words]) => words).join("\n");
  const blocks = cues.map(([words, from]) => {
    const to = from + words.length * 0.06;
    return `${stamp(from)} --> ${stamp(to)}\n${way === "captions" ? unpunctuated(words) : words}\n`;
  });
  return `WEBVTT\n\n${blocks.join("\n")}`;
}

function stamp(seconds: number): string {
  return new Date(Math.round(seconds * 1000)).toISOString().slice(11, 23);
}

function unpunctuated(words: string): string {
  return words.toLowerCase().replace(/[.,?]/g, "").replaceAll("-", " ");
}
