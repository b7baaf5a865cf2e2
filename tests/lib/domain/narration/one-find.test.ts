import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// While the camera stands, one find is turned over in words: the worse word, or the one the speaker
// settles on, is the row. What only happens to be at the same place stays a row of its own.

const WORSE = `
  Forty-one, the pipe's fractured.
  Pieces out of it, so that's broken.
  => broken 41

  Twenty-six, it's cracked all over.
  No, it's worse than that, there's a hole.
  => hole 26

  Thirty-one, bottom's all rotted out.
  That's a hole right through, is what that is.
  => hole 31

  Forty-six, the pipe's busted up.
  It's caved in, is what it is.
  => collapsed 46

  Fifty-one, that's squashed.
  No, that's collapsed.
  => collapsed 51

  Forty-seven, it's broken and there's a hole in it.
  Yeah, that hole goes right out into the dirt.
  => hole 47

  Seventeen, bottom's rusted clean through.
  It's a hole, it goes right out the bottom.
  => hole 17

  Eighteen and a half, spiderweb all over the pipe.
  I'd call that one broken, pieces have moved.
  => broken 18.5

  Thirty-four, cracked or broken?
  Broken, I'd say. Yeah, that's broken.
  => broken 34

  Sixty-six, bottom's eaten away.
  Actually that's all the way through, it's a hole.
  => hole 66

  Forty-four, it's all plugged up.
  Wipes. Big wad of wipes.
  => blockage 44

  Forty-four, grease.
  It's a plug, it's plugged solid.
  => blockage 44

  Fifty-two three, this is bad. Pipe's shattered.
  I mean there's nothing left on top, it's wide open, it's a hole.
  => hole 52.3

  Fifty-two, see that? It's cracked clean around.
  Matter of fact it's busted, there's a piece laying over.
  => broken 52

  Thirty-eight, we got a break.
  What kind of break? A hole?
  Yeah a hole, fist size.
  => hole 38

  Twenty-seven, water.
  Head's going under, so it's a belly.
  And out at thirty-two.
  => belly 27

  Fifty and a half, pipe's in water.
  It dips down, yeah, it's a sag.
  => belly 50.5

  Thirty-three, standing water.
  That's a low spot is what that is.
  => belly 33

  Forty, hole in the crown.
  I'm looking up at mud through it.
  => hole 40

  Forty-one, collapsed.
  Mud and pieces all over the floor.
  => collapsed 41
`;

const SETTLED = `
  Nineteen, there's a chip.
  No, it's a tap, there's a pipe going up.
  => tie-in 19

  Nineteen, there's a tap.
  Actually no, it's just a chip.
  => broken 19

  Thirty-eight, I see roots.
  No, sorry, that's grease.
  => deposit 38

  Forty-two, crack along the bottom.
  Or no, it's scale, just a line of scale.
  => deposit 42

  Thirty-three, I'm in water.
  Is that a sag, or just backed up?
  Backed up. Standing water.
  => water 33

  Thirty-three, water laying in it.
  Doesn't look like it dips, looks like it's held up from below.
  => water 33

  Twenty-five, there's an offset.
  I take it back, that's a belly.
  => belly 25

  Fifty-eight, there's a root.
  Nope, that's a crack.
  => crack 58
`;

const WITHDRAWN = `
  Forty-nine eight, another tap up top. Could be just a chip though.
  Go back. Yeah, that's a tap, I see the pipe going up.
  => tie-in 49.8

  Thirty-three, roots. Or it might be grease hanging down.
  Yeah, those are roots.
  => roots 33

  Fifty-five, offset. Maybe it's just an open joint.
  Look at it from here, it's an offset.
  => offset-joint 55
`;

const NOTHING = `
  Twenty-four, there's a crack. No it's not, it's just a stain.
  Forty, roots.
  => roots 40

  Twenty-four, crack. Wait, no, that's a shadow.
  Forty, roots.
  => roots 40

  Twenty-four, there's a crack. No, it's not. It's a spider.
  Forty, roots.
  => roots 40

  Thirty-one, I got roots. Nope, that's a cobweb.
  Forty, crack on top.
  => crack 40

  Thirty-one, hole on the side. Never mind, that's just the light.
  Forty, crack on top.
  => crack 40

  Thirty-one, crack on top. No, that's not bad, that's a hairline.
  => crack 31

  Thirty-one, an offset. No it's not a big one.
  => offset-joint 31
`;

