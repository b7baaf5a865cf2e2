import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// A footage told as past that the camera has not come to is of another time and another pipe.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function read(words: string): number[] {
  const talk = `0:00 Zero at the cleanout.\n0:30 Twelve feet, wye on the left.\n1:10 Twenty-eight even, roots.\n1:16 ${words}\n1:40 Thirty-three, crack on top.\n2:10 Forty-six four, joint's open.\n2:40 Sixty, that's the main.`;
  const bare = talk.replace(/[.,;](?!\d)/g, "").toLowerCase();
  const [one, two] = [talk, bare].map((text) =>
    draftLog(text, RUN).readings.map(({ counter }) => counter / 100),
  );
  expect(two).toEqual(one);
  return one ?? [];
}

const FRAME = [0, 12, 28, 33, 46.4, 60];

test.each([
  "That was forty feet in and it was a wrench somebody dropped.",
  "It was fifty-five feet the last time I saw one this bad.",
  "The worst one was at fifty feet, over by the school.",
  "That was forty-four feet, the one with the toy truck.",
  "It was at thirty-nine feet when we did his mother's.",
  "One was thirty-eight feet in and took us all day.",
  "That was a five hour job and it was fifty feet in.",
])("of another time: %s", (words) => expect(read(words)).toEqual(FRAME));

test.each([
  ["So that was thirty feet, another wye.", 30],
  ["That was a tap, at twenty-nine feet.", 29],
  ["It was thirty feet where the roots quit.", 30],
])("of this one: %s", (words, feet) =>
  expect(read(words)).toEqual([...FRAME, feet].sort((a, b) => a - b)),
);
