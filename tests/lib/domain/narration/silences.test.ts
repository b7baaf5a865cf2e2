import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Captions of one talk, as they stand with gaps, until the next comes, and over it.

const SAID: readonly (readonly [from: number, to: number, words: string])[] = [
  [0, 3, "okay zero at the cleanout and going down"],
  [20, 23, "ten and a half there's a wye on the left"],
  [23, 25, "looks like it's dry nobody on it"],
  [40, 43, "that's an offset joint there not too bad"],
  [60, 63, "thirty and a half wye on the right"],
  [80, 83, "roots in the joint just little hairs of it"],
  [100, 103, "fifty and a half it goes to clay from plastic"],
];

const stamp = (second: number) =>
  `00:${String(Math.floor(second / 60)).padStart(2, "0")}:${String(second % 60).padStart(2, "0")}.000`;

const captions = (end: (to: number, next: number) => number) =>
  `WEBVTT\n\n${SAID.map(
    ([from, to, words], at) =>
      `${stamp(from)} --> ${stamp(end(to, SAID[at + 1]?.[0] ?? to))}\n${words}\n`,
  ).join("\n")}`;

test.each([
  ["with gaps", captions((to) => to)],
  ["each until the next", captions((_, next) => next)],
  ["each over the next", captions((_, next) => next + 4)],
])("what was told in silence is placed by its time, in captions %s", (_, text) => {
  const { drafts } = draftLog(text, { looks: "downstream", measuredFrom: null, mainCounter: null });
  const at = (fault: string) => drafts.find((draft) => draft.fault === fault)?.counter ?? 0;
  expect(Math.abs(at("offset-joint") - 2000)).toBeLessThanOrEqual(200);
  expect(Math.abs(at("roots") - 4000)).toBeLessThanOrEqual(200);
});
