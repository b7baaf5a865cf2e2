import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NarrationRun } from "#lib/domain/narration/footage/run-told.ts";
import type { Draft } from "#lib/domain/narration/log/draft.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { speechOf } from "#lib/domain/narration/transcript/speech.ts";
import { parseTranscript } from "#lib/domain/narration/transcript/transcript.ts";
import { narrations, precision, recall, scores } from "#tests/bench/narration.ts";

const DOWN: NarrationRun = { looks: "downstream", measuredFrom: null, mainCounter: null };
const UP: NarrationRun = { looks: "upstream", measuredFrom: null, mainCounter: null };

function drafts(text: string, run: NarrationRun = DOWN): readonly Draft[] {
  return draftLog(text, run).drafts;
}

function only(text: string, run: NarrationRun = DOWN): Draft {
  const [draft, ...more] = drafts(text, run);
  if (!draft || more.length > 0)
    throw new Error(`Expected one row: ${JSON.stringify([draft, ...more])}`);
  return draft;
}

test("a tie-in that was broken into the pipe is no broken pipe, and the record goes with it", () => {
  const text = "Fifteen three, tap on the left, somebody broke it in. That one's not on the card.";
  expect(only(text)).toMatchObject({
    kind: "tie-in",
    counter: 1530,
    fitting: "break-in",
    fault: null,
    aboutRecord: "That one's not on the card",
  });
});

test.each(["looks clean", "looks good", "still fine"])(
  "the first pipe that is told at a footage lies there, however it looks: %s",
  (looks) => {
    const [row] = drafts(`0:04 Counter's on zero.\n0:31 Five feet. Clay pipe, six inch, ${looks}.`);
    expect(row).toMatchObject({ kind: "material", counter: 500, reading: "read" });
  },
);

test("one more, without its name, is one more of what was counted last", () => {
  const log = drafts(
    "0:05 At thirty, wye on the left.\n0:30 There's another one at forty, right-hand side, four inch clay.",
  );
  expect(log).toMatchObject([
    { kind: "tie-in", counter: 3000, clock: 9 },
    { kind: "tie-in", counter: 4000, clock: 3, diameter: 4, material: "vitrified-clay" },
  ]);
  expect(drafts("0:05 At thirty, grease.\n0:30 Another one bites the dust at forty.")).toHaveLength(
    1,
  );
});

test("a side by itself between commas is a side; the word that begins a sentence is none", () => {
  expect(only("Forty, another wye, right, four inch clay.").clock).toBe(3);
  expect(only("Right, so at forty there's a wye.").clock).toBeNull();
});

test("a reading after the camera moved on is not the reading of what was seen before", () => {
  const talk = (after: string) =>
    drafts(`2:10 Fifty feet even.\n2:30 Wye, right side.\n2:38 ${after}`).find(
      ({ kind }) => kind === "tie-in",
    );
  expect(talk("That's fifty-five on the counter.")).toMatchObject({
    counter: 5500,
    reading: "read",
  });
  expect(talk("Moving on. Fifty-five now.")).toMatchObject({ counter: 5340, reading: "between" });
});

