import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// What lies a little on this side of the main is there, whatever the time says.

const TOLD = `
  There's an offset right before the main.
  Then there's a little offset right before the main, couple feet before.
  Couple feet before you hit the main there's an offset.
  Offset joint just shy of the main.
  Last joint before the city main is offset.
  There's an offset joint just short of the main.
  Offset, about two feet shy of the main.
  Right ahead of the main it's offset, the joint.
  An offset joint right off the main.
  Joint's offset just above the main.`;

const TALKS: readonly (readonly [text: (words: string) => string, at: number])[] = [
  [
    (words) =>
      `Zero at the cleanout. First wye is at twenty-two feet on the right. Crack at forty. ${words} You're in the main at ninety-six.`,
    9400,
  ],
  [
    (words) =>
      `0:00 Zero at the cleanout.\n0:40 Twenty-two feet, wye on the right.\n1:20 Forty, crack on top.\n2:30 ${words}\n2:50 And that's the main, ninety-six.`,
    9400,
  ],
  [
    (words) =>
      `0:00 We're at the main, zero, pulling back.\n0:07 ${words}\n0:40 Twenty-two feet, wye on the right.\n1:20 Forty, crack on top.`,
    200,
  ],
];

describe.each(TALKS)("near the main", (talk, at) => {
  test.each(TOLD.split("\n").flatMap((line) => line.trim() || []))("%s", (words) => {
    const { drafts } = draftLog(talk(words), {
      looks: "downstream",
      measuredFrom: null,
      mainCounter: null,
    });
    const offset = drafts.find(({ fault }) => fault === "offset-joint");
    expect(Math.abs((offset?.counter ?? -1_000) - at)).toBeLessThanOrEqual(300);
    expect(drafts).toHaveLength(3);
  });
});
