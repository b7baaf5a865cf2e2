import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { NarrationRun } from "#lib/domain/narration/footage/run-told.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { speechOf } from "#lib/domain/narration/transcript/speech.ts";
import { parseTranscript } from "#lib/domain/narration/transcript/transcript.ts";
import { misread, narrations } from "#tests/bench/narration.ts";

const DOWN: NarrationRun = { looks: "downstream", measuredFrom: null, mainCounter: null };

function feetIn(text: string, run = DOWN): number[] {
  return draftLog(text, run).readings.map(({ counter }) => counter / 100);
}

function aside(text: string): [string, string][] {
  return draftLog(text, DOWN).setAside.map(({ words, why }) => [words, why]);
}

describe("a number that is no distance is set aside with why", () => {
  test.each([
    ["We are at nine oh four Larkspur.", "nine oh four", "a house or unit number"],
    ["That goes to number twenty-four.", "twenty-four", "a house or unit number"],
    ["Wye on the right, that's 2219.", "2219", "a house or unit number"],
    ["Looks like it's nine ten's tap.", "nine ten's", "a house or unit number"],
    ["It is October 6.", "6", "a date"],
    ["The house is from nineteen fifty-four.", "nineteen fifty-four", "a year"],
    ["Been there since sixty-two.", "sixty-two", "a year"],
    ["My meeting's at two thirty.", "two thirty", "a time of day"],
    ["Permit SS-26-118.", "SS-26-118", "a reference or telephone number"],
    ["Call 555-0134 about it.", "555-0134", "a reference or telephone number"],
    ["This is job number 40518.", "40518", "a reference or telephone number"],
    ["There are three taps.", "three", "a count"],
    ["It's blocking sixty percent of the pipe.", "sixty", "a percentage"],
    ["Roots, 65% blocked.", "65", "a percentage"],
    ["It is three quarters full.", "three", "a part of the bore"],
    ["Open joint, half an inch, two inches at the worst.", "two inches", "a pipe size"],
    ["It took nineteen minutes.", "nineteen", "a length of time"],
    ["They paid forty-eight hundred for it.", "forty-eight hundred", "an amount of money"],
    ["The pipe is six feet deep here.", "six feet", "a depth"],
    ["We ran ninety feet of cable.", "ninety feet", "a length of cable"],
    ["Clay with five foot lengths.", "five foot", "a length of pipe"],
    ["That one belongs to forty-two.", "forty-two", "a house or unit number"],
    ["This is video three of four.", "four", "a count"],
    ["The cleanout is two feet off the house.", "two feet", "a distance on the ground"],
    ["About ten, fifteen percent, not the end of the world.", "ten", "a percentage"],
    ["At eight thousand feet.", "eight thousand feet", "longer than any lateral"],
    [
      "Okay, so thirteen fourteen.",
      "thirteen fourteen",
      "said in pairs, like an address or an hour",
    ],
    ["Ten thirty appointment and nobody's home.", "Ten thirty", "a time of day"],
    ["Okay, 1204.", "1204", "too large to be a footage"],
    ["Okay, fifteen hundred.", "fifteen hundred", "too large to be a footage"],
    ["The card shows a wye at forty.", "forty", "said about the record, not as seen"],
    ["Supposed to be a wye at forty.", "forty", "not read off as the camera passed"],
  ])("%s", (text, words, why) => {
    expect(aside(text)).toContainEqual([words, why]);
    expect(feetIn(text)).toEqual([]);
  });

  test("and is one where it is spoken as one", () => {
    expect(feetIn("Wye at nine feet. Crack at a hundred and four feet.")).toEqual([9, 104]);
    expect(feetIn("Zero at the cleanout. Eighteen feet, wye, that's number eighteen.")).toEqual([
      0, 18,
    ]);
  });
});

