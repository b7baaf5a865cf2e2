import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Pushed up: the footage is the main's where the camera went in at the main or its manhole.

const AT_MAIN = `
  We're in the manhole on Almendra Way, going up the lateral. Okay, zero, right at the wall of the main.
  Going in at the manhole, pushing upstream. Counter's at zero right where the line comes in the wall.
  Launched from the main, zeroed at the tap, headed up.
  Starting at the city main, heading up. Zero.
  From the street side going up toward the houses, zero at the connection.
  Down in manhole twelve, shooting up the private line, zero at the pipe wall.
  I'm at the wye on the main and I've got it zeroed.
  Pushing up from the city's manhole, set to zero at the lip of the pipe.
  Coming off the main going uphill. Reset the counter.
  Okay we're standing in the street, got the lid off, going up from here, she's zeroed.
  At the main, zero, and up we go.
  No cleanout at the house that'd take it, so I'm in at the manhole, zero at the wall, going up.
  We couldn't find a cleanout, so we launched out of the main. Zero.
  Going from the main up to the cleanout at the house, zero at the tap.
  The house cleanout's buried, we came in from the street. Zero on the saddle.
  We're in the city's manhole out front, it's theirs so I called them first. Zero at the wall, going up.
  This manhole is the city's, not yours. Zero at the wall, pushing up to the house.
  Manhole in the street, it isn't private. Zero at the wall, up we go.
  In the county manhole, your property starts at the sidewalk. Zero at the wall, going up.
  Going in at the public manhole in front, it's not on your property. Zero at the edge of the pipe.
  Dropped the crawler in the main, launching the lateral camera. Zero at the saddle.
  Estamos en el pozo, vamos para arriba. Cero en la principal.`;
const AT_CLEANOUT = `
  In at the curb cleanout, going up to the house, zeroed at the cleanout.
  We're at the property line cleanout and we're shooting up toward the building. Zero.
  Going upstream from the two way at the sidewalk, counter zero.
  I'm in the cleanout out by the street, pushing up to the house. Zero on the counter.
  Went in at the lower cleanout, looking up. Zero.
  This is from the cleanout in the parkway up to the foundation, zeroed.
  I'm at the curb cleanout and we're shooting back up to the house cause the main side's fine. Zero at the cap.
  We're at the sidewalk cleanout. City did their main last month. Zero, going up.
  Standing at the cleanout in the strip, main's behind me, zero, looking at the house.
  Main to the cleanout we did yesterday, it was clean. Today cleanout to the house, zero on the cap.
  Set up at the outside cleanout, going toward the building, not the street. Zeroed.
  Here at the front cleanout with my back to the city sewer. Counter's zero.
  Camera's in at the lower cleanout, and up we go, away from the main. Zero.
  Starting at the driveway cleanout, we ran the other half to the tap already. Zero.
  Opened up the two way by the street, pushing it uphill. Zeroed at the tee.
  Lid is off, we are in the manhole by the loading dock, going up to the kitchen. Zero.`;

/** In at a cleanout, and the footage set to what that is from the main. */
const SET_FROM_MAIN = `
  Curb cleanout, going up to the house. City measured nine and a half feet from the main to here, so I set her at nine and a half. Everything I say is off the main.
  In at the sidewalk cleanout, looking up. I keyed in eleven, so all my footages are from the main.
  Cleanout by the street, pushing up. Counter's preset. The numbers you hear are from the city main.
  We're in at the two way heading up. It's twelve feet to the main, so I started the counter at twelve. Distances are off the main.
  Lower cleanout, going up. I dialed in seven so what I read you counts from the main.
  Parkway cleanout, up toward the house. I set her to ten, so whatever I call out is from the main.`;

