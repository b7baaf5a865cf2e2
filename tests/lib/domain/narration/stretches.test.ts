import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// What goes on for some feet is one row, where it begins. That it goes on, where it ends and how long
// it was in all make no rows of their own; what comes after its end does.

const WET = `
  Fourteen, little bit of a dip.
  Hold on. It's got water in it.
  It's out at eighteen three.
  So belly, fourteen to eighteen three.
  => belly 14

  Lens is going under at forty-four, we've got water and it isn't moving.
  I think that's a belly.
  Still swimming.
  And we're up and out at fifty-two, so call that eight feet of low spot.
  => belly 44

  Twelve, we're dropping down into water here.
  Water's halfway up the lens.
  Fifteen, still in it.
  And we come up out of it at nineteen, so that's a belly there, twelve to nineteen.
  => belly 12

  Nineteen and a half and there's a belly starting.
  Still in it.
  And out, twenty-five. It was never more than an inch of water.
  => belly 19.5

  Thirty-two, water starts.
  Thirty-five, half the lens. This is a belly.
  Thirty-nine, back on dry pipe, that's the end of it.
  Thirty-two to thirty-nine.
  => belly 32

  Fifty-two, a dip. It's holding an inch or two.
  A short one.
  Still a bit of water.
  And done. That was only about five feet, so fifty-seven.
  => belly 52

  Thirty-four and there's water, I'm swimming. It's a low place.
  Thirty-five, thirty-six, thirty-seven.
  And I come up for air at thirty-eight, so that's a four foot belly.
  => belly 34

  Twenty-six, it sags from here.
  Water over half the lens at twenty-nine.
  Thirty-one eight, out of it.
  So low from twenty-six to thirty-one eight.
  => belly 26

  Forty, standing water.
  Forty-two, water.
  Forty-five and the water's done.
  So forty to forty-five, standing water.
  => water 40

  Twenty-two, sag. Camera's dunked.
  Twenty-six, dunked yet.
  Twenty-eight, high and dry.
  Six foot of sag, give or take.
  => belly 22

  Twenty feet, we're in a swag.
  Twenty-three, deepest right about here.
  Twenty-six, floor's bare again.
  That swag runs six feet.
  => belly 20

  Eighteen, dip in the line.
  Twenty-one, she's leveled back out.
  Thirty-three, another dip.
  Thirty-six, and that one's over with.
  => belly 18; belly 33

  Eighteen, belly, couple inches of water.
  Out of the water at twenty-three.
  Twenty-six and back in the water again.
  Thirty, out.
  => belly 18; water 26
`;

const LIES = `
  Nine eight, grease on both walls, and it keeps going.
  Fourteen's when it's clear again.
  So grease to fourteen.
  => deposit 9.8

  All scale, flaky, right from forty.
  Forty-three, scale. Forty-six, scale.
  Scale lets up at fifty-one.
  => deposit 40

  Fifty, and we got sand on the bottom.
  Fifty-five, sand. Fifty-eight, it's gone.
  Fifty to fifty-eight.
  => deposit 50

  Begin scale at forty-one.
  Forty-six. Scale continues.
  End scale, forty-nine point five.
  => deposit 41

  Thirty-seven, there's mud lying in the bottom.
  Forty-one, clear of it.
  => deposit 37

  Fifty-two seven, grease hanging on the sides.
  Fifty-six, grease is gone by like fifty-five.
  So fifty-two seven to fifty-five.
  => deposit 52.7

  Twenty-four, there's some grit along the floor.
  Twenty-seven, grit.
  Thirty, that's cleaned up.
  => deposit 24

  Thirty-one, grease cap on top of the pipe.
  Thirty-four, still greasy.
  Thirty-eight, grease thins out and that's all of it.
  About seven feet of grease altogether.
  => deposit 31

  Eighteen, gravel in the bottom.
  Twenty-one, end of the gravel.
  Forty-two, gravel again.
  => deposit 18; deposit 42

  Twenty, grease.
  Twenty-four, no more grease.
  Twenty-six, scale on the walls.
  => deposit 20; deposit 26
`;

const WALL = `
  Twelve and a half, the pipe's egg shaped.
  And it stays squashed and squashed.
  And right about here it's round again.
  => deformed 12.5

  Thirty-six, bottom of the pipe is worn.
  Still bad at forty.
  Still bad at forty-four, then it gets better.
  Call it thirty-six to forty-four.
  => worn-surface 36

  Eighteen feet, it's egg shaped.
  Twenty-two, it's still squashed.
  Twenty-six and it's round again.
  So eighteen to twenty-six, deformed.
  => deformed 18

  Forty-one, bottom of the pipe is all eaten up.
  Forty-three, still eaten up.
  Forty-five and now it's smooth again.
  So that's forty-one to forty-five that's worn.
  => worn-surface 41

  Twenty-seven, invert's worn.
  Thirty, still worn, thirty-two, and it's good again at thirty-three.
  So twenty-seven to thirty-three the floor of it is worn.
  => worn-surface 27

  Twenty-four, crack along the top.
  Crack's still with us, twenty-seven.
  Crack quits at thirty.
  => crack 24

  Thirty-one, crack on the left and it runs on ahead.
  Thirty-three, still cracked.
  Thirty-five, and that's where it heals up.
  Four feet of crack.
  => crack 31

  Nineteen, roots at the joint.
  Twenty-two, still got roots.
  Twenty-eight, last of the roots.
  => roots 19

  Twenty, roots.
  Thirty-four, roots.
  => roots 20; roots 34

  Twenty, cracked on top.
  Thirty-four, cracked on the bottom.
  => crack 20; crack 34
`;

describe("what goes on is one row, where it begins", () => {
  test.each(walksIn(WET))("standing in it: $said", expectRows);
  test.each(walksIn(LIES))("what lies there: $said", expectRows);
  test.each(walksIn(WALL))("the pipe itself: $said", expectRows);
});
