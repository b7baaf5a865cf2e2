import { describe, expect, test } from "vitest";
import webvtt from "webvtt-parser";
import { timeOf } from "#lib/domain/narration/transcript/cues.ts";
import { parseTranscript } from "#lib/domain/narration/transcript/transcript.ts";

// WebVTT as in w3c/webvtt, index.bs of 2026-05-14; oracle: webvtt-parser 2.2.0 (W3C, CC0).

function file(...cues: readonly string[]): string {
  return `WEBVTT\n\n${cues.join("\n\n")}\n`;
}

function oracle(text: string): { cues: [number, number][]; errors: number } {
  const parsed = new webvtt.WebVTTParser().parse(text, "metadata");
  const cues = parsed.cues.map(({ startTime, endTime }): [number, number] => [
    Math.round(startTime * 1000),
    Math.round(endTime * 1000),
  ]);
  return { cues, errors: parsed.errors.length };
}

describe("WebVTT", () => {
  // The examples of the standard, in thousandths of a second (computed from them).
  test.each([
    ["00:01.000 --> 00:04.000", 1000, 4000],
    ["04:02.500 --> 04:05.000", 242_500, 245_000],
    ["00:00:47.600 --> 00:01:50.100", 47_600, 110_100],
    ["00:00:00.100 --> 00:00:07.342", 100, 7342],
    ["01:01:01.001 --> 100:00:00.000", 3_661_001, 360_000_000],
  ])("%s is read as the standard has it", (timing, start, end) => {
    const text = file(`${timing}\nwye on the left`);
    const ours = parseTranscript(text);
    expect(ours.cues).toMatchObject([{ start, end, text: "wye on the left" }]);
    expect(ours.problems).toEqual([]);
    expect(oracle(text)).toEqual({ cues: [[start, end]], errors: 0 });
  });

  test.each([
    ["sixty seconds", "00:60.000 --> 01:04.000"],
    ["two digits of thousandths", "00:01.00 --> 00:04.000"],
    ["a comma", "00:01,000 --> 00:04,000"],
    ["an end before the start", "00:04.000 --> 00:01.000"],
    ["no spaces", "00:01.000-->00:04.000"],
  ])("%s is named as wrong by us and by the oracle", (_name, timing) => {
    const text = file(`${timing}\nwye`);
    expect(parseTranscript(text).problems.map(({ line }) => line)).toContain(3);
    expect(parseTranscript(text).cues.map((cue) => cue.text)).toEqual(["wye"]);
    expect(oracle(text).errors).toBeGreaterThan(0);
  });

  // The oracle lets this pass (found by running it); the standard asks for two digits or more.
  test("one digit of hours is named as wrong", () => {
    const text = file("0:00:01.000 --> 0:00:04.000\nwye");
    expect(oracle(text).errors).toBe(0);
    expect(parseTranscript(text).problems).toHaveLength(2);
  });

  test("cues out of order are named as wrong by both, and all are read", () => {
    const text = file("00:05.000 --> 00:06.000\none", "00:01.000 --> 00:02.000\ntwo");
    expect(parseTranscript(text).cues).toHaveLength(2);
    expect(parseTranscript(text).problems).toHaveLength(1);
    expect(oracle(text).errors).toBe(1);
  });

  test("notes, styles, ids and settings are no words", () => {
    const text = `WEBVTT\n\nSTYLE\n::cue { color: red }\n\nNOTE two\nlines\n\nSlide 3\n00:01.000 --> 00:04.000 line:0\nwye\n`;
    expect(parseTranscript(text).cues.map((cue) => cue.text)).toEqual(["wye"]);
    expect(oracle(text)).toEqual({ cues: [[1000, 4000]], errors: 0 });
  });

  // SRT has no standard; its form is from memory.
  test("SRT's comma is right in SRT", () => {
    const { format, problems } = parseTranscript("1\n00:00:01,500 --> 00:00:04,250\nwye\n");
    expect([format, problems]).toEqual(["srt", []]);
    expect(timeOf("00:00:59,999")).toBe(59_999);
  });
});
