import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// What is told and not seen: what comes of it, what would, could or should be, what is denied or
// taken back. And what is seen, though the same sentence says what always is.

const COMES_OF_IT = `
  Eighteen, offset joint.
  That's what's catching all your paper.
  => offset-joint 18

  Eighteen, offset joint.
  Paper hangs up on it and then it backs up.
  => offset-joint 18

  Eighteen, offset joint.
  The wipes get stuck on that edge.
  => offset-joint 18

  Twenty, crack.
  That's how the roots are getting in.
  => crack 20

  Twenty, open joint.
  That's where the roots come through.
  => open-joint 20

  Twenty, open joint.
  Roots love a joint like that.
  => open-joint 20

  Thirty, belly.
  Anything heavy settles in there, grease, sludge, you name it.
  => belly 30

  Thirty, belly.
  So every time she runs the washer it fills up with water.
  => belly 30

  Thirty, belly.
  Low spot like that will hold water all day.
  => belly 30

  Thirty-two, crack.
  Give it a few years and it'll be a hole.
  => crack 32

  Thirty-two, crack.
  If that crack opens up you'll have roots in there by summer.
  => crack 32

  Thirty-two, crack.
  Eventually that turns into a break.
  => crack 32

  Forty, roots.
  That's why you've been having the backups, the stoppage was right here.
  => roots 40

  Forty, roots.
  That's from the tree up there in the front, the roots follow the water.
  => roots 40

  Forty, roots.
  Next thing you know they've got it blocked solid.
  => roots 40

  Forty, roots.
  They'll bust that joint wide open.
  => roots 40

  Twenty-one, tap.
  Whoever tied that in didn't use a saddle.
  => tie-in 21

  Twenty-one, tap.
  They should've used a wye there.
  => tie-in 21

  Twenty-one, tap, just a hole in the pipe.
  You're supposed to put a saddle on it.
  => tie-in 21
`;

const COULD_BE = `
  Fourteen, wye.
  Next one should be up around forty.
  => tie-in 14

  Fourteen, wye.
  I'd expect to see the neighbor's tap any time now.
  => tie-in 14

  Fourteen, wye.
  We might run into roots up here by the tree.
  => tie-in 14

  Fourteen, wye.
  Watch for a belly after this.
  => tie-in 14

  Fourteen, wye.
  Hopefully it isn't collapsed out there by the street.
  => tie-in 14

  Fourteen, wye.
  Keep your eyes open for another tap.
  => tie-in 14

  Fourteen, wye.
  We'll have to dig that up and put in a new wye and a cleanout.
  => tie-in 14

  Fourteen, wye.
  You'd want a liner all the way through here.
  => tie-in 14

  Fourteen, wye.
  A spot repair would take care of that crack if there is one.
  => tie-in 14

  Fourteen, wye.
  They'll need to jet it to get the grease out.
  => tie-in 14

  Fourteen, wye.
  If we hit a blockage I'm pulling out.
  => tie-in 14
`;

const IS_NOT = `
  Ten, wye.
  Haven't seen a crack yet.
  => tie-in 10

  Ten, wye.
  Zero roots so far.
  => tie-in 10

  Ten, wye.
  Ain't a root in it.
  => tie-in 10

  Ten, wye.
  I don't think that's a crack, it's just a scratch.
  => tie-in 10

  Ten, wye.
  That looked like a hole but it's a shadow.
  => tie-in 10

  Ten, wye.
  At first I figured that was a crack. It's a stain.
  => tie-in 10

  Ten, wye.
  That's not roots, that's just a piece of string.
  => tie-in 10

  Ten, wye.
  Joints look tight, no separation, nothing's dropped.
  => tie-in 10

  Ten, wye.
  Good fall, doesn't hold any water.
  => tie-in 10

  Ten, wye.
  I'm not calling that an offset.
  => tie-in 10

  Ten, wye.
  Wouldn't say it's a belly, just slow.
  => tie-in 10

  Ten, wye.
  There isn't any kind of a sag in here.
  => tie-in 10

  Ten, wye.
  Don't let that shadow fool you, that's no crack.
  => tie-in 10

  Ten, wye.
  Free of roots, free of grease.
  => tie-in 10

  Ten, wye.
  It's too clean to have any roots.
  => tie-in 10

  Twelve, wye.
  Is that a crack? Nah.
  => tie-in 12

  Twelve, wye.
  Thought that was an offset, it's the light.
  => tie-in 12

  Twelve, wye.
  That dark spot there's not a hole.
  => tie-in 12

  Twelve, wye.
  I was gonna say crack but I think it's just a stain.
  => tie-in 12

  Twelve, wye.
  Looks like a hole, but no, that's the reflection.
  => tie-in 12

  Twelve, wye.
  You could mistake that for a crack, it's a seam.
  => tie-in 12

  Twelve, wye.
  Don't see a crack there, do you?
  => tie-in 12
`;

const SEEN = `
  Twelve, wye.
  Slight offset joint here, you can always tell by the shadow.
  Thirty, wye.
  => tie-in 12; offset-joint ?; tie-in 30

  Twelve, wye.
  Crack here, usually means the ground moved.
  Thirty, wye.
  => tie-in 12; crack ?; tie-in 30

  Twelve, wye.
  Little bit of roots, always is in clay.
  Thirty, wye.
  => tie-in 12; roots ?; tie-in 30

  Twelve, wye.
  Got some grease in here, that's what happens with a restaurant.
  Thirty, wye.
  => tie-in 12; deposit ?; tie-in 30

  Twelve, wye.
  Roots coming in on the right, that means there's a tree over there.
  Thirty, wye.
  => tie-in 12; roots ?; tie-in 30

  Twelve, wye.
  Joint's dropped a little bit here, typical of this old clay.
  Thirty, wye.
  => tie-in 12; offset-joint ?; tie-in 30

  Twelve, wye.
  Broken piece there on the side, if you look at the right wall.
  Thirty, wye.
  => tie-in 12; broken ?; tie-in 30

  Twelve, wye.
  Small belly in here, if you watch the water line.
  Thirty, wye.
  => tie-in 12; belly ?; tie-in 30

  Twelve, wye.
  This joint's separated, you never want to see that.
  Thirty, wye.
  => tie-in 12; open-joint ?; tie-in 30

  Twelve, wye.
  Some scale on the bottom, cast iron always does that.
  Thirty, wye.
  => tie-in 12; deposit ?; tie-in 30
`;

describe("what comes of it, and why", () => {
  test.each(walksIn(COMES_OF_IT))("$said", expectRows);
});

describe("what would, could or should be", () => {
  test.each(walksIn(COULD_BE))("$said", expectRows);
});

describe("what is not there", () => {
  test.each(walksIn(IS_NOT))("$said", expectRows);
});

describe("what is seen, with a general remark beside it", () => {
  test.each(walksIn(SEEN))("$said", expectRows);
});