describe("distances", () => {
  test.each([
    ["Wye on the left at thirty-four.", 3400, 0],
    ["At thirty-four and a half, wye on the left.", 3450, 0],
    ["Wye left, 31 foot 6.", 3150, 0],
    ["Wye left at thirty-one feet nine inches.", 3175, 0],
    ["31' 8\" wye left.", 3167, 0],
    ["Coming up on thirty-four there's a wye.", 3400, 100],
    ["A touch over thirty-eight, wye.", 3800, 50],
    ["Coming up on fifteen... fifteen point three, there's a wye.", 1530, 0],
    ["Wye at thirty-four or thirty-five.", 3450, 50],
    ["A wye at forty-five, forty-six foot.", 4550, 50],
    ["At thirty-four foot six inch clay wye on the right.", 3400, 0],
  ])("%s", (text, counter, slack) => {
    expect(only(text)).toMatchObject({ kind: "tie-in", counter, slack, reading: "read" });
  });

  test.each([
    ["The house is number 14, 1418 Tollgate Row, built in 1926."],
    ["About thirty percent of the pipe."],
    ["Stopped for coffee at nine."],
    ["No roots, no cracks or bellies anywhere."],
    ["Should be a wye around forty."],
    ["I didn't see any cracks at forty."],
  ])("make no row: %s", (text) => {
    expect(drafts(text)).toEqual([]);
  });

  test("from the main are the place, unless the footage at the main is known", () => {
    const text = "Wye on the left, forty feet from the main.";
    const log = draftLog(text, DOWN);
    expect(log.measuredFrom).toBe("main");
    expect(log.drafts).toMatchObject([{ counter: 4000, fromMain: 4000 }]);
    expect(only(text, { ...DOWN, mainCounter: 9600 })).toMatchObject({
      counter: 5600,
      fromMain: 4000,
    });
    expect(only(text, { ...UP, mainCounter: 200 })).toMatchObject({
      counter: 4200,
      fromMain: 4000,
    });
  });

  test("from the main stay so where the footage was set at the way in and is not known at the main", () => {
    const text =
      "Zero at the cleanout. Crack at ten. Roots at twenty. Wye on the left, forty feet from the main.";
    const log = draftLog(text, DOWN);
    expect(log.measuredFrom).toBe("access");
    expect(log.drafts.at(-1)).toMatchObject({ counter: null, fromMain: 4000 });
    expect(log.drafts.at(-1)?.note).toContain("40.0 ft from the main");
  });

  test("from the main use the main's counter that the speaker gives", () => {
    const log = draftLog(
      "Wye, forty feet from the main. That's the main at ninety-eight six.",
      DOWN,
    );
    expect(log.mainCounter).toBe(9860);
    expect(log.drafts[0]?.counter).toBe(5860);
  });

  test("a range makes a stretch, and one under water a gap as well", () => {
    const log = draftLog("Forty-one to forty-seven under water.", DOWN);
    expect(log.drafts).toMatchObject([{ kind: "water", counter: 4100, toCounter: 4700 }]);
    expect(log.gaps).toMatchObject([{ fromCounter: 4100, toCounter: 4700, cause: "under-water" }]);
  });

  test("a stretch that starts and goes to a place is one", () => {
    expect(only("Roots start at 20 and go to 28.")).toMatchObject({
      counter: 2000,
      toCounter: 2800,
    });
  });

  test("captions without points give each thing its own place", () => {
    const text =
      "okay zero and at ten there's a wye at twenty there's a tap and at thirty there's a crack";
    expect(drafts(text).map(({ counter }) => counter)).toEqual([1000, 2000, 3000]);
  });

  test("a stretch ends where the speaker says that it ends", () => {
    const text = "0:10 Roots starting at forty-eight.\n0:20 Out of the roots at fifty-five.";
    expect(only(text)).toMatchObject({ fault: "roots", counter: 4800, toCounter: 5500 });
  });
});

describe("between two readings", () => {
  test("the counter follows from time and is marked so", () => {
    const text = "0:00 Wye at ten.\n0:30 Crack in the top.\n1:00 Wye at thirty.";
    expect(drafts(text)[1]).toMatchObject({ fault: "crack", reading: "between", slack: 1000 });
    expect(drafts(text)[1]?.counter).toBeGreaterThanOrEqual(1950);
    expect(drafts(text)[1]?.counter).toBeLessThanOrEqual(2050);
  });

  test("text without times gives the middle, with a slack that reaches both", () => {
    const text = "Wye at ten.\n\nCrack in the top.\n\nWye at thirty.";
    expect(drafts(text)[1]).toMatchObject({ counter: 2000, slack: 1000, reading: "between" });
  });

  test("what follows the last reading has no counter and says why", () => {
    const text = "0:00 Wye at ten.\n0:40 Crack in the top.";
    expect(drafts(text)[1]).toMatchObject({
      counter: null,
      note: "Said after 10.0 ft; how far beyond is not known",
    });
  });

  test("a counter read out after the event belongs to the event", () => {
    const text =
      "0:00 Zero.\n0:20 Wye on the left.\n0:22 Counter says twelve four.\n0:50 Crack at thirty.";
    expect(drafts(text)[0]).toMatchObject({ kind: "tie-in", counter: 1240, reading: "read" });
  });
});

