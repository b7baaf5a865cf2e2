import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

describe("a branch is a row where it is seen, and none where it is named again or is another thing", () => {
  const walks = `
  Eighteen, crack at the top.
  That's the neighbor's maple, I bet.
  => crack 18

  Eighteen, crack at the top.
  Hey buddy, that's the neighbor's dog, get on.
  => crack 18

  Twenty, roots.
  There's your neighbor waving at us.
  => roots 20

  Twenty, roots, and that's the neighbor's tree doing that.
  => roots 20

  Twenty-two, and there's your neighbor, comes in on the left.
  => tie-in 22

  Twenty-two, that's the neighbor's, right there on the right.
  => tie-in 22

  Thirty-one, there's a gas service going across inside the pipe.
  => crossing 31

  Thirty-one feet, somebody ran a water line straight across the inside of our sewer.
  => crossing 31

  Thirty-one, fiber duct, in one side and out the other.
  => crossing 31

  Thirty-one, there's an electric service bored clean through it.
  => crossing 31

  Thirty-one feet, oh boy, yellow gas service through the top of the pipe.
  => crossing 31

  Thirty-one, a sprinkler line goes right across the middle of the pipe.
  => crossing 31

  Nine feet. It's good. Cable through here any time, one ninety-five.
  Twenty, roots.
  => roots 20

  Thirty-five, gas line right through the pipe.
  Fifty-five, good.
  I'm leaving the camera on the gas line till they come.
  => crossing 35

  Ten, saddle on the right side.
  That's hers, the salon. So that saddle's a bootleg.
  => tie-in 10

  Ten, saddle on the right side.
  Twenty, nothing.
  So her saddle was never permitted.
  => tie-in 10

  Ten, wye on the left.
  Thirty, fine.
  I'd still want to know whose that wye is.
  => tie-in 10

  Twenty-one, wye on the left.
  Forty, tee on the right. And that wye back there, that one's the garage.
  => tie-in 21; tie-in 40

  Thirty-five, now I'm in the old clay, they just shoved it in and mortared it.
  => material 35

  Thirty-five, it goes to clay, somebody just jammed it in there and hoped.
  => material 35

  Twelve, a tie-in up top, somebody broke that one in with a hammer.
  If I had to put a proper wye on it, eight fifty.
  => tie-in 12

  Twelve, tap on the right.
  To hang a new saddle on there is six hundred.
  => tie-in 12

  Twelve, bend, straight up. That's the stack.
  => bend 12

  Fifty, that's a bend, and that's the foot of the stack.
  => bend 50

  Thirteen, first opening, on the right, three o'clock. That's the stack for the upstairs units.
  => tie-in 13

  Sixteen, a cleanout. Like a second cleanout, coming up in the lawn.
  => cleanout 16

  Eight, there's a bend, where the cleanout comes down into the pipe.
  => bend 8

  Forty-six, a cleanout's going by overhead.
  => cleanout 46

  Sixty, roots.
  Okay, I'm out. Don't anybody touch this cleanout till they dig.
  => roots 60

  Sixteen, cut-in on the left.
  => tie-in 16

  Thirty, there's a takeoff on the right side.
  => tie-in 30

  Thirty, spur to the left, capped.
  => tie-in 30

  Thirty feet, reinstated opening at nine o'clock.
  => tie-in 30

  Thirty, there's a four inch lead off to the right.
  => tie-in 30

  Thirty, the line from the B stairwell joins on the left.
  => tie-in 30

  Fifty feet, the A stairwell comes in from the right.
  => tie-in 50

  Fifty, the back bathroom drops in on top.
  => tie-in 50

  Fifty, and this is unit ten now, on the left.
  => tie-in 50

  Fifty, that's 412, on the right.
  => tie-in 50

  Twenty-one, wye on the left.
  Thirty, roots.
  There's the left-hand wye again on the way back. Same one.
  => tie-in 21; roots 30

  Nine feet, tie-in on the right, a tee. I think the floor drains.
  => tie-in 9

  Sixteen feet, came out at a cleanout nobody knew about.
  => cleanout 16

  Thirty feet, it's got a gentle turn in it, off to the left.
  => bend 30

  Thirty feet, the line takes a sharp turn to the right.
  => bend 30

  Fourteen feet, somebody left a two-way cleanout here.
  => cleanout 14

  Fourteen feet, there's a double cleanout.
  => cleanout 14

  Eighteen feet, side inlet on the left, dry.
  => tie-in 18

  Eighteen feet, another pipe comes in at ten o'clock.
  => tie-in 18

  Eighteen feet, fitting on the right, a tee, nothing coming out of it.
  => tie-in 18

  Eighteen feet, double wye, one each side.
  => tie-in 18; tie-in 18

  Eighteen feet, there's an abandoned line on the left, mortared shut.
  => tie-in 18

  Eighteen feet, blind wye, capped, left side.
  => tie-in 18

  Eighteen feet, dead leg off to the right.
  => tie-in 18

  Eighteen feet, I got a hole cut in the side with a pipe stuck in it.
  => tie-in 18

  Eighteen feet, sewer from next door ties on here, right hand side.
  => tie-in 18

  Eighteen feet, this is where they hooked up the granny flat.
  => tie-in 18

  Eighteen feet, that'll be your basement bathroom coming in on the left.
  => tie-in 18

  Eighteen feet, wye on the left.
  Thirty feet, good pipe. I'd dye that wye to see whose it is.
  => tie-in 18

  Eighteen feet, wye on the left.
  Thirty feet, good pipe.
  The lady says the wye goes to her sewing room.
  => tie-in 18

  Eighteen feet, tap on top.
  And you see how the tap is cut in, that's a hole saw, that's a clean job.
  => tie-in 18

  Eighteen feet, roots in the joint.
  They have to tie into this line when they build the addition.
  => roots 18

  Eighteen feet, roots.
  The neighbor told me his line ties in farther up.
  => roots 18

  Eighteen feet, roots.
  I don't see any taps, no wyes, nothing tied in.
  => roots 18

  Eighteen feet, roots.
  We're looking for the tie-in to the duplex, haven't seen it.
  => roots 18

  Eighteen feet, roots.
  On the map there's supposed to be a connection right here, but there ain't one.
  => roots 18

  Eighteen feet, phone conduit punched right through the sewer.
  => crossing 18

  Eighteen feet, there's a pipe through our pipe, looks like a gas line, yellow.
  => crossing 18

  Eighteen feet, somebody drove a fence post through the line.
  => crossing 18

  Eighteen feet, a cable goes straight through, in the right side and out the left.
  => crossing 18

  Eighteen feet, roots. There's a gas line above us somewhere, so dig careful.
  => roots 18

  Eighteen feet, roots. I had the gas line marked, it's on the other side of the street.
  => roots 18

  Eighteen feet, here's a cleanout tee, straight up.
  => cleanout 18

  Eighteen feet, there's the second cleanout, I can see the cap.
  => cleanout 18

  Eighteen feet, cleanout riser on top, going up to grade.
  => cleanout 18

  Eighteen feet, roots. You'd want a cleanout put in out here.
  => roots 18

  Eighteen feet, roots. If you had a cleanout by the curb I could come at it from that side.
  => roots 18

  Eighteen feet, it doglegs left.
  => bend 18

  Eighteen feet, the pipe swings right.
  => bend 18

  Eighteen feet, a long sweep going left.
  => bend 18

  Eighteen feet, and it hooks to the left here.
  => bend 18

  Eighteen feet, roots. Now turn the camera a little to the left.
  => roots 18

  Eighteen feet, roots. Bend down and look at the screen.
  => roots 18

  Zero at the bottom, at the sweep.
  Nine feet, roots.
  => roots 9

  Thirty-five feet, gas line right through the pipe.
  Fifty-five feet, good.
  I'm leaving the camera on the gas line.
  => crossing 35
`;

  test.each(walksIn(walks))("$said", expectRows);
});
