import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

/** Kinds (faults by their name) that a downstream talk makes. */
function kinds(text: string): string[] {
  return draftLog(text, { looks: "downstream", measuredFrom: null, mainCounter: null }).drafts.map(
    ({ kind, fault }) => fault ?? kind,
  );
}

describe("a thing told by its subject and what is said of it", () => {
  test.each([
    ["Bad joint at thirty-eight, it's wide open.", ["open-joint"]],
    ["Thirty. Joint. Wide open.", ["open-joint"]],
    ["Thirty, that joint's not pushed home.", ["open-joint"]],
    ["Thirty, the joint here has come apart.", ["open-joint"]],
    ["Thirty, the joint's good, wye is open.", ["tie-in"]],
    ["Thirty, the joint has shifted on us.", ["offset-joint"]],
    ["Thirty, the pipes don't line up.", ["offset-joint"]],
    ["Thirty, a piece of the pipe is missing on the bottom.", ["broken"]],
    ["Thirty, part of the bell's broke off.", ["broken"]],
    ["Thirty, hunk of pipe gone here and I'm looking at dirt.", ["hole"]],
    ["Thirty, see how the bottom is gone there, you can see rock.", ["hole"]],
    ["Thirty, the bottom is gone.", ["worn-surface"]],
    ["Thirty, there's a break in the pipe. There's a piece missing, you can see dirt.", ["broken"]],
    ["Thirty, somebody busted a hole in the top and stuck a pipe in it.", ["tie-in"]],
    ["Thirty, a four inch just shoved in the top.", ["tie-in"]],
    ["Thirty, it's chewed up, you can see gravel.", ["hole"]],
    ["Thirty, I see gravel in the bottom.", ["deposit"]],
    ["Thirty, the pipe is broken right on top, you can see the soil.", ["broken"]],
    ["4.2, 22 degree bend.", ["bend"]],
    ["Thirty, joint's cocked, half inch.", ["offset-joint"]],
    ["Thirty, couple of roots poking in at this joint.", ["roots"]],
    ["Thirty. Somebody hammered that one in, top right. See how rough the hole is?", ["tie-in"]],
    ["Thirty, somebody ran into our pipe with a piece of ABS, left side.", ["tie-in"]],
    ["Sometimes you'll see roots at a joint like that.", []],
    [
      "Couple of bad joints, one at 16 and one at 21, both pulled open.",
      ["open-joint", "open-joint"],
    ],
    ["Thirty, looks like somebody stuck a two inch in here on top.", ["tie-in"]],
    ["Thirty, tap on my left, no wye, just a hole they chopped.", ["tie-in"]],
    ["Thirty, wye. Forty. Somebody patched it here. Cement.", ["tie-in"]],
    ["Six point two, 45, and a second 45 right behind it at seven.", ["bend", "bend"]],
    ["Sixty, tap into the 8 inch main.", []],
  ])("%s", (text, expected) => {
    expect(kinds(text)).toEqual(expected);
  });

  test("a camera that could not go on was stopped, unless it went on", () => {
    expect(kinds("Thirty, I couldn't get the camera to go any farther.")).toEqual(["blockage"]);
    expect(
      kinds("Thirty, I couldn't get it to go any farther so I pushed hard. Crack at fifty."),
    ).toEqual(["crack"]);
    expect(kinds("Forty. Crack at forty-four. Couldn't get past 49.")).toEqual([
      "crack",
      "blockage",
    ]);
    expect(kinds("Fifty-one. I'm up against something. Won't go.")).toEqual(["blockage"]);
    expect(kinds("Fifty-one. Root mass. I'm stopped.")).toEqual(["roots", "blockage"]);
    expect(kinds("Crack at fifty. Sixty, that's the main, that's as far as I go.")).toEqual([
      "crack",
    ]);
  });
});

describe("what was asked and denied", () => {
  test.each([
    ["Thirty. Is that a crack? No, that's just the joint.", []],
    ["Thirty. Is that one cracked? Nah, that's just mud on it.", []],
    ["Thirty. Is that a crack? Yep.", ["crack"]],
    ["Thirty. Is that a tap? No, that's just a chip in the pipe.", ["broken"]],
    ["Thirty. Is that a crack? No, that's a root.", ["roots"]],
    ["Thirty. Is that a crack? No idea.", ["crack"]],
    ["0:10 thirty is that a crack no that's just a joint\n0:20 forty roots", ["roots"]],
  ])("%s", (text, expected) => {
    expect(kinds(text)).toEqual(expected);
  });
});