/** A manhole of one's own is no part of the main. */
const AT_PRIVATE_MANHOLE = `
  We're at the private manhole behind the building, shooting up to the units, zero at the wall.
  Lid's off the little manhole in the back lawn, that's theirs, going up from here. Zero.
  In at the manhole in their parking lot, it's a private one, looking upstream, zeroed.
  the association's own manhole between the buildings going up toward twelve zero
  This manhole's on the property, not the city's. Zero at the pipe, heading up.
  We're at the manhole behind the dumpsters, it's y'all's manhole, it's private, it isn't the city's. Going upstream. Zero's right at the edge of the manhole.
  We're at the manhole in the back by the fence. It's theirs. Going upstream out of the manhole. Zero at the wall of the manhole.
  In at the manhole by the pool house, belongs to the HOA, not the town. Zero at the wall, going up.
  Manhole's privately owned, the county doesn't touch it. Zero at the pipe end, looking up the hill.
  There's a manhole at the end of the drive and the city says it isn't theirs. Zero, going up.
  Nobody has this manhole on the public map, it belongs to the mall. Zeroed at the wall, headed up to the stores.
  The trailer park has its own manholes. I'm in number two, zero at the lip, going up toward the trailers.
  I'm in the manhole down by the creek, going up to the lodge. Zero at the manhole wall.
  Manhole out back. The city don't own it, the school does. Zero, pushing up.
  On private property here, in the manhole next to the loading dock, zero at the wall of the pipe, going up to the store.`;

const lines = (text: string) => text.split("\n").flatMap((line) => line.trim() || []);

function heard(opening: string) {
  const text = `0:00 ${opening}\n0:20 Eight five, wye on the left.\n0:50 Twenty-two, crack on top.\n1:20 Forty feet even, roots.`;
  return draftLog(text, { looks: "upstream", measuredFrom: null, mainCounter: null });
}

describe("where a way up is measured from", () => {
  test.each(lines(AT_MAIN))("the main: %s", (opening) => {
    const { measuredFrom, drafts } = heard(opening);
    expect(measuredFrom).toBe("main");
    expect(drafts.find(({ fault }) => fault === "roots")?.fromMain).toBe(4000);
  });

  test.each(lines(AT_PRIVATE_MANHOLE))("a manhole of one's own: %s", (opening) => {
    expect(heard(opening).measuredFrom).toBe("access");
  });

  test.each(lines(SET_FROM_MAIN))("a cleanout, told from the main: %s", (opening) => {
    const text = `0:00 ${opening}\n0:20 Eighteen five, wye on the left.\n1:00 Forty feet even, roots.`;
    const run = { looks: "upstream", measuredFrom: null, mainCounter: null } as const;
    const { measuredFrom, drafts } = draftLog(text, run);
    expect(measuredFrom).toBe("main");
    expect(drafts.map(({ fromMain }) => fromMain)).toEqual([1850, 4000]);
  });

  test.each(lines(AT_CLEANOUT))("a cleanout: %s", (opening) => {
    const { measuredFrom, drafts } = heard(opening);
    expect(measuredFrom).toBe("access");
    expect(drafts.find(({ fault }) => fault === "roots")?.fromMain).toBeNull();
  });

  test("a run entered as measured from its way in at the main stays so, with the main at zero", () => {
    const { measuredFrom, drafts } = draftLog(
      "0:00 At the main, zero, going up.\n0:20 Eight five, wye on the left.",
      { looks: "upstream", measuredFrom: "access", mainCounter: null },
    );
    expect(measuredFrom).toBe("access");
    expect(drafts.map(({ fromMain }) => fromMain)).toEqual([850]);
  });
});

const SET_AT_MAIN = `
  I run her from the cleanout down to the main and I set the counter to nothing at the main, so what I say is from the main up.
  So that's the main, and I'll call that nought. Pulling back.
  Pushed out to the city tap, rolled it back to zero there, and I'm pulling back.
  We're at the main, I cleared the counter. Coming back.
  Put her on zero at the main. Coming back now.
  That's the main, that's my zero. Pulling back.
  At the main. Counter's nothing. Bringing her back.
  Everything from here is off the main, zeroed it there. Pulling back.
  Set the reel to zip at the main, pulling back.
  I'm at the main and the counter's been zeroed out. Backing up.
  We hit the main, reset, coming home.`;

describe("a pull-back whose footage was set at the main", () => {
  test.each(lines(SET_AT_MAIN))("%s", (words) => {
    for (const text of [
      `0:00 ${words}\n0:20 Eight five, wye on the left.\n0:50 Twenty-two, crack on top.`,
      `${words} Eight five, wye on the left. Twenty-two, crack on top.`,
    ]) {
      const run = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;
      const { measuredFrom, drafts } = draftLog(text, run);
      expect(measuredFrom).toBe("main");
      expect(drafts.at(-1)?.counter).toBe(2200);
    }
  });
});
