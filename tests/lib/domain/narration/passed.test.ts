import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// A find that is told after the camera has passed it lies where it was, and the camera does not.

const TOLD = `
  Oh, I skipped it, there was a crack back around thirty-one.
  Forgot to say, there was a crack at thirty-one.
  I should've mentioned there was a little crack back at thirty-one.
  Missed one, there was a crack at thirty-one.
  Going back, at thirty-one there was a crack I didn't call.
  Earlier at thirty-one there was a crack.
  We passed a crack at thirty-one, I didn't say.
  By the way that was a crack back at thirty-one.
  Should have said that crack at thirty-one.
  I went right by a crack at thirty-one.`;

const TALKS: readonly ((words: string) => string)[] = [
  (words) =>
    `0:00 Zero at the cleanout.\n0:10 Four two, wye on the left.\n0:40 Twenty-two feet, wye on the right.\n1:20 Forty-five, offset joint.\n1:30 ${words}\n1:45 Roots in here.\n2:00 Sixty even, hole in the top.\n2:40 Eighty feet, main.`,
  (words) =>
    `WEBVTT\n\n00:00:00.000 --> 00:00:04.000\nokay zero at the cleanout\n\n00:00:10.000 --> 00:00:14.000\nfour two wye on the left\n\n00:00:40.000 --> 00:00:44.000\ntwenty two feet wye on the right\n\n00:01:20.000 --> 00:01:24.000\nforty five offset joint\n\n00:01:30.000 --> 00:01:34.000\n${words.toLowerCase().replace(/[.,]/g, "").replace(/-/g, " ")}\n\n00:01:45.000 --> 00:01:47.000\nroots in here\n\n00:02:00.000 --> 00:02:04.000\nsixty even hole in the top\n`,
];

const lines = TOLD.split("\n").flatMap((line) => line.trim() || []);

describe.each(TALKS)("what was passed", (talk) => {
  test.each(lines)("%s", (words) => {
    const { drafts } = draftLog(talk(words), {
      looks: "downstream",
      measuredFrom: null,
      mainCounter: null,
    });
    const faults = drafts.map(({ fault, counter }) => [fault, counter]);
    expect(faults).toContainEqual(["crack", 3100]);
    expect(faults).toContainEqual(["offset-joint", 4500]);
    expect(faults).toHaveLength(6);
    const roots = drafts.find(({ fault }) => fault === "roots");
    expect(roots?.counter).toBeGreaterThan(4800);
    expect(roots?.counter).toBeLessThan(5800);
  });
});