const BRANCH = `
  Nineteen, there's a hole in the side of it.
  Oh, it's a wye. Capped wye.
  => tie-in 19

  Sixteen, there's a round hole on the left.
  That's a branch, somebody cut it in.
  => tie-in 16

  Sixteen, there's a hole cut for a branch, nine o'clock.
  => tie-in 16

  Twenty-two, tap at two o'clock.
  Just a black hole with a pipe behind it. Water dripping out of it.
  => tie-in 22

  Sixty-two, saddle on the right.
  It's dripping.
  => tie-in 62

  Twenty-nine, a saddle.
  It's got a little lip on it, that's fine.
  => tie-in 29

  Twenty-eight, there's a hole up top. Daylight.
  That's a cleanout.
  => cleanout 28

  Eight feet is a long sweep. There's a stack going up.
  => bend 8

  Thirteen, tee on top, and a cleanout riser standing on it.
  => tie-in 13
`;

const THROUGH = `
  Twenty-three, the joint's pulled apart.
  You can see dirt through it.
  => open-joint 23

  Thirty-seven, hole in the bottom.
  You're losing water there.
  => hole 37

  Thirty-five, it's dripping in at the joint.
  That's water from the ground.
  => infiltration 35

  Sixty-one, the joint leaks.
  Infiltration, a steady drip at the joint.
  => infiltration 61

  Thirty-nine, it's broken.
  Soil showing behind it.
  => broken 39
`;

const TWO = `
  Thirty, joint's offset a half inch. It's cracked too at the bell.
  => offset-joint 30; crack ?

  Thirty, hole in the bottom. Roots growing up through it.
  => hole 30; roots ?

  Thirty, broken bell, and the next length is offset.
  => broken 30; offset-joint ?

  Thirty, tap on the left and the pipe's cracked below it.
  => tie-in 30; crack ?

  Thirty, roots. Thirty and a half, roots and the joint's open.
  => roots 30; open-joint 30.5

  Twenty, tap on the left.
  Roots coming out of it.
  => tie-in 20; roots ?

  Twenty, offset joint.
  Roots coming through it.
  => offset-joint 20; roots ?

  Thirty, belly.
  And there's a crack in the bottom of it.
  => belly 30; crack ?

  Thirty, hole in the top.
  Crack running off of it.
  => hole 30; crack ?

  Thirty, broken pipe on the left.
  There's a hole next to it.
  => broken 30; hole ?

  Thirty, tap on the right.
  Pipe's broken around it.
  => tie-in 30; broken ?

  Twelve, hole on the right side.
  Tap on the left side.
  => hole 12; tie-in ?

  Twelve, joint's open an inch, and it's weeping in.
  => open-joint 12; infiltration 12

  Fifteen, cracked.
  Seventeen, there's a hole.
  => crack 15; hole 17

  Forty, crack on top.
  A foot past that there's a hole.
  => crack 40; hole 41

  Twenty, tap on the right.
  There's a hole in the pipe there too, you can see the rocks.
  => tie-in 20; hole ?

  Fifty, grease on the walls.
  And a crack along the top.
  => deposit 50; crack ?

  Fifty, roots.
  No, there's two things here, roots and a crack.
  => roots 50; crack ?

  Twenty, tap on the right. No cap on it.
  Forty-one, broken pipe.
  => tie-in 20; broken 41
`;

describe("the worse of two words for one find", () => {
  test.each(walksIn(WORSE))("$said", expectRows);
});

describe("the word that the speaker settles on", () => {
  test.each(walksIn(SETTLED))("$said", expectRows);
});

describe("what it perhaps was, before the first word was said again", () => {
  test.each(walksIn(WITHDRAWN))("$said", expectRows);
});

describe("what was no find at all", () => {
  test.each(walksIn(NOTHING))("$said", expectRows);
});

describe("what a branch, a cleanout or a bend looked like at first", () => {
  test.each(walksIn(BRANCH))("$said", expectRows);
});

describe("what only shows how bad a find is", () => {
  test.each(walksIn(THROUGH))("$said", expectRows);
});

describe("two finds at one place", () => {
  test.each(walksIn(TWO))("$said", expectRows);
});
