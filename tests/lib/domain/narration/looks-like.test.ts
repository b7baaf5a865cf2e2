import { describe, test } from "vitest";
import { expectRows, walksIn } from "#tests/support/walk.ts";

describe("what a find looks like names it: roots as hair, a joint that is off as the next one that sits high", () => {
  const walks = `
  Eighteen six, got some hair coming in the top of the joint there.
  => roots 18.6

  Twenty-one, hair all around this joint.
  => roots 21

  Thirty-four, there's a beard hanging down from the crown.
  => roots 34

  Thirty-four, there's a little whisker of hair in that joint.
  => roots 34

  Forty-one, there's a curtain of hair across the pipe.
  => roots 41

  Forty-one, there's a horse tail hanging out of the joint.
  => roots 41

  Twenty-six, that's a fox tail coming in at the joint.
  => roots 26

  Twenty-six, spaghetti hanging down out of the joint, tree spaghetti.
  => roots 26

  Twenty-six, tendrils poking through the joint on the left.
  => roots 26

  Twenty-six feet, you see those feelers coming in at the bell?
  => roots 26

  Twenty-six, there's a mop hanging out of the joint.
  => roots 26

  Twenty-six, tree's got its fingers in the joint.
  => roots 26

  Twenty-four, crack at the top. Back her up a hair.
  => crack 24

  Twenty-four, crack at the top. Lady's dog leaves hair all over my boots.
  => crack 24

  Twenty-four, crack at the top. I gotta get my hair cut before Saturday.
  => crack 24

  Twenty-four, crack at the top, maybe a hair wide.
  => crack 24

  Forty-four, the next one sits high, you see the half moon of it.
  => offset-joint 44

  Forty-four, next one's kicked sideways.
  => offset-joint 44

  Forty-four, the next piece is sitting lower than this one, half an inch.
  => offset-joint 44

  Forty-four, I'm looking at the edge of the next pipe standing up in front of me.
  => offset-joint 44

  Forty-four, you can see a half moon at that joint.
  => offset-joint 44

  Forty-four, got a quarter moon on the left at this joint.
  => offset-joint 44

  Forty-four, there's a crescent on the right side where they don't meet square.
  => offset-joint 44

  Forty-four, there's a curb at this joint, skid's hitting it.
  => offset-joint 44

  Forty-four, got a big old step at the joint.
  => offset-joint 44

  Forty-four, I got a little step here.
  => offset-joint 44

  Forty-four, the bell of the next one's sitting up.
  => offset-joint 44

  Forty-four, the far pipe is down an inch from this one.
  => offset-joint 44

  Forty-four, crack at the top. Joint's good, next one's good.
  => crack 44

  Forty-four, crack at the top. Next step is call the boss.
  => crack 44

  Forty-four, crack at the top. Watch your step down there.
  => crack 44

  Forty-four, crack at the top. Next one's on the house, he says.
  => crack 44

  Forty-four, crack at the top. There was a half moon last night, did you see it?
  => crack 44`;
  test.each(walksIn(walks))("$said", expectRows);
});

describe("what shows in or behind the wall names the fault", () => {
  const walks = `
  Thirty-two, and the bottom's washed out, you can see the stones in it.
  => worn-surface 32

  Thirty-two, the floor of it is rotted out, thin, flaky, no dirt showing.
  => worn-surface 32

  Thirty-two, bottom's ate up, rough like a cheese grater, I don't see dirt.
  => worn-surface 32

  Thirty-two, invert's gone rough, you can see the pebbles in the wall.
  => worn-surface 32

  Thirty-two, the floor's like a washboard, all chewed up.
  => worn-surface 32

  Thirty-two, bottom's gone, looking at gravel.
  => hole 32

  Thirty-two, I can see dirt, right side, a piece out of the wall big as my hand.
  => hole 32

  Thirty-two, chunk of the wall missing, left, dirt showing.
  => hole 32

  Thirty-two, I'm looking at bare dirt. A chunk's gone out of the wall.
  => hole 32

  Thirty-two, daylight where the wall ought to be, rocks behind it.
  => hole 32

  Thirty-two, there's a hole off the left with a pipe on it.
  => tie-in 32

  Thirty-two, hole in the left side with a pipe in it, a tee.
  => tie-in 32

  Thirty-two, a round opening on the right, pipe comes in.
  => tie-in 32

  Thirty-two, a line all the way round the pipe. Tight, though.
  => crack 32

  Thirty-two, there's a line running right along the top, you can see it, a dark line.
  => crack 32

  Thirty-two, there's a spider web all over the right side, pieces are loose.
  => broken 32

  Thirty-two, crack on top. Soil pipe's ugly but it's open.
  => crack 32

  Thirty-two, crack on top. I can't see squat.
  => crack 32

  Thirty-two, crack on top. Dropped the flashlight in the crawl space.
  => crack 32

  Thirty-two, crack on top. Called the gas co, guy came, said yep.
  => crack 32`;
  test.each(walksIn(walks))("$said", expectRows);
});