describe("numbers as technicians say them", () => {
  test.each([
    ["Six decimal two. Wye.", 6.2],
    ["One four decimal five, crack.", 14.5],
    ["Five niner decimal three, crack.", 59.3],
    ["A los veinticinco pies hay una grieta.", 25],
    ["Cuarenta y uno y medio, una conexión a la izquierda.", 41.5],
    ["23' 3\" crack at the top.", 23.25],
    ["Eleven and a quarter, wye.", 11.25],
    ["Twenty-four, twenty-five, call it twenty-five, open joint.", 25],
  ])("%s", (text, feet) => {
    expect(feetIn(text)).toEqual([feet]);
  });
});

describe("what jumps", () => {
  const talk = (odd: string) =>
    `0:10 Wye at ten feet.\n0:40 Crack at twenty feet.\n1:10 ${odd}\n1:40 Roots at forty feet.`;

  test("against the distances around it is asked about, and places nothing", () => {
    const log = draftLog(talk("Open joint at three hundred feet."), DOWN);
    expect(log.readings.map(({ counter }) => counter)).toEqual([1000, 2000, 4000]);
    expect(log.problems).toEqual([
      {
        line: 3,
        message: "“three hundred feet” does not fit the footages around it and was not used",
      },
    ]);
    const joint = log.drafts.find(({ fault }) => fault === "open-joint");
    expect(joint?.reading).toBe("between");
    expect(joint?.counter).toBeGreaterThan(2500);
    expect(joint?.counter).toBeLessThan(3500);
  });

  test("a step back that is told is none", () => {
    expect(draftLog(talk("Backing up to eighteen feet, there's a tap."), DOWN).problems).toEqual(
      [],
    );
  });
});

describe("any talk with house numbers, years and prices in it", () => {
  const house = fc.integer({ min: 101, max: 9999 }).map(String);
  const spokenHouse = fc
    .tuple(
      fc.constantFrom("nine", "two", "four", "twelve", "thirteen", "twenty two"),
      fc.constantFrom("oh four", "oh six", "fourteen", "twenty", "eighteen"),
    )
    .map((parts) => parts.join(" "));
  const said = fc
    .tuple(
      fc.oneof(house, spokenHouse),
      fc.constantFrom(
        "we are at #",
        "that goes to number #",
        "# is the yellow house",
        "the folks at # called",
        "unit # is empty",
        "that's #'s tap",
        "houses # and up",
      ),
    )
    .map(([number, words]) => words.replace("#", number));
  const other = fc.constantFrom(
    "built in 1948",
    "that was twenty nineteen",
    "it took forty five minutes",
    "about sixty percent of the pipe",
    "they paid 4,800 for that",
    "call me at 555-0188",
    "three of those on this block",
    "it's a six inch",
  );
  const steps = fc.array(fc.integer({ min: 20, max: 120 }), { minLength: 2, maxLength: 8 });

  test("uses the spoken distances, and nothing else, as places", () => {
    fc.assert(
      fc.property(steps, fc.array(fc.oneof(said, other), { maxLength: 8 }), (tenths, asides) => {
        let at = 0;
        const feet: number[] = [];
        const lines = tenths.map((step, index) => {
          at += step;
          feet.push(at / 10);
          const beside = asides[index] ? ` ${asides[index]}.` : "";
          return `${index}:30 ${at / 10} feet, there's a crack.${beside}`;
        });
        const log = draftLog(lines.join("\n"), DOWN);
        expect(log.readings.map(({ counter }) => counter / 100)).toEqual(feet);
      }),
    );
  });

  test("quotes each distance that it uses from the text", () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(said, other), { maxLength: 6 }), (asides) => {
        const text = `Zero. ${asides.join(". ")}. Wye at twelve feet, ${asides.join(", ")}.`;
        const { cues, format } = parseTranscript(text);
        const { spoken } = speechOf(cues, format);
        for (const { quote } of draftLog(text, DOWN).readings) expect(spoken).toContain(quote);
      }),
    );
  });
});

test("no number of the tuned narrations is taken for a distance that it is not", () => {
  const wrong = narrations("tuned").flatMap((one) =>
    misread(one).map(({ quote }) => `${one.name}: ${quote}`),
  );
  expect(wrong).toEqual([]);
});
