import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// Told beside the run: what is to be mended, what is on the lens, what lies behind a hole, the water
// that somebody runs, what others ask, what looks as it did, what lies ahead or would come of it. It
// makes no row of its own. And what is told with two footages is two.

const MENDED = `
  Twelve, wye.
  Forty, offset.
  You dig the offset out and you're done.
  => tie-in 12; offset-joint 40

  Twelve, wye.
  Forty, roots.
  The roots you could cut.
  => tie-in 12; roots 40

  Twelve, wye.
  Forty, belly.
  They're going to have to dig up that belly.
  => tie-in 12; belly 40

  Twelve, wye.
  Two guys tried to fix the break out at the street.
  => tie-in 12

  Twelve, wye.
  Cheapest way is patch that hole and leave it.
  => tie-in 12
`;

const ON_THE_LENS = `
  Twelve, wye.
  There's a chip of mortar on the lens.
  => tie-in 12

  Twelve, wye.
  I've got grease all over the lens.
  => tie-in 12

  Twelve, wye.
  Some mud stuck on the camera, hang on.
  => tie-in 12

  Twelve, wye.
  Roots on the head, let me shake it off.
  => tie-in 12
`;

const BEHIND = `
  Twelve, wye.
  Thirty, there's a hole on the side. You can see a rock.
  => tie-in 12; hole 30

  Twelve, wye.
  Thirty, it's broken, bottom's out. That's gravel there.
  => tie-in 12; broken 30

  Twelve, wye.
  Thirty, a hole in the top. See the dirt.
  => tie-in 12; hole 30
`;

const RUN = `
  Twelve, wye.
  Y'all got water running in 115?
  => tie-in 12

  Twelve, wye.
  Have her run some water. She's running water now, there it comes.
  => tie-in 12

  Twelve, wye. There it is, soap bubbles.
  => tie-in 12

  Twelve, wye.
  I can see daylight up the cleanout.
  => tie-in 12

  Twelve, wye.
  The water was up a little bit.
  => tie-in 12
`;

const ASKED = `
  Twelve, wye.
  He's asking is that a crack. No, that's just the joint.
  => tie-in 12

  Twelve, wye.
  Is that a break? Naw, it's a shadow.
  => tie-in 12

  Twelve, wye.
  She wants to know if that's a crack.
  => tie-in 12
`;

const SAME = `
  Twelve, wye.
  Thirty, roots.
  The roots looked the same as last time.
  => tie-in 12; roots 30

  Twelve, wye.
  Thirty, roots.
  Those roots are about the same as before.
  => tie-in 12; roots 30
`;

const AHEAD = `
  Coming up on a wye.
  Twelve, there's the wye.
  => tie-in 12

  Roots up ahead.
  Twelve, roots.
  => roots 12

  Twelve, wye.
  We're coming up to a crack.
  Thirty, here's that crack.
  => tie-in 12; crack 30
`;

const DEPENDS = `
  Twelve, open joint.
  Leave that alone and you've got a void under the yard.
  => open-joint 12

  Twelve, roots.
  If you leave those, in five years you've got a plug.
  => roots 12

  Twelve, open joint.
  Any joint is a place for a root to get in.
  => open-joint 12
`;

const KNOWN = `
  Fifteen, hole.
  Fifty, all clean from the hole on.
  => hole 15

  Twelve, roots.
  Other than the roots it's good pipe.
  => roots 12

  Twelve, belly.
  Besides that belly I'd leave it.
  => belly 12

  Twelve, roots.
  It's just fuzz, really.
  => roots 12
`;

const LISTED = `
  Roots at twenty-six and again at thirty-one.
  => roots 26; roots 31

  Crack at fifteen and also at twenty-two.
  => crack 15; crack 22

  Twelve, roots.
  That's somebody else's sewer coming in, there on the left.
  => roots 12; tie-in ?
`;

const ONE_THING = `
  Twelve, wye.
  Thirty, tap, it's got a little bit of roots in it, not in our pipe but up in the branch.
  => tie-in 12; tie-in 30

  Twelve, gas line right through the pipe. Little yellow plastic pipe.
  => crossing 12

  Twelve, grease on the walls.
  Thirty, wipes. It's a ball of wipes.
  => deposit 12; deposit 30

  Twelve, roots.
  Twenty, another one, on the right, that's gotta be 1636.
  => roots 12; tie-in 20

  Thirty, standing water, up to a third.
  => water 30

  Thirty feet, standing water.
  Moving on.
  => water 30

  Twelve, it goes to PVC. No coupling, no nothing, you see the gap.
  => open-joint 12; material 12
`;

const OTHER_TALK = `
  Twelve, wye.
  You got any of them chipped ham sandwiches left?
  => tie-in 12

  Twelve, wye.
  Y'all see any roots over there?
  => tie-in 12

  Twelve, wye.
  Miss, can you not, don't flush right now please.
  => tie-in 12

  Twelve, wye.
  The number's on the paper, Sal's got the paper.
  => tie-in 12

  Twelve, wye.
  He's upstairs runnin water when I holler.
  => tie-in 12

  Twelve, roots.
  Twenty, another one comin in from the right.
  => roots 12; tie-in 20

  Twelve, wye.
  Twenty, water drippin in at the joint.
  => tie-in 12; infiltration 20

  Twelve, wye.
  Homeowner asked me is it orangeburg.
  => tie-in 12

  Twelve, wye.
  Twenty, cottage four comes in on the right.
  => tie-in 12; tie-in 20
`;

const SAME_BRANCH = `
  Twelve, wye on the right.
  Looks dead, nothing but dirt in there.
  => tie-in 12

  Twelve, connection on the right at three o'clock, a saddle on top of the clay.
  => tie-in 12

  Twelve, roots up to sixteen.
  Can you get through? Yeah, it's just fuzz.
  Thirty, wye.
  => roots 12; tie-in 30

  Twelve, tap on the left, another tap on top.
  => tie-in 12; tie-in 12
`;

describe.each([
  ["what is to be mended", MENDED],
  ["what is on the lens", ON_THE_LENS],
  ["the ground behind a hole", BEHIND],
  ["water that is run, and what comes of it", RUN],
  ["what others ask", ASKED],
  ["what looks the same", SAME],
  ["what is seen ahead and read off then", AHEAD],
  ["what would come of it", DEPENDS],
  ["what is known and named for the rest", KNOWN],
  ["one thing in two words, and two in one breath", ONE_THING],
  ["other talk, and words cut short", OTHER_TALK],
  ["what fills a branch, and where it sits", SAME_BRANCH],
  ["told with two footages, or as somebody else’s", LISTED],
])("%s", (_, walks) => {
  test.each(walksIn(walks))("$said", expectRows);
});