describe("corrections", () => {
  test.each([
    ["Wye on the left at thirty-four, no, thirty-five.", { counter: 3500 }],
    ["Wye on the left at thirty-four, make that thirty-six.", { counter: 3600 }],
    ["Wye at thirty-six, not thirty-four.", { counter: 3600 }],
    ["Wye on the left, no, on the right, at thirty.", { clock: 3 }],
    ["Tee, I mean a saddle, at thirty.", { fitting: "saddle" }],
    ["Wye at ten o'clock, more like nine o'clock, at thirty.", { clock: 9 }],
  ])("%s", (text, expected) => {
    expect(only(text)).toMatchObject(expected);
  });

  test("take back what was not there", () => {
    expect(drafts("Crack at twenty. Scratch that, just a shadow.")).toEqual([]);
  });
});

describe("what is told of a thing", () => {
  test("clock, size, material and hedges go with it", () => {
    expect(
      only("At thirty I think there's a four inch cast iron wye at ten o'clock."),
    ).toMatchObject({
      clock: 10,
      diameter: 4,
      material: "cast-iron",
      fitting: "wye",
      hedges: ["i think"],
    });
  });

  test("what is said of the record stays with it", () => {
    const text = "Tee on the right at eighteen. That is not on the card.";
    expect(only(text).aboutRecord).toBe("That is not on the card");
  });

  test("what the record claims is not seen", () => {
    const text =
      "0:02 Wye at ten.\n0:20 Card shows a wye at twenty-five, not seeing it.\n0:40 Crack at forty.";
    expect(drafts(text).map(({ kind }) => kind)).toEqual(["tie-in", "fault"]);
    expect(draftLog(text, DOWN).recordSaid).toHaveLength(1);
  });

  test.each([
    "Six eight, iron ends, clay begins. The permit calls for plastic.",
    "Six eight, iron ends, clay begins. The card has plastic all the way.",
    "Six eight, iron ends, clay begins. Permit says this was all replaced with PVC.",
    "Six eight, iron ends, clay begins. The drawing shows a liner.",
  ])("what the record says and gives no place goes to the find beside it: %s", (text) => {
    const rows = drafts(`0:02 Zero. Cast iron.\n0:20 ${text}\n0:40 Crack at forty.`);
    expect(rows.map(({ kind }) => kind)).toEqual(["material", "material", "fault"]);
    expect(rows[1]?.aboutRecord).toMatch(/permit|card|drawing/i);
  });

  test.each(["That's thirty-three hundred, plus the permit.", "The permit says two laterals."])(
    "what the record says where nothing is found makes no row: %s",
    (text) => {
      const rows = drafts(`0:02 Wye at ten.\n0:20 Twenty-five. ${text}\n0:40 Crack at forty.`);
      expect(rows.map(({ kind }) => kind)).toEqual(["tie-in", "fault"]);
    },
  );

  test.each([
    ["0:02 Zero. Cast iron. The permit says two laterals.\n0:20 Wye at ten.\n0:40 Crack at forty."],
    ["0:02 Wye at ten.\n0:20 Twenty-five. The permit says two laterals.\n0:40 Crack at forty."],
    ["0:02 The permit says two laterals. Zero.\n0:20 Wye at ten."],
  ])("what the record says by itself is kept though it makes no row: %s", (text) => {
    const log = draftLog(text, DOWN);
    expect(log.drafts.map(({ kind }) => kind)).not.toContain("remark");
    expect(log.recordSaid.map(({ aboutRecord }) => aboutRecord)).toEqual([
      "The permit says two laterals",
    ]);
  });

  test("what is said about the record of a find is kept with the row and listed once", () => {
    const log = draftLog(
      "0:02 Zero.\n0:20 Wye at ten, not on the card.\n0:40 Crack at forty.",
      DOWN,
    );
    const [tieIn] = log.drafts;
    expect(log.recordSaid).toMatchObject([
      { key: tieIn?.key, aboutRecord: tieIn?.aboutRecord, fromMain: tieIn?.fromMain },
    ]);
  });

  test("named twice it is one row, across from each other it is two", () => {
    expect(drafts("0:01 Wye on the left at twenty.\n0:05 That wye is running.")).toHaveLength(1);
    const both = drafts("Two wyes at twenty, one on the left and one on the right.");
    expect(both.map(({ clock }) => clock)).toEqual([9, 3]);
  });
});

