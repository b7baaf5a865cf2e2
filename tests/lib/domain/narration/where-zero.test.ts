import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// How people say where the footage was set to zero: at the main, before they come back, or where the
// camera went in.

const AT_MAIN = `
  So I've pushed all the way down to the main and I'm going to pull back from here. Counter reads eighty-four, I'm resetting it. Okay.
  Camera's at the city connection. Reset. Everything from here on is distance from the main.
  We're starting down at the main and working our way back to the house.
  I ran it all the way out and hit the main at ninety-two feet. So I'm going to zero it out and come back.
  Alright, we're down at the tap, counter's on zero.
  This is the main line down here, let me zero it out.
  I'm sitting at the wye on the main, zero.
  That's the city's pipe you're looking at there. I set the footage to zero and now I'm coming back toward the house.
  Okay I pushed it out to the street already. We're in the main now. I zeroed the counter, so the numbers are from the main.
  Counter says ninety-one at the main. Zeroing it. Now pulling back.
  So we went in at the cleanout by the porch and the main is at eighty-eight feet. I've reset the counter here at the main and I'll talk you through it on the way back.
  I'm all the way out at the street. This is zero.
  Here's where your line hits the city main. I'm gonna call this zero and back up.
  we're at the sewer main so i'm gonna hit zero and start dragging it back
  okay so i went in through the cleanout and i'm out at the main right now and we'll start from here
  Ran it out to the main, ninety feet. Footage is reset there.
  This is looking at the main. I'm at zero feet. As I come back I'll call out what I see.
  Starting at the public sewer, coming back to the house. Zero.
  all right we made it to the city main that's zero and we're gonna head back up the line
  Zero is the tap on the main, I'm retrieving.
  I am in the main. Footage zero'd. Retracting.
  I shoved it down to the main first, then zeroed it, so you'll hear footages going up as I back out.
  Camera is parked in the main. I'm zeroing out right here and we'll come back up together.
  So this is the bottom end, this is where it dumps into the city line. Counter's zero, and I'm pulling.
  I've already got the camera at the street, about eighty feet of rod out. Reset to zero. Here we go.
  okay folks we are all the way at the end of the line that's the main and i put the counter back to zero so now as i pull back you'll see the feet go up
  Measuring from the main on this one. Zero at the connection.
  We're doing this one backwards, from the main to the house. Zero.
  The way I do it I go down to the main first, zero the counter, then come back slow.
  Got to the main no problem. Zeroed it there.
  At the main, zero. Pulling.
  that right there is the sewer main we just came through eighty six feet of pipe i'm resetting and coming home
  You're looking at the city's main right now. I'll start my footage here.
  We begin in the main, counter zero.
`;

const AT_ACCESS = `
  Zero at the cleanout. The main's about eighty feet out.
  We're going from the house out to the main. Counter's zero.
  Starting at the house cleanout, counter at zero, headed for the city main.
  I'm in at the roof vent, zero, and we'll go till we hit the main.
  Camera going in the two-way, zero. City says the main is eighty-five feet from here.
  okay this is the cleanout in the front yard counter's at zero we're gonna go out to the main in the street
  Pulled the toilet, going in there, zero at the flange, pushing to the street.
  There's four houses on this line from the main up. I'm at the top, in the last cleanout, zero.
  Main line's backed up into the house so we're going in the cleanout. Zero.
  The city ran their main and it's clear. So now ours. Cleanout, zero.
  I was at the main yesterday from the other end. Today it's from the basement, zero at the stack.
  Access is the cleanout at the sidewalk. Zero there. Looking downstream to the main.
  Going in by the driveway. Counter zero. They tell me the tap's in the alley.
  Front cleanout, zeroed. Toward the main.
  Zero. Inside cleanout. Main's out front.
  Starting where the line leaves the house, zero feet.
  We begin in the cleanout, counter zero, and end in the main.
  The camera's in the pipe at the foundation. Zero. Eighty feet to the main, they say.
  I popped the cap in the flower bed. Zero. Off we go to the main.
  okay we're at the backyard clean out and i set it to zero and we are gonna run it down to the main if we can
  Zero feet. This is the inside cleanout in the garage. City main is in the alley behind.
  Last time we came from the main. This time from the house. Zero at the riser.
  Counter's zero. I'm standing at the cleanout, looking toward the street.
  In the line. Zero. Downstream.
  The main's flowing fine, checked the manhole. So we go in at the house trap, zero.
  Zero on the counter, front yard. Let's go find the main.
  six inch in through the cleanout behind the dumpster camera's at zero going out to the main
  zeroed at the c/o by the steps shooting it out to the city main
  She's on zero in the crawl space, running it out to the sewer in the street.
  Camera's in, zero, working our way down to the main.
  Zero at the cap, and it's off to the city line.
  Counter zero, and I'm sending it down to the tap in the alley.
  We got her zeroed here at the house and we're aiming for the street main.
  In at the laundry standpipe, zero, on our way to the sewer main.
  zero and pushing out to the public main
  Cleanout, zero, bound for the main in Fifth Street.
  Reset at the porch and feeding it toward the main.
  Okay zero, she's heading on down to the county main.
`;

