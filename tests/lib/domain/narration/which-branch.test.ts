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
`;

  test.each(walksIn(walks))("$said", expectRows);
});