describe("where it is", () => {
  const log = (text: string) =>
    draftLog(text, { looks: "downstream", measuredFrom: null, mainCounter: null });

  test.each([
    "Hairline crack along the top, runs to twenty-eight.",
    "Crack on the crown, it goes on up to twenty-eight.",
    "Cracks, they run clear to twenty-eight.",
    "Cracks all the way to twenty-eight.",
  ])("begins at the reading before where only its end follows: %s", (text) => {
    expect(log(`Twenty-three three. ${text}`).drafts).toMatchObject([
      { fault: "crack", counter: 2330, toCounter: 2800 },
    ]);
  });

  test.each([
    "Zero at the cap. Cast iron out to seven feet then it's clay.",
    "Zero at the cap. It's cast iron for the first seven feet and from there on it's clay.",
    "Zero at the cap. First seven feet it's cast iron then it goes to clay.",
    "Zero at the cap. That's cast iron, right, cast iron to about seven. Then clay.",
  ])("a material begins where the one before ends: %s", (text) => {
    expect(log(text).drafts).toMatchObject([
      { kind: "material", material: "cast-iron", counter: 0 },
      { kind: "material", material: "vitrified-clay", counter: 700 },
    ]);
  });

  test.each(["Its branch is four inch PVC, main pipe's still clay.", "The lateral is PVC."])(
    "the pipe of a branch is no change of the line: %s",
    (text) => {
      expect(log(`Thirty, wye on the right. ${text} Forty, crack.`).drafts).toMatchObject([
        { kind: "tie-in" },
        { fault: "crack" },
      ]);
    },
  );

  test.each([
    "the number you see is from the city line",
    "everything I'm reading you is off the main",
    "I ran it clear down to the street tap and zeroed it there",
    "all my footages start at the city sewer",
  ])("told to count from the main: %s", (text) => {
    const { measuredFrom, drafts } = log(`Okay, ${text}. Wye on the left at ten. Roots at twenty.`);
    expect(measuredFrom).toBe("main");
    expect(drafts).toMatchObject([{ fromMain: 1000 }, { fromMain: 2000 }]);
  });

  test.each([
    "12 and 14 Larkspur. Went in at 14's outside cleanout, zero on the counter.",
    "Okay this is Gil at 7 and 9 Pembroke, my zero is the floor.",
    "Buildings 1 through 4 on one six-inch. Counter's reading zero.",
  ])("bare numbers of the opening are no places: %s", (text) => {
    const { readings, drafts } = log(`${text} Six feet, roots. Thirty, wye on the left.`);
    expect(readings.map(({ counter }) => counter)).toEqual([0, 600, 3000]);
    expect(drafts).toHaveLength(2);
  });

  test("small house numbers before the first find are no places, though nobody says zero", () => {
    const text =
      "Emergency on Fulton, 19 Fulton and 21 Fulton, we popped the cap at 21. Four feet, roots. Eleven six, wye, left.";
    expect(log(text).readings.map(({ counter }) => counter)).toEqual([400, 1160]);
  });

  test("behind a branch that has its footage a number is whose it is", () => {
    const text =
      "0:10 twenty eight foot y on the left side thirty three\n0:30 thirty eight foot roots";
    expect(log(text).readings.map(({ counter }) => counter)).toEqual([2800, 3800]);
  });

  test("a dash between two footages is from one to the other, with spaces as well", () => {
    expect(log('21.0 - 24.5 sag, 2" water').drafts).toMatchObject([
      { fault: "belly", counter: 2100, toCounter: 2450 },
    ]);
  });

  test("where the run ended is the main, and no end of what was seen", () => {
    const { mainCounter, drafts } = log("Crack at fifty. Ended at the main at 61.");
    expect(mainCounter).toBe(6100);
    expect(drafts).toMatchObject([{ counter: 5000, toCounter: null }]);
  });

  test("so far from the main is no footage at the main", () => {
    expect(
      log("Wye on the left. Twenty feet from the main. That's the main.").mainCounter,
    ).not.toBe(2000);
  });

  test("one distance from the main says nothing about the others", () => {
    const text = "Zero at the cleanout. Crack at ten. The card measures it thirty from the main.";
    expect(log(text).measuredFrom).toBe("access");
  });

  test.each([
    "That's where the permit puts it, thirty.",
    "Not where the drawing had it, drawing says thirty-nine.",
    "The card's got that at thirty-eight.",
  ])("what the record has of it goes with it: %s", (text) => {
    const { drafts } = log(`Thirty, wye on the left. ${text} Fifty, crack.`);
    expect(drafts.map(({ kind }) => kind)).toEqual(["tie-in", "fault"]);
    expect(drafts[0]?.aboutRecord).not.toBe("");
  });

  test.each([
    "Nothing recorded from 24 to 29.",
    "Screen went black, 24 to 29.",
    "Not recorded between 24 and 29.",
  ])("what was not seen is a gap, whatever was read before: %s", (text) => {
    const { gaps } = log(`0:10 21, cracked. ${text}\n0:40 50 main.`);
    expect(gaps).toMatchObject([{ fromCounter: 2400, toCounter: 2900 }]);
  });
});