const WALK =
  "0:40 Wye on the left, ten.\n1:10 Roots. Twenty-two.\n1:40 Crack at thirty-five.\n2:20 And an offset joint, fifty-one.";
const PLACES = [
  ["tie-in", 1000],
  ["roots", 2200],
  ["crack", 3500],
  ["offset-joint", 5100],
];

function linesOf(text: string): string[] {
  return text.split("\n").flatMap((line) => (line.trim() === "" ? [] : [line.trim()]));
}

function heard(opening: string, end: string) {
  const talk = `0:02 ${opening}\n${WALK}\n2:50 ${end}`;
  const { drafts, measuredFrom, readings } = draftLog(talk, {
    looks: "downstream",
    measuredFrom: null,
    mainCounter: null,
  });
  const told = drafts.filter(({ kind }) => kind !== "cleanout");
  return {
    measuredFrom,
    places: told.map(({ kind, fault, counter }) => [fault ?? kind, counter]),
    readings: readings.map(({ counter }) => counter / 100).filter((feet) => feet > 0),
  };
}

describe("zero at the main", () => {
  test.each(linesOf(AT_MAIN))("%s", (opening) => {
    expect(heard(opening, "That's the cleanout, sixty-three.")).toEqual({
      measuredFrom: "main",
      places: PLACES,
      readings: [10, 22, 35, 51, 63],
    });
  });
});

describe("zero at the way in", () => {
  test.each(linesOf(AT_ACCESS))("%s", (opening) => {
    expect(heard(opening, "And the main, sixty-three.")).toEqual({
      measuredFrom: "access",
      places: PLACES,
      readings: [10, 22, 35, 51, 63],
    });
  });
});

describe("zero at the way in, and the main never reached", () => {
  test.each(linesOf(AT_ACCESS))("%s", (opening) => {
    expect(heard(opening, "Sixty-three, I can't get by, it's a rock.").measuredFrom).toBe("access");
  });
});

test.each([
  "Going in at the upstream cleanout behind the house, counter zero, heading down to the main.",
  "Cleanout by the porch. Footage is zero, headed out to the city main.",
])("a main that is only ahead is not where the footage was set: %s", (opening) => {
  const { drafts, measuredFrom } = draftLog(`0:02 ${opening}\n${WALK}\n2:50 There's the main.`, {
    looks: "downstream",
    measuredFrom: "access",
    mainCounter: null,
  });
  expect(measuredFrom).toBe("access");
  expect(drafts.map(({ counter }) => counter)).toEqual(
    expect.arrayContaining(PLACES.map(([, counter]) => counter)),
  );
});

// A camera that is drawn back and counts down was zeroed where it went in, whatever is said of the
// main: from the main the footage would grow.
const COUNTED_DOWN = `
  Pushed her out to the main, she's sitting at the main now, sixty-three. Count it coming home.
  So I'm at the city main, counter says sixty-three, and I'm going to read it on the way back.
  we're in the main it's sixty three feet out from the cleanout and we'll bring her back now
  Sixty-three at the city tap. Pulling.
  Cleanout was zero, main's at sixty-three, here we come back up.
  All the way out at the street, sixty-three on the screen. I look better coming back.
`;
const WALK_BACK =
  "0:40 Offset joint, fifty-one.\n1:20 Crack at thirty-five.\n1:50 Roots. Twenty-two.\n2:20 Wye on the left, ten.\n2:50 Zero, back in the cleanout.";

test.each(linesOf(COUNTED_DOWN))("counted down on the way back: %s", (opening) => {
  const { drafts, measuredFrom } = draftLog(`0:02 ${opening}\n${WALK_BACK}`, {
    looks: "downstream",
    measuredFrom: null,
    mainCounter: null,
  });
  expect(measuredFrom).toBe("access");
  const places = drafts.map(({ kind, fault, counter }) => [fault ?? kind, counter]);
  expect(places).toEqual([...PLACES].reverse());
});
