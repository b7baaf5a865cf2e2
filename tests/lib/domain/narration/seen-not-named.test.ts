import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { expectRows, walksIn } from "#tests/support/walk.ts";

describe("water, what lies in the pipe, its shape and its joints are told by what is seen", () => {
  const walks = `
  Thirty-three, lens is getting wet, we're going down.
  Thirty-eight, and we're high and dry.
  => water 33

  Thirty-three, okay, she's laying low, water's coming up the glass.
  Forty, that's the end of the low spot.
  => belly 33

  Thirty-three, got a bathtub here.
  => water 33

  Thirty-three, we're in a pond.
  => water 33

  Thirty-three, there's a lake in here.
  => water 33

  Thirty-three, camera's a submarine now.
  => water 33

  Thirty-three, it's sitting full here, water halfway up the pipe.
  => water 33

  Thirty-three, there's candle wax all over the floor.
  => deposit 33

  Thirty-three, there's a shelf of white stuff on both sides.
  => deposit 33

  Thirty-three, there's barnacles all over the floor.
  => deposit 33

  Thirty-three, it's crusty all the way around.
  => deposit 33

  Thirty-three, there's a little beach in the bottom.
  => deposit 33

  Thirty-three, there's lard on the floor, white.
  => deposit 33

  Thirty-three, there's a bunch of oatmeal looking stuff on the bottom.
  => deposit 33

  Thirty-three, sides are pushed in like a stepped-on can.
  => deformed 33

  Thirty-three, pipe's gone egg shaped, sides are coming in.
  => deformed 33

  Thirty-three, it's shaped like a football.
  => deformed 33

  Thirty-three, it's narrower than it should be, the walls are coming in on us.
  => deformed 33

  Thirty-three, the top's come down some.
  => deformed 33

  Thirty-three, joint don't meet, you can get your thumb in there.
  => open-joint 33

  Thirty-three, there's a black line where the two pipes should touch, joint's gaping.
  => open-joint 33

  Thirty-three, roof's on the floor, just shards and mud.
  => collapsed 33

  Thirty-three, the top's laying in the bottom.
  => collapsed 33

  Thirty-three, there's no pipe left here, just a tunnel in the dirt.
  => collapsed 33

  Thirty-three, there's a drip off the top of the joint.
  => infiltration 33

  Thirty-three, top of the joint's crying.
  => infiltration 33

  Thirty-three, clean water's running in on the left out of the joint.
  => infiltration 33

  Thirty-three, it's raining in here, coming through the crown.
  => infiltration 33

  Thirty-three, somebody's pipe's sticking in our pipe.
  => protruding-tie-in 33

  Thirty-three, this one's in pieces, four pieces.
  => broken 33

  Thirty-three, it's like a jigsaw puzzle.
  => broken 33

  Thirty-three, there's a bite out of the bell.
  => broken 33

  Thirty-three, there's light coming down, that's a cleanout, I can see the guy's shoes.
  => cleanout 33

  Thirty-three, crack on top. Pond's nice, has he got koi in it?
  => crack 33

  Thirty-three, crack on top. Lady's crying up there.
  => crack 33

  Thirty-three, crack on top. I had oatmeal for breakfast.
  => crack 33

  Thirty-three, crack on top. You play football Friday?
  => crack 33

  Thirty-three, crack on top. We're going to the beach Sunday.
  => crack 33

  Thirty-three, crack on top. She's got a lake house.
  => crack 33

  Thirty-three, crack on top. It's raining sideways out there.
  => crack 33`;
  test.each(walksIn(walks))("$said", expectRows);
});

describe("what only looks or sounds like it is none", () => {
  const walks = `
  Thirty-three, crack on top. Wall's caked but I would not swear to it.
  => crack 33

  Thirty-three, crack on top. Boss wants me to put my hand in the bucket.
  => crack 33

  Thirty-three, crack on top. Camera's getting hot.
  => crack 33

  Thirty-three, crack on top. There's a lake behind the house.
  => crack 33`;
  test.each(walksIn(walks))("$said", expectRows);
});

test.each(["street", "near", "upstream", "bottom", "far"])(
  "a stretch ends where its %s end is told",
  (which) => {
    const text = `0:00 In at the cleanout, zero.\n0:40 Thirty-three, going into a sag.\n1:20 And there's the ${which} end of it, thirty-nine.\n3:00 Ninety, that's the main.`;
    const run = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;
    const rows = draftLog(text, run).drafts.map(({ fault, counter, toCounter }) => [
      fault,
      counter,
      toCounter,
    ]);
    expect(rows).toEqual([["belly", 3300, 3900]]);
  },
);