describe("changes of material", () => {
  test("name what lies upstream, whatever way the camera goes", () => {
    const text = "Clay to PVC at fifty.";
    const told = { kind: "material", material: "pvc" };
    expect(only(text, DOWN)).toMatchObject({ ...told, upstreamMaterial: "vitrified-clay" });
    expect(only(text, UP)).toMatchObject({ ...told, upstreamMaterial: "pvc" });
  });

  test("turn round where the camera is pulled back", () => {
    const text = "Wye at eighty. Clay to PVC at fifty. Wye at thirty.";
    expect(drafts(text, DOWN)[1]).toMatchObject({ upstreamMaterial: "pvc" });
  });

  test("saying the same again adds no row", () => {
    expect(drafts("Clay at ten. Still in clay at twenty.")).toHaveLength(1);
  });
});

describe("any talk", () => {
  const phrase = fc.constantFrom(
    "wye on the left",
    "no roots",
    "crack at ten o'clock",
    "thirty-four five",
    "at twelve",
    "that's the main",
    "forty to forty-four under water",
    "clay to cast iron",
    "I think",
    "no, sorry, thirty-six",
    "not on the card",
    "scratch that",
    "two feet past that",
    "twenty feet from the main",
  );
  const talk = fc
    .array(fc.tuple(phrase, fc.constantFrom(". ", ", ", " ", "\n")), { maxLength: 25 })
    .map((parts) => parts.flat().join(""));
  const timed = talk.map((text) =>
    text
      .split("\n")
      .map((line, index) => `${index}:00 ${line}`)
      .join("\n"),
  );

  test("is quoted word for word, under keys that are unique and stable", () => {
    fc.assert(
      fc.property(fc.oneof(talk, timed), (text) => {
        const { cues, format } = parseTranscript(text);
        const { spoken } = speechOf(cues, format);
        const log = draftLog(text, DOWN);
        const keys = log.drafts.map(({ key }) => key);
        for (const { quote } of [...log.drafts, ...log.gaps]) {
          expect(quote).not.toBe("");
          expect(spoken).toContain(quote);
        }
        expect(new Set(keys).size).toBe(keys.length);
        expect(draftLog(text, DOWN)).toEqual(log);
      }),
    );
  });

  test("gives no counter outside what was spoken without slack", () => {
    fc.assert(
      fc.property(fc.oneof(talk, timed), (text) => {
        for (const { counter, slack } of drafts(text)) {
          const spoken = counter === null || slack > 0 || (counter >= 1200 && counter <= 4400);
          expect(spoken).toBe(true);
        }
      }),
    );
  });
});

describe("whole narrations", () => {
  const narrated = narrations("tuned");
  const tuned = scores(narrated);

  test.each(["tie-in", "fault", "material"])(
    "of the tuned set give each %s nine times in ten",
    (kind) => {
      const score = tuned.find((one) => one.kind === kind);
      if (!score) throw new Error(`No ${kind}`);
      expect(precision(score)).toBeGreaterThanOrEqual(0.9);
      expect(recall(score)).toBeGreaterThanOrEqual(0.9);
    },
  );

  test("tell the main and the stretches under water", () => {
    for (const { expected, log } of narrated) {
      const main = expected.main === null ? null : Math.round(expected.main * 100);
      if (expected.mainCounter === null) expect(log.mainCounter).toBe(main);
      const gaps = log.gaps.map(({ fromCounter, toCounter }) => [
        fromCounter / 100,
        toCounter / 100,
      ]);
      for (const gap of expected.gaps ?? []) expect(gaps).toContainEqual(gap);
    }
  });
});
