import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// What is told of other pipes, of pipes in general, of other things than pipes, of what was told
// before, or taken back by who told it, is no find; what stands beside it is.

const OTHER_PIPES = `
  Twelve, crack.
  We did a line out on Cedar last week.
  That had a collapse right in the middle.
  => crack 12

  Twelve, crack.
  Last week I lost a head on Mill Street.
  It was a root ball that did it.
  => crack 12

  Twelve, crack.
  The other house was worse, that one had a belly you could swim in.
  => crack 12

  Twelve, crack.
  Yesterday's was bad.
  That was broken clear around at forty feet.
  => crack 12

  Twelve, crack.
  I did one over by the mill, and it was so rotten you could put your thumb through it.
  => crack 12

  Twelve, crack.
  Told her it was collapsed and never even looked.
  => crack 12

  Twelve, crack.
  Mine was full of roots when I bought it.
  => crack 12

  Twelve, crack.
  Had a belly out on Orchard last month just like this.
  => crack 12

  Twelve, crack.
  That one had the collapse, this one's way better.
  => crack 12

  Twelve, crack.
  My own house, they found an offset and a belly.
  => crack 12
`;

const IN_GENERAL = `
  Twelve, wye.
  Liners don't fix a sag.
  => tie-in 12

  Twelve, wye.
  Roots don't care whose yard it is.
  => tie-in 12

  Twelve, wye.
  A belly never fixes itself.
  => tie-in 12

  Twelve, wye.
  You can't line a belly.
  => tie-in 12

  Twelve, wye.
  There's two kinds of sewers, the ones with roots and the ones with roots next year.
  => tie-in 12

  Twelve, wye.
  A crack won't back you up.
  => tie-in 12

  Twelve, wye.
  The thing about a belly is you can't clean it away.
  => tie-in 12

  Twelve, wye.
  Then a robot goes in and cuts the holes back open.
  => tie-in 12

  Twelve, wye.
  We only do roots on Fridays.
  => tie-in 12

  Twelve, wye.
  Don't anybody touch this cleanout till they dig.
  => tie-in 12

  Twelve, wye.
  Offset to be repaired within thirty days.
  => tie-in 12
`;

const LEFT_OUT = `
  Twelve, wye.
  There's a little lip there, I don't write those up.
  => tie-in 12

  Twelve, wye.
  Coupling's slipped a hair, not enough to count.
  => tie-in 12

  Twelve, wye.
  It looked like a crack, and it isn't.
  => tie-in 12

  Twelve, wye.
  There's a crack. No it's not, it's a spider thing.
  => tie-in 12

  Twelve, wye.
  Small flat spot, I'm not logging that.
  => tie-in 12

  Twelve, wye.
  There's a blister, but it's just a blister, skip it.
  => tie-in 12

  Twelve, wye.
  Is there a little offset? Leave it out.
  => tie-in 12

  Twelve, wye.
  There's water already, hang on, no, that's just slush off the cap.
  => tie-in 12

  Twelve, wye.
  Looks like grease. No, it's glue.
  => tie-in 12

  Twelve, wye.
  Slight dip, I wouldn't call that a belly.
  => tie-in 12

  Twelve, wye.
  Looks like a hole. Nope, it's not.
  => tie-in 12

  Twelve, wye.
  There's an offset. A quarter inch. That's the wall thickness. Don't call it an offset.
  => tie-in 12
`;

const TOLD_BEFORE = `
  Twelve, belly.
  Thirty, roots.
  So the belly no, the roots yes.
  => belly 12; roots 30

  Twelve, belly.
  Thirty, roots.
  Sixty, good.
  I told her the roots are the worst of it.
  => belly 12; roots 30

  Twelve, wye on the left.
  Thirty, crack.
  Sixty, good.
  The crack I'd leave alone.
  => tie-in 12; crack 30

  Twelve, wye on the left.
  Thirty, hole in the bottom.
  Sixty, good.
  The hole's the one to fix.
  => tie-in 12; hole 30

  Twelve, wye on the left.
  Thirty, gas line through the pipe.
  Sixty, good.
  I'm leaving the camera at the gas line till they come.
  => tie-in 12; crossing 30
`;

const OTHER_THINGS = `
  Twelve, wye.
  I've got the window cracked for the cable.
  => tie-in 12

  Twelve, wye.
  She's red as a brick.
  => tie-in 12

  Twelve, wye.
  That's just a drip of glue.
  => tie-in 12

  Twelve, wye.
  It was a wrench somebody dropped.
  => tie-in 12

  Twelve, wye.
  My phone's cracked, I can't read that.
  => tie-in 12

  Twelve, wye.
  The handle broke on the reel.
  => tie-in 12

  Twelve, wye.
  That's the neighbor's dog.
  => tie-in 12

  Twelve, wye.
  My tooth is cracked, I go Thursday.
  => tie-in 12

  Twelve, wye.
  Guy dropped his coffee.
  => tie-in 12

  Twelve, wye.
  The truck's got a leak.
  => tie-in 12
`;

const SEEN = `
  We did one on Cedar last week.
  Twelve, crack on the top here.
  => crack 12

  Twelve, wye.
  That joint there's cracked, I've seen a hundred like it.
  => tie-in 12; crack ?

  Twelve, wye.
  Roots don't quit, here's more roots at thirty.
  => tie-in 12; roots 30

  Twelve, wye.
  Thirty feet, little offset, I'd keep an eye on it.
  => tie-in 12; offset-joint 30

  Twelve, wye.
  Thirty, crack, it's not bad.
  => tie-in 12; crack 30

  Twelve, wye.
  Thirty, that joint dropped on us.
  => tie-in 12; offset-joint 30

  Twelve, wye.
  Thirty, the clay's cracked on the left.
  => tie-in 12; crack 30

  Twelve, roots.
  Thirty, the roots are back, right side.
  => roots 12; roots 30

  Twelve, wye.
  Thirty, that's the neighbor coming in on the right.
  => tie-in 12; tie-in 30

  Twelve, wye.
  Thirty, this joint was dropped when they laid it.
  => tie-in 12; offset-joint 30
`;

describe("other pipes", () => {
  test.each(walksIn(OTHER_PIPES))("$said", expectRows);
});

describe("pipes in general", () => {
  test.each(walksIn(IN_GENERAL))("$said", expectRows);
});

describe("what the speaker leaves out", () => {
  test.each(walksIn(LEFT_OUT))("$said", expectRows);
});

describe("what was told before", () => {
  test.each(walksIn(TOLD_BEFORE))("$said", expectRows);
});

describe("other things than pipes", () => {
  test.each(walksIn(OTHER_THINGS))("$said", expectRows);
});

describe("what is seen", () => {
  test.each(walksIn(SEEN))("$said", expectRows);
});
