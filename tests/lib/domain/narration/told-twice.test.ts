import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

// One thing told twice is one row: while the camera looks at it no other footage is read off. What is
// told as another, on the other side or farther on is a row of its own.

const ONE = `
  Twenty-two, roots at the joint.
  Yeah, pretty heavy roots there.
  => roots 22

  Twenty-two feet, we've got an offset.
  It's about a half inch offset, maybe three quarters.
  => offset-joint 22

  Okay at fourteen there's a tap on the left.
  It's a four inch clay tap, looks live.
  => tie-in 14

  Roots at eighteen.
  Look at those things. Roots all the way around the joint.
  => roots 18

  Twenty-five and a half, there's a wye.
  Comes in about two o'clock. That wye's got a cap on it.
  => tie-in 25.5

  Thirty-three, broken pipe.
  Let me turn the head. Yeah, that's broken clear through.
  => broken 33

  Thirty-three. Pipe's broken here.
  See that? There's a chunk missing out of the top.
  => broken 33

  Nineteen feet, cracked.
  Crack goes from twelve o'clock over to about three.
  => crack 19

  Fifty-one, separated joint.
  You can see the gap, you can see dirt back there.
  => open-joint 51

  Sixteen, somebody's tap.
  I'm going to back up a hair. There. That's a hammer tap, they just knocked a hole in it.
  => tie-in 16

  Thirty feet, grease.
  Whole lot of grease on the walls.
  Still grease.
  => deposit 30

  Twenty-eight, infiltration.
  Water's dripping in from the top there, steady drip.
  => infiltration 28

  Twenty-eight and we have a dropped joint.
  It dropped about an inch. Tires on the skid caught on it, that's how big the drop is.
  => offset-joint 28

  Thirty-seven, there's a hole in the pipe.
  That hole's about the size of your fist.
  => hole 37

  Thirty-seven, deformed. It's egg shaped.
  It's really squashed right here, I can barely get by.
  => deformed 37

  Seventeen, okay, we got a broken spot.
  I'm just going to spin the camera around so you can see all of it.
  It's broke from about two o'clock to six o'clock.
  => broken 17

  Right at seventeen is a lateral on the left side.
  Cast iron lateral, four inch.
  Looks like it's active, there's water coming out of it.
  => tie-in 17

  Forty-eight, and that there is a belly.
  Head's going under.
  Under water now.
  And we're out of it at fifty-two.
  => belly 48

  Twenty-six, see this crack?
  It runs along the top. Longitudinal crack.
  I'd say three feet of it.
  => crack 26

  Nine feet, gap in the joint.
  Look how wide open that joint is.
  => open-joint 9

  Nine feet, root in the joint.
  One single root. Little hair root.
  => roots 9

  Nine feet, a wye.
  That's going to be your neighbor's wye, pretty sure.
  => tie-in 9

  Nine feet. Here's a tap.
  The tap's coming in at ten o'clock.
  => tie-in 9

  Nine feet, here's a tap.
  Somebody just broke that in.
  => tie-in 9

  Nine feet, there's a hole.
  Pretty big hole. You could put your hand through it.
  => hole 9

  Nine feet, mineral deposits.
  Deposits all around, on the joint.
  => deposit 9

  Nine feet, the joint's offset to the left.
  Yeah that joint is offset maybe an inch.
  => offset-joint 9

  Nine feet, blockage.
  It's blocked with something, can't tell.
  I can't get past it.
  => blockage 9

  Nine feet, here's a dip.
  The water's about an inch deep in this dip.
  => belly 9

  Fifteen, wye with a cap.
  So there's a cap on that wye, never been used.
  => tie-in 15

  Fifteen, belly starts.
  Water's getting deeper in the belly.
  Twenty-two, belly ends.
  => belly 15

  Fifteen, deformed.
  Pipe's oval for a bit.
  => deformed 15

  Fifteen, deformed.
  Look how flat that is, that's real deformed.
  => deformed 15
`;

const TWO = `
  Twenty, wye on the left.
  And another wye just past it.
  Forty, nothing.
  => tie-in 20; tie-in ?

  Twenty, tap on the left at nine o'clock.
  Tap on the right at three o'clock.
  => tie-in 20; tie-in ?

  Twenty, crack.
  Second crack right behind it.
  => crack 20; crack ?

  Eighteen, roots.
  Twenty-three, roots.
  Twenty-nine, roots.
  => roots 18; roots 23; roots 29

  Eighteen, offset.
  Twenty-one, another offset.
  => offset-joint 18; offset-joint 21

  Eighteen, offset.
  And the next joint's offset as well.
  => offset-joint 18; offset-joint ?

  Twelve, crack on the top.
  There's a crack on the bottom too.
  => crack 12; crack ?

  Twelve, roots.
  Then some more roots about two feet further.
  => roots 12; roots 14
`;

describe("told again while the camera looks at it", () => {
  test.each(walksIn(ONE))("$said", expectRows);
});

describe("told as another", () => {
  test.each(walksIn(TWO))("$said", expectRows);
});
