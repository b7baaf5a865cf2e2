import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// One fault after another in the words in which people tell it, and what a log would call it.

const TOLD: readonly (readonly [words: string, ...log: string[]])[] = [
  [
    "the joint's offset maybe half an inch and there's roots coming in through it",
    "offset-joint",
    "roots",
  ],
  ["there's a gap where the two pipes come together", "open-joint"],
  ["a joint that's let go a bit", "open-joint"],
  ["the rubber gasket is hanging out of the joint", "open-joint"],
  ["the coupling's slipped, it's not straight", "offset-joint"],
  ["that joint is a little bit off", "offset-joint"],
  ["there's a step down, about an inch", "offset-joint"],
  ["there's a lip right there that catches paper", "offset-joint"],
  ["somebody's put a shovel through it", "broken"],
  ["there's a shard of clay hanging down", "broken"],
  ["there's a chunk outta the crown", "broken"],
  ["part of the wall is missing", "broken"],
  ["the whole bottom of the pipe is gone, it's just running on dirt", "hole"],
  ["dirt's washing in", "hole"],
  ["the pipe's blistering on you", "deformed"],
  ["it's starting to squat on us", "deformed"],
  ["you can see a little stream of clear water coming through the wall", "infiltration"],
  ["the tree's found its way in", "roots"],
  ["a chunk of concrete sitting in the invert", "deposit"],
  ["I can see a screw through the pipe", "crossing"],
  ["another house comes in here on the right", "tie-in"],
  ["this is where unit B joins", "tie-in"],
  ["there's an old abandoned wye, plugged with mortar", "tie-in"],
  ["roots in the tap on the left", "roots", "tie-in"],
  ["an inlet, left", "tie-in"],
  ["joint's tight, all good"],
  ["if it were cracked you'd see a dark line"],
  ["some mud on the lens"],
];

test.each(TOLD)("twelve feet, %s", (words, ...log) => {
  const { drafts } = draftLog(
    `0:00 Zero at the cleanout, clay pipe.\n0:20 Five feet, wye on the left.\n0:45 Twelve feet, ${words}.\n1:20 Thirty feet, we're at the main.`,
    { looks: "downstream", measuredFrom: null, mainCounter: null },
  );
  const here = drafts.filter(({ counter }) => counter !== 0 && counter !== 500);
  expect(here.map(({ kind, fault, counter }) => [fault ?? kind, counter]).sort()).toEqual(
    log.map((kind) => [kind, 1200]).sort(),
  );
});

test("one’s own word said once more, to put it right, is put right", () => {
  const { drafts, readings } = draftLog(
    "0:00 Zero at the cleanout.\n0:30 Twelve, tap on the left. Hold up. Let me get a better look. That's not a tap, that's a chip out of the bell.\n1:00 Twenty-six, roots. Did I say twenty-six? Twenty-eight.\n1:30 Thirty-five, the joint's offset, scratch the thirty-five, it's more like thirty-six and a half.\n2:00 Forty-nine, belly. I thought it was a belly. It's just a wet spot.\n2:30 Fifty-five five, main.",
    { looks: "downstream", measuredFrom: null, mainCounter: null },
  );
  expect(drafts.map(({ kind, fault, counter }) => [fault ?? kind, (counter ?? 0) / 100])).toEqual([
    ["broken", 12],
    ["roots", 28],
    ["offset-joint", 36.5],
  ]);
  expect(readings.map(({ counter }) => counter / 100)).toEqual([0, 12, 28, 36.5, 49, 55.5]);
});
