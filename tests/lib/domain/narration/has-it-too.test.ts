import { describe, test } from "vitest";
import { expectRows, walksIn } from "../../../support/walk.ts";

// What was found, once more at the next joint, with no name; what a question goes on to tell; what
// comes off in layers; what is written down as a maybe; how far something was seen to go.

const WALKS = walksIn(`
  Thirty-one, roots, fine ones like hair.
  And the very next joint's got them too, that'd be about thirty-four.
  => roots 31; roots 34

  Thirty-one, there's an offset.
  Next joint has the same thing, thirty-four.
  => offset-joint 31; offset-joint 34

  Thirty-one, crack on top.
  The next length has it too, thirty-six.
  => crack 31; crack 36

  Thirty-one, roots at the joint.
  Next joint is clean, thirty-four.
  => roots 31

  Did you feel that bump, that was a lip right there at thirty.
  => offset-joint 30

  Did you see any roots back there?
  No.
  => remark ?

  Twenty-five, the surface is coming off in layers.
  => worn-surface 25

  Twenty-five, the inside's peeling off, it's delaminated.
  => worn-surface 25

  Fifty-eight feet. Might be a hairline crack there on the left. Or it's on my lens, I can't swear to it.
  I'll put it down as a maybe.
  => crack 58

  Fifty-eight, is that a crack? No, it's on my lens.
  => remark ?

  Fifty, crack in the top, starts at fifty and I see it to about fifty-three.
  => crack 50

  Fifty, crack in the top, and I followed it up to fifty-three.
  => crack 50
`);

describe("told without its name, or more softly", () => {
  test.each(WALKS.filter(({ rows }) => rows[0] !== "remark ?"))("$said", expectRows);
  test.each(WALKS.filter(({ rows }) => rows[0] === "remark ?"))("nothing: $said", ({ said }) =>
    expectRows({ said, rows: [] }),
  );
});
