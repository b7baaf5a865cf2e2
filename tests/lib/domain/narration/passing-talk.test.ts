import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// What is carried by, stands elsewhere, or is what the find just told is made of is no deposit and
// no water of its own. What lies in the pipe here, with some amount or bed, is.

const CARRIED = `
  Eighteen, wye on the left.
  Some toilet paper going by.
  => tie-in 18

  Eighteen, wye on the left.
  There's a little tissue hanging on the side.
  => tie-in 18

  Eighteen, wye on the left.
  A piece of paper stuck up there, that'll wash off.
  => tie-in 18

  Eighteen, wye on the left.
  I see soap coming down.
  => tie-in 18

  Twenty-two, offset joint.
  That's just somebody's wipes floating past.
  => offset-joint 22

  Twenty-two, offset joint.
  Suds, they're doing laundry.
  => offset-joint 22

  Twenty-two, offset joint.
  There goes the toilet paper.
  => offset-joint 22

  Fifteen, crack on top.
  Twenty, a bit of paper on the wall, nothing to it.
  => crack 15

  Fifteen, crack on top.
  Twenty, a wipe waving at us, that's all.
  => crack 15

  Fifteen, crack on top.
  Twenty, little bit of crud, it's alright.
  => crack 15
`;

const ELSEWHERE = `
  Eighteen, wye on the left.
  I got mud all over my gloves.
  => tie-in 18

  Eighteen, wye on the left.
  There's mud on the screen, let me wipe that.
  => tie-in 18

  Eighteen, wye on the left.
  They've got water in the basement again.
  => tie-in 18

  Eighteen, wye on the left.
  Basement's got an inch of water in it.
  => tie-in 18

  Eighteen, wye on the left.
  There's sand in the driveway from the pavers.
  => tie-in 18

  Eighteen, wye on the left.
  Manhole's got water in it.
  => tie-in 18

  Eighteen, wye on the left.
  Dirt all over her porch, I'll sweep that up.
  => tie-in 18

  Eighteen, wye on the left.
  There's gravel in the trench out there.
  => tie-in 18

  Eighteen, wye on the left.
  I need hot water to wash up.
  => tie-in 18

  Eighteen, wye on the left.
  Twenty-two goes under the sidewalk here.
  => tie-in 18
`;

const MOVES = `
  Twelve, crack on the right.
  Little water on the bottom, but it's moving.
  => crack 12

  Twelve, crack on the right.
  The water's running by nice.
  => crack 12

  Twelve, crack on the right.
  Water's trickling along the bottom.
  => crack 12

  Twelve, crack on the right.
  That's just water flowing past.
  => crack 12

  Twelve, crack on the right.
  There's some water coming down, somebody used the sink.
  => crack 12

  Twelve, hole in the bottom.
  So you're losing water there.
  => hole 12

  Twelve, roots at the joint.
  You can see them moving in the water.
  => roots 12

  Twelve, infiltration on the right.
  That's water from the ground.
  => infiltration 12

  Twelve, wye on the left.
  Water's dripping out of it.
  => tie-in 12

  Twelve, tap on the right.
  There's water dribbling out of there.
  => tie-in 12
`;

const MADE_OF = `
  Forty, the top's collapsed here.
  It's all mud back in there.
  => collapsed 40

  Thirty-one, hole on top.
  I'm looking up at mud.
  => hole 31

  Thirty-one, broken pipe on the left.
  You can see the dirt back there.
  => broken 31

  Thirty-one, open joint.
  I can see gravel through it.
  => open-joint 31

  Twenty, wye on the left.
  It's got mud on it.
  => tie-in 20
`;

const LIES = `
  Twelve, wye.
  Wipes all packed in at twenty-five, half the pipe.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five feet, big wad of paper on the bottom.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five feet, lot of paper laying in here.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five, mud on the bottom.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five, a little grease on the wall.
  => tie-in 12; deposit 25

  Twelve, wye.
  There's sand on the bottom here at twenty-five.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five, soap built up on the sides.
  => tie-in 12; deposit 25

  Twelve, wye.
  Twenty-five, water's standing here, about two inches.
  => tie-in 12; water 25

  Twelve, wye.
  Twenty-five, we've got water in the pipe and it isn't moving.
  => tie-in 12; water 25

  Twelve, wye.
  Twenty-five, camera goes under the water here.
  => tie-in 12; water 25

  Twelve, wye.
  Twenty-five, rags in here.
  => tie-in 12; deposit 25
`;

describe("what is carried by", () => {
  test.each(walksIn(CARRIED))("$said", expectRows);
});

describe("what stands or lies elsewhere", () => {
  test.each(walksIn(ELSEWHERE))("$said", expectRows);
});

describe("water that does not stand", () => {
  test.each(walksIn(MOVES))("$said", expectRows);
});

describe("what the find just told is made of", () => {
  test.each(walksIn(MADE_OF))("$said", expectRows);
});

describe("what lies in the pipe", () => {
  test.each(walksIn(LIES))("$said", expectRows);
});
