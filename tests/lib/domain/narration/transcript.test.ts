import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseTranscript } from "#lib/domain/narration/transcript/transcript.ts";

describe("parseTranscript()", () => {
  test("reads WebVTT with a byte order mark, CRLF, notes, styles, ids, tags and entities", () => {
    const text = [
      "\uFEFFWEBVTT run 2",
      "",
      "STYLE",
      "::cue { color: red }",
      "",
      "NOTE typed by the office",
      "",
      "first",
      "00:01.000 --> 00:04.000 align:start",
      "<v Ann>wye &amp; <i>roots</i>",
      "",
    ].join("\r\n");
    expect(parseTranscript(text)).toEqual({
      format: "webvtt",
      cues: [{ start: 1000, end: 4000, text: "[Ann] wye & roots", line: 10 }],
      problems: [],
    });
  });

  test("reads SRT with and without numbers", () => {
    const text = "1\n00:00:01,500 --> 00:00:04,250\nwye\n\n00:01:00,000 --> 00:01:02,000\ncrack\n";
    const { format, cues, problems } = parseTranscript(text);
    expect(format).toBe("srt");
    expect(cues.map(({ start, end, text: said }) => [start, end, said])).toEqual([
      [1500, 4250, "wye"],
      [60_000, 62_000, "crack"],
    ]);
    expect(problems).toEqual([]);
  });

  test.each(["1:05 wye left", "[01:05] wye left", "(0:01:05) - wye left", "1:05 – wye left"])(
    "reads a line with a time: %s",
    (line) => {
      const { format, cues } = parseTranscript(line);
      expect(format).toBe("timed-lines");
      expect(cues[0]).toMatchObject({ start: 65_000, text: "wye left" });
    },
  );

  test("keeps a line without a time with the one above it", () => {
    const { cues } = parseTranscript("0:05 wye\non the left\n0:09 crack");
    expect(cues.map(({ text }) => text)).toEqual(["wye\non the left", "crack"]);
  });

  test("names a bad time by its line and keeps the words", () => {
    const text = "1\n00:00:01,000 --> 00:00:02,000\none\n\n2\n00:00:9x,000 --> 00:00:12,000\ntwo\n";
    const { cues, problems } = parseTranscript(text);
    expect(cues.map(({ start, text: said }) => [start, said])).toEqual([
      [1000, "one"],
      [null, "two"],
    ]);
    expect(problems).toEqual([{ line: 6, message: "“00:00:9x,000” is not a valid time" }]);
  });

  test("reads two cues where the blank line between them was forgotten", () => {
    const text = "1\n00:00:01,000 --> 00:00:02,000\none\n2\n00:00:03,000 --> 00:00:04,000\ntwo\n";
    const { cues, problems } = parseTranscript(text);
    expect(cues.map(({ text: said }) => said)).toEqual(["one", "two"]);
    expect(problems).toEqual([
      { line: 5, message: "A blank line is missing above this time stamp" },
    ]);
  });

  test("loses no word of any text, whatever its form", () => {
    const word = fc.constantFrom("wye", "crack", "roots", "left", "clay");
    const said = fc.array(word, { minLength: 1, maxLength: 6 }).map((words) => words.join(" "));
    const timing = fc.constantFrom(
      "00:01.000 --> 00:02.000",
      "00:00:01,000 --> 00:00:02,000",
      "00:09 --> 00:03",
      "xx --> yy",
      "0:01",
      "",
    );
    const block = fc.tuple(timing, said).map(([time, words]) => `${time}\n${words}\n`);
    const text = fc.tuple(fc.constantFrom("WEBVTT\n\n", ""), fc.array(block, { minLength: 1 }));
    fc.assert(
      fc.property(text, ([head, blocks]) => {
        const whole = head + blocks.join("\n");
        const words = (whole.match(/wye|crack|roots|left|clay/g) ?? []).join(" ");
        const kept = parseTranscript(whole)
          .cues.map((cue) => cue.text)
          .join(" ");
        expect((kept.match(/wye|crack|roots|left|clay/g) ?? []).join(" ")).toBe(words);
      }),
    );
  });
});
