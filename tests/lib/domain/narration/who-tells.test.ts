import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Whose words, and of which pipe: other voices, other jobs, questions, summaries, and what a branch
// carries. The sentences are invented; each is told on one walk from the house to the main.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function walk(...lines: readonly string[]): string {
  const told = ["In at the cleanout, counter's zero.", ...lines, "Sixty, that's the main."];
  const at = (nth: number) => `00:${String(nth).padStart(2, "0")}:00.000`;
  return `WEBVTT\n\n${told
    .map((line, nth) => `${at(nth)} --> 00:${String(nth).padStart(2, "0")}:09.000\n${line}\n`)
    .join("\n")}`;
}

function rows(text: string): (string | number | null)[][] {
  return draftLog(text, RUN).drafts.map((row) => [
    row.fault ?? row.kind,
    row.counter === null ? null : row.counter / 100,
  ]);
}

function read(text: string): number[] {
  return draftLog(text, RUN).readings.map(({ counter }) => counter / 100);
}

describe("voices", () => {
  test("whoever calls depths to the one who reads the counter gives no footage", () => {
    const log = draftLog(
      walk(
        "<v Al>Ten feet, wye on the left.\n<v Jo>Three foot two deep.",
        "<v Al>Twenty-two, roots.\n<v Jo>Four one.",
        "<v Al>Thirty-five, crack on top.\n<v Jo>Depth is five foot even.",
      ),
      RUN,
    );
    expect(log.readings.map(({ counter }) => counter / 100)).toEqual([0, 10, 22, 35, 60]);
    expect(log.setAside).toContainEqual({ words: "Four one", why: "a depth", second: 126 });
  });

  test("two marks before words begin what another says", () => {
    expect(
      read(walk(">> twelve >> twelve what >> twelve point four >> okay wye on the left")),
    ).toEqual([0, 12.4, 60]);
  });

  test("a depth that was asked for is none of the footages", () => {
    expect(read(walk("Twenty, roots. How deep is it? Four and a half."))).toEqual([0, 20, 60]);
  });

  test("a meeting's transcript has the name and time above the words", () => {
    const log = draftLog(
      "Ann Poe   0:04\nIn at the cleanout, zero.\n\nAnn Poe   0:20\nTen feet, wye on the left.\n\nBo Li   0:40\nIs it clay there?\n",
      RUN,
    );
    expect(log.format).toBe("timed-lines");
    expect(log.drafts.map(({ kind }) => kind)).toEqual(["tie-in"]);
    expect(log.said.map(({ second }) => second)).toEqual([4, 20, 40]);
  });
});

describe("other pipes and other times", () => {
  test.each([
    "My uncle had a belly like that.",
    "We had a job on Birch with roots at thirty.",
    "Thirty-four was the other job.",
    "Last Tuesday there was a crack at thirty.",
    "That was the other fella's. All broken up.",
    "Did you see anything at eighteen?",
    "Were there any roots at thirty?",
  ])("%s is no row and no footage", (said) => {
    const text = walk("Ten feet, wye on the left.", said);
    expect(rows(text)).toEqual([["tie-in", 10]]);
    expect(read(text)).toEqual([0, 10, 60]);
  });

  test.each([
    "Let me read it back. Wye at ten, roots at twenty.",
    "Let me go over it one more time. Wye at ten, roots at twenty.",
    "So to review, today we found roots at twenty and a wye at ten.",
  ])("%s sums up", (said) => {
    const text = walk("Ten feet, wye on the left.", "Twenty, roots.", "Forty, crack on top.", said);
    expect(rows(text)).toEqual([
      ["tie-in", 10],
      ["roots", 20],
      ["crack", 40],
    ]);
  });
});

describe("what is told of a branch", () => {
  test.each([
    "Ten feet, tap on the left, that one's live, see the water.",
    "Ten feet, tap on the left, and there's toilet paper in it, so it's being used.",
    "Ten feet, little tap on top, plugged up with a brick.",
    "Ten feet, opening on the left, that's another house tying in.",
    "Ten feet, a connection on the left, that is a tap from another home.",
    "Ten feet, a tap on the left, they just chip the pipe and put it in.",
  ])("%s is one row", (said) => {
    expect(rows(walk(said))).toEqual([["tie-in", 10]]);
  });

  test("the material of the main is not the line's", () => {
    expect(rows(walk("Ten feet, wye on the left. The main is eight inch concrete."))).toEqual([
      ["tie-in", 10],
    ]);
  });
});

describe("numbers read off and put right", () => {
  test.each<[string, number[]]>([
    ["Fifteen feet, no, let me look again, fourteen and a half, wye on the left.", [14.5]],
    ["Forty-eight and, what is that, forty-eight six, wye on the left.", [48.6]],
    ["Thirty-two, thirty-four, okay, roots.", [32, 34]],
  ])("%s", (said, expected) => {
    expect(read(walk(said))).toEqual([0, ...expected, 60]);
  });

  test("a no by itself takes back the footage before it", () => {
    const text = walk(
      "Second tap is at thirty-four. No. Let me think. It's thirty-seven and a half.",
    );
    expect(read(text)).toEqual([0, 37.5, 60]);
  });
});

describe("captions", () => {
  test("that roll say each line once", () => {
    const line = (at: number, text: string) =>
      `00:00:0${at}.000 --> 00:00:0${at}.900 align:start position:0%\n${text}\n`;
    const log = draftLog(
      `WEBVTT\n\n${[
        line(1, " \nin at the cleanout zero on"),
        line(2, "in at the cleanout zero on\n "),
        line(3, "in at the cleanout zero on\nthe counter ten feet wye"),
        line(4, "the counter ten feet wye\n "),
        line(5, "the counter ten feet wye\non the left"),
      ].join("\n")}`,
      RUN,
    );
    expect(log.problems).toEqual([]);
    expect(log.said.map(({ text }) => text).join(" ")).toBe(
      "in at the cleanout zero on the counter ten feet wye on the left",
    );
  });

  test("in Spanish hours are feminine, feet are not", () => {
    const [row] = draftLog(
      "En el registro, contador en cero. A los once pies una grieta arriba a las doce.",
      RUN,
    ).drafts;
    expect(row).toMatchObject({ fault: "crack", counter: 1100, clock: 12 });
  });
});

test("where the footage was set at the way in, it is no matter that the camera went to the main", () => {
  const text =
    "We put the camera in by the porch and ran it down to the main, and I had it zeroed at the cleanout, so all of these are from the cleanout. Ten feet, a wye on the left.";
  expect(draftLog(text, RUN).measuredFrom).toBe("access");
});

test("what was read off with its find stays there, told out of order and without times", () => {
  const text =
    "In at the cleanout, zero. Roots at eighteen. Wye on the left at thirty. Oh, and there's a crack at eleven, on top. Offset at forty-two.";
  expect(rows(text)).toContainEqual(["crack", 11]);
});

test("what is put right is what was just said, not what was read half a minute before", () => {
  const text = walk(
    "Fifty-five now.",
    "Fifty-seven, no, fifty-seven point one. Tap at three o'clock.",
  );
  expect(read(text)).toEqual([0, 55, 57.1, 60]);
});
