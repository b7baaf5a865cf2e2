import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// A machine that captions cuts between any two words, in the middle of a number too, and leaves a
// gap there. People drop the end of `and`.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function at(second: number): string {
  return `00:${String(Math.floor(second / 60)).padStart(2, "0")}:${String(second % 60).padStart(2, "0")}.000`;
}

/** Captions with a gap of two seconds between any two. */
function feetIn(said: readonly string[]): number[] {
  const cues = [
    `${at(0)} --> ${at(4)}\nokay zero at the cleanout\n`,
    ...said.map((words, nth) => `${at(180 + nth * 6)} --> ${at(184 + nth * 6)}\n${words}\n`),
    `${at(500)} --> ${at(504)}\neighty eight there's the main\n`,
  ];
  return draftLog(`WEBVTT\n\n${cues.join("\n")}`, RUN).readings.map(({ counter }) => counter / 100);
}

test.each([
  [23, ["twenty", "three theres a pipe coming in on the right"]],
  [41.5, ["now we're at forty", "one and a half crack on top"]],
  [36.2, ["roots thirty", "six two"]],
  [54, ["and that's a wye fifty", "four feet"]],
  [62.3, ["offset joint sixty", "two point three"]],
  [31.8, ["thirty one", "point eight crack"]],
  [47, ["belly starts about forty", "seven"]],
  [29, ["tap on the left twenty", "nine even"]],
])("%s feet, cut in two", (feet, said) => {
  expect(feetIn(said)).toEqual([0, feet, 88]);
});

test.each([
  [20, ["roots at twenty", "two taps across from each other there"]],
  [30, ["there's a wye at thirty", "one of them goes to the garage"]],
])("%s feet, and a count behind it", (feet, said) => {
  expect(feetIn(said)).toEqual([0, feet, 88]);
});

test.each([
  [9.5, "Nine foot an' a half you got a wye comin' in on the left."],
  [38.5, "We come up out of it at thirty-eight an' a half."],
  [62.5, "Sixty-two ’n’ a half, crack on top."],
])("%s feet: %s", (feet, said) => {
  expect(feetIn([said])).toEqual([0, feet, 88]);
});

test.each([
  ["okay at thir", "teen and a half there's a crack", 1350],
  ["crack on top six", "teen", 1600],
  ["twen", "ty one there's a crack", 2100],
  ["for", "ty feet crack on the left", 4000],
  ["fif", "ty one point five crack", 5150],
])("a number broken within its word: %s | %s", (first, next, feet) => {
  const talk = `WEBVTT\n\n00:00:00.000 --> 00:00:04.000\nzero at the cleanout\n\n00:01:00.000 --> 00:01:04.000\n${first}\n\n00:01:04.200 --> 00:01:08.000\n${next}\n\n00:03:00.000 --> 00:03:04.000\nsixty that's the main\n`;
  const run = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;
  expect(draftLog(talk, run).drafts.map(({ fault, counter }) => [fault, counter])).toEqual([
    ["crack", feet],
  ]);
});
