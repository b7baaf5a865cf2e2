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

const ONCE_MORE = `
  Twelve, offset.
  Twenty-six, roots.
  Forty, crack.
  So you've got an offset, some roots and a crack.
  => offset-joint 12; roots 26; crack 40

  Twelve, offset.
  Twenty-six, roots.
  Forty, crack.
  All told one offset, one root ball, and that crack there.
  => offset-joint 12; roots 26; crack 40

  Twelve, offset.
  Twenty-six, roots.
  Forty, crack.
  Okay, the things I'd worry about are the roots and the crack.
  => offset-joint 12; roots 26; crack 40

  Twelve, wye.
  Twenty-six, roots.
  Forty, belly.
  Main problem is the roots, the belly's not that bad.
  => tie-in 12; roots 26; belly 40

  Twelve, wye.
  Twenty-six, roots.
  Forty, belly.
  I'd fix the roots and leave the belly.
  => tie-in 12; roots 26; belly 40

  Twelve, wye.
  Twenty-six, roots.
  Forty, belly.
  So basically roots in the middle and a belly toward the street.
  => tie-in 12; roots 26; belly 40

  Twelve, wye.
  Twenty-six, roots.
  Forty, belly.
  Your problem's those roots.
  => tie-in 12; roots 26; belly 40

  Twelve, wye.
  Twenty-six, roots.
  Forty, belly.
  Customer wants to know about the roots. I told her the roots can be cut.
  => tie-in 12; roots 26; belly 40

  Twelve, wye.
  Twenty-six, offset.
  Forty, hole.
  Like I was saying about that offset, it's minor. The hole is the issue.
  => tie-in 12; offset-joint 26; hole 40

  Ten, wye on the right.
  Thirty, crack.
  That wye we passed earlier is probably the neighbor's.
  => tie-in 10; crack 30

  Ten, wye on the right.
  Thirty, crack. Same kind of crack as we're going to want to look at over there.
  => tie-in 10; crack 30

  Eleven, offset.
  Thirty-five, roots.
  Like I told you, the offset back there is what I'd fix first.
  => offset-joint 11; roots 35

  Eleven, offset.
  Thirty-five, roots.
  So far just the one offset and these roots.
  => offset-joint 11; roots 35

  Eight, tap on the left.
  Twenty-six, tap on the right.
  So that's both of your taps.
  => tie-in 8; tie-in 26

  Eight, tap on the left.
  Forty, belly.
  So between that tap and this belly it's all good pipe.
  => tie-in 8; belly 40

  Twenty, roots.
  Forty-five, nothing.
  None of the roots made it down this far.
  => roots 20

  Thirteen, crack.
  Moving on past the crack.
  Forty, open joint.
  => crack 13; open-joint 40

  Twenty-two, tap.
  I want to go back and look at that tap again.
  Okay backing up. There it is. Twenty-two, there's the tap.
  => tie-in 22
`;

const ONE_MORE = `
  Twelve, wye on the left.
  Forty, another one.
  => tie-in 12; tie-in 40

  Twelve, crack.
  Twenty, another one coming in on the left.
  => crack 12; tie-in 20

  Twelve, wye.
  Forty, there's one more on the right.
  => tie-in 12; tie-in 40

  Twelve, roots.
  Twenty-two, there's one coming in at ten o'clock.
  => roots 12; tie-in 22

  Twelve, wye.
  Forty, got one over here on the right side.
  => tie-in 12; tie-in 40

  Twelve, wye, nine o'clock.
  And there's its twin on the other side, three o'clock.
  => tie-in 12

  Twelve, wye.
  Thirty, next connection, left side.
  => tie-in 12; tie-in 30

  Twelve, wye.
  Thirty, somebody else comes in here on the right.
  => tie-in 12; tie-in 30
`;

const NAMES = `
  Twelve, there's a crack-type thing in the pipe.
  => crack 12

  Twelve, there's a tap hole, saddle's gone.
  => tie-in 12

  Twelve, wye. I've got the root saw on the truck.
  => tie-in 12

  Twelve, wye. That's the wye I was telling you about.
  => tie-in 12

  Twelve, lateral connection, hole-saw cut, no saddle.
  => tie-in 12

  Twelve, crack in the bell.
  => crack 12
`;

const WAY_IN = `
  Twelve, wye.
  Thirty, there's a cleanout.
  => tie-in 12; cleanout 30

  Twelve, wye.
  Thirty feet, here's the yard cleanout, coming in on top.
  => tie-in 12; cleanout 30

  Twelve, wye.
  Thirty, there's a riser, must be an old cleanout nobody uses.
  => tie-in 12; cleanout 30
`;

const OF_THE_MAIN = `
  Twelve, wye.
  City's got clay out there, that's their pipe, not ours.
  => tie-in 12

  Twelve, wye.
  That's the city line right there, six inch clay, and a manhole up the street.
  => tie-in 12
`;

describe("gone through once more", () => {
  test.each(walksIn(ONCE_MORE))("$said", expectRows);
});

describe("one more, without a name", () => {
  test.each(walksIn(ONE_MORE))("$said", expectRows);
});

describe("named to tell another thing", () => {
  test.each(walksIn(NAMES))("$said", expectRows);
});

describe("the way in and out", () => {
  test.each(walksIn(WAY_IN))("$said", expectRows);
});

describe("the pipe of the main", () => {
  test.each(walksIn(OF_THE_MAIN))("$said", expectRows);
});

describe("told again while the camera looks at it", () => {
  test.each(walksIn(ONE))("$said", expectRows);
});

describe("told as another", () => {
  test.each(walksIn(TWO))("$said", expectRows);
});
