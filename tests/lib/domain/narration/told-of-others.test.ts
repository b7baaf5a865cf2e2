import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// What is told of the ground, of another house, of a road, of the paper, or of what a find looks
// like is no row; and a pipe’s material is neither the soil nor what something is like.

const MATERIALS = `
  Twenty-six, into clay.
  Thirty, it's that clay swelling, we had no rain all summer.
  => material 26

  Twenty-six, into clay.
  Thirty, a drip at the joint, the ground's like iron in January.
  => material 26; infiltration 30

  Twenty-six, it goes to iron.
  It's got the cement lining. That's ductile iron.
  => material 26

  Twenty-six, it's plastic now, black. So that's ABS.
  => material 26

  Twenty-six, now that goes to concrete.
  And the city's got it down as clay.
  => material 26

  Twenty-six, it's PVC.
  The paper at the town says clay all the way.
  => material 26

  Twenty-six, a yellow plastic line right straight through the pipe, that's gas.
  => crossing 26

  Twenty-six, here's a liner.
  Forty, that's the end of the liner, back in clay.
  So they lined fourteen feet of it.
  => material 26; material 40
`;

const OTHERS = `
  Twenty-six, crack on top.
  The folks next door, theirs was rotted out clean to the street.
  => crack 26

  Twenty-six, crack on top.
  I did Jenkins's, his was worse, his had a hole you could see daylight in.
  => crack 26

  Twenty-six, crack on top.
  The other one from this morning, that was the one with the collapsed line.
  => crack 26

  Twenty-six, crack on top.
  Worst I ever saw was a phone cable and a belly to the moon.
  => crack 26

  Twenty-six, crack on top.
  Next customer's at 18 Ledge Road.
  => crack 26

  Twenty-six, there's a wye on the street side.
  => tie-in 26

  Twenty-six, this is the worst root ball I ever saw.
  => roots 26

  Twenty-six, crack on top. Forget that, it's a hair.
  => none

  Twenty-six, crack on top.
  The ground's full of water, it's been raining.
  => crack 26

  Twenty-six, crack on top.
  Camera's rolled, look where your water's at.
  => crack 26

  Twenty-six, crack on top.
  Yes ma'am, that's water, that's just the flow.
  => crack 26

  Twenty-six, crack on top.
  Thirty, fine.
  Thirty-five, fine.
  That shiny thing was just the light on a drip.
  => crack 26

  Twenty-six, roots in the joint. Fat ones.
  => roots 26

  Twenty-six, crack on top.
  Section three. Joint separation, none observed.
  => crack 26
`;

const BRANCHES = `
  Twenty-six, connection on the left. The wall's been broken out and the pipe pushed in.
  => tie-in 26

  Twenty-six, connection on the left. They just bashed a hole in and stuck it through.
  => tie-in 26

  Twenty-six, connection on the left. Mud all around it.
  => tie-in 26

  Twenty-six, mud in the bottom, all around.
  => deposit 26

  Twenty-six, the wall is broken out on the left.
  => broken 26
`;

describe.each([
  ["materials", MATERIALS],
  ["others", OTHERS],
  ["branches", BRANCHES],
])("%s", (_, walks) => {
  test.each(walksIn(walks).map((walk) => [walk.said.join(" / "), walk]))("%s", (_said, walk) => {
    expectRows(walk.rows[0] === "none" ? { ...walk, rows: [] } : walk);
  });
});

/** From the main back to the house. */
function pulledBack(...said: string[]): string[] {
  const lines = ["I'm at the main, eighty-eight feet.", ...said, "Zero, back at the cleanout."];
  const cues = lines.map((line, at) => {
    const clock = (second: number) =>
      `00:${String(Math.floor(second / 60)).padStart(2, "0")}:${String(second % 60).padStart(2, "0")}.000`;
    return `${clock(at * 50)} --> ${clock(at * 50 + 8)}\n${line}\n`;
  });
  const { drafts } = draftLog(`WEBVTT\n\n${cues.join("\n")}`, {
    looks: "downstream",
    measuredFrom: null,
    mainCounter: null,
  });
  return drafts.map(({ kind, fault }) => fault ?? kind);
}

test.each([
  ["The tap itself is clean, I don't see anything hanging."],
  ["You own it clear to the tap, ma'am."],
  ["The saddle's good, nice and tight."],
  ["Our connection looks alright."],
])("the connection at the main: %s", (said) => {
  expect(pulledBack(said, "Sixty, a crack on top.")).toEqual(["crack"]);
});

test("a branch beside the main", () => {
  expect(pulledBack("Eighty-five, there's a wye on the left.", "Sixty, a crack.")).toEqual([
    "tie-in",
    "crack",
  ]);
});

test("the connection at the main, told once the camera is there", () => {
  expectRows({
    said: ["Thirty, a crack.", "Ninety, that's the main.", "The tap's a nice clean tap."],
    rows: ["crack 30"],
  });
});
