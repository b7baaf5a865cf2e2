import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";
import { expectRows, walksIn } from "../../../support/walk.ts";

// Who has come to the end of something tells how long it was: it lies behind the camera.

const AT_ITS_END = `
Forty-four, we've got water, so this is a belly.
And we're up and out at fifty-two, so call that eight feet of low spot.
=> belly 44

There's the sag starting at thirty-one.
Out of it at thirty-nine, so that's about an eight foot belly.
=> belly 31

Twenty-two, it dips, that's a low spot.
Twenty-six and the floor's dry again, so it's a four foot sag.
=> belly 22

Low spot starts at forty-one five.
We're coming up and out at forty-nine and a half. So that's a belly in there, eight foot of it.
=> belly 41.5

Crack begins at twenty, on top.
And it quits at twenty-six, so that's six feet of crack.
=> crack 20

Belly at fifty.
Sixty, and I'm clear of it. Makes it a ten foot sag.
=> belly 50

Roots from thirty on.
Thirty-five and they stop, so five feet of roots.
=> roots 30

Sag at sixty-two, she's under.
Up for air at sixty-eight so that's a six foot belly, six foot about, yeah.
=> belly 62

Bottom's worn out from fifteen.
It ends at thirty, which makes fifteen feet of rotten bottom.
=> worn-surface 15

Low spot at seventy, water in it.
And we're through it at seventy-five. All told that's a five foot dip.
=> belly 70
`;

describe("a length told where it ends", () => {
  test.each(walksIn(AT_ITS_END).map((walk) => [walk.said.join(" "), walk] as const))(
    "%s",
    (_, walk) => expectRows(walk),
  );
});

describe("a length told where it begins", () => {
  test.each([
    ["At forty there's a belly, goes about six feet.", 40, 46],
    ["Forty, a sag, six feet of it.", 40, 46],
    ["Crack at forty, runs six feet.", 40, 46],
  ])("%s", (words, from, to) => {
    const talk = `0:00 Zero at the cleanout.\n0:30 Twelve, wye, left.\n1:50 ${words}\n3:00 Sixty, that's the main.`;
    const row = draftLog(talk, { looks: "downstream", measuredFrom: null, mainCounter: null })
      .drafts[1];
    expect([row?.counter, row?.toCounter]).toEqual([from * 100, to * 100]);
  });
});
