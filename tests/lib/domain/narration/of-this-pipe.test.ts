import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// Words of a finding that are told of the dig, of the gear, of what work does, or of the find before
// make no row; told of the pipe in the same words they do.

const HOLES_AND_PLUGS = `
  Watch that kid, I don't want him down in the hole.
  Eighteen, wye on the left.
  => tie-in 18

  How deep is that hole, I make it six foot.
  Eighteen, wye on the left.
  => tie-in 18

  My knees are killing me in this hole.
  Eighteen, wye on the left.
  => tie-in 18

  Eighteen, look at that hole, it's on the right side.
  => hole 18

  Eighteen, there's a hole in the bottom.
  Twenty, going on.
  => hole 18

  Zero is at the plug.
  Eighteen, wye on the left.
  => tie-in 18

  The plug was rusted in, took me a pipe wrench.
  Eighteen, wye on the left.
  => tie-in 18

  Eighteen, there's a plug of grease, can't get past it.
  => blockage 18

  Eighteen, roots, and the last fella only punched a hole through it.
  => roots 18

  Eighteen, roots. Whoever rodded it just bored a hole in em.
  => roots 18

  Eighteen, roots.
  Twenty-five, a hole in the side of it, size of a fist.
  => roots 18; hole 25

  Eighteen, broken piece on top.
  Thirty, all good.
  So I'd dig it up at that break.
  => broken 18

  Twenty-two, there's a hole on the left with a pipe behind it.
  It's a real wye, too.
  => tie-in 22

  Thirty, that's broke, the top's broke in pieces.
  => broken 30

  Thirty, it's broken in two right there.
  => broken 30

  Thirty, somebody broke in on the right with a hammer.
  => tie-in 30
`;

const WORK_AND_KIND = `
  Thirty-six, open joint.
  What's that do? Lets water out, lets roots in.
  => open-joint 36

  Thirty-six, open joint.
  That lets groundwater in and lets dirt in.
  => open-joint 36

  Thirty-six, crack on top, and it's letting roots in.
  => crack 36; roots 36

  Thirty-six, roots.
  They'll come fifty foot for water.
  => roots 36

  Thirty-six, roots.
  A tree goes after water, can't blame it.
  => roots 36

  Thirty-six, roots.
  No sir, we're not with the water. I think they're doing the water over on Main.
  => roots 36

  Thirty-six, open joint.
  Call the city about shutting the water.
  => open-joint 36

  Thirty-six, standing water, half the pipe.
  => water 36

  Thirty-six, a few roots.
  Is that from the oak? I couldn't tell an oak root from a willow root.
  => roots 36

  Thirty-six, fracture.
  I'd watch that and maybe think about a liner.
  => crack 36

  Thirty-six, fracture.
  They talked about lining, talk to them about a liner.
  => crack 36

  Thirty-six, and it goes to liner.
  => material 36

  Thirty-six, one root, fat as your thumb.
  => roots ?

  Thirty-six, fat on the floor, white, an inch of it.
  => deposit 36

  Thirty-six, wye on the right.
  Dropped my flashlight in the crawl space, hang on.
  => tie-in 36

  Thirty-six, a gas line straight through the pipe.
  Called the gas co.
  => crossing 36

  Forty, there's a co on top.
  => cleanout 40

  Thirty-six.
  Is that a crack? No, it's a shadow.
  => none
`;

const AGAIN = `
  Twenty, it turns. A forty-five, to the right.
  Thirty, fine.
  => bend 20

  Twenty, there's your bend. It's a twenty-two.
  => bend 20

  Twenty, a bend to the left.
  Twenty-six, another bend, to the right.
  => bend 20; bend 26

  Thirty-one, there's a line straight across through our pipe.
  That's a water service, somebody shot it through.
  => crossing 31

  Thirty-four. There's a sag starting, thirty-five. Call it thirty-five.
  It ends at thirty-nine. So a belly, thirty-five to thirty-nine.
  => belly ?
`;

describe.each([
  ["holes and plugs", HOLES_AND_PLUGS],
  ["work and kind", WORK_AND_KIND],
  ["told again", AGAIN],
])("%s", (_, walks) => {
  test.each(walksIn(walks).map((walk) => [walk.said.join(" / "), walk]))("%s", (_said, walk) => {
    expectRows(walk.rows[0] === "none" ? { ...walk, rows: [] } : walk);
  });
});
