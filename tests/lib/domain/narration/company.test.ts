import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// A bare number is a footage by the words around it. Each sentence stands in a talk whose footages
// leave room for any number: what is none must not become one, and what is one must be read.

const NO_FOOTAGE = `
  We're at twelve Larch, the yellow one.
  This is for the people at forty-two and forty-four.
  So it's forty-two, forty-four and forty-eight on this line.
  Forty-four said they never had a problem.
  That would be thirty-six's.
  I'd guess that one goes to thirty-six.
  That's gotta be nineteen Birch coming in.
  Number twelve is who called it in.
  Number twelve, that's the lady with the dogs.
  It's the house on the corner, twenty-nine.
  Fifteen and seventeen share a driveway.
  Seventeen across the street has the same pipe.
  The next house up is twenty-one.
  I parked in front of thirty-two.
  They sent me to fifty-one, wrong house.
  I talked to the guy in fifty-one.
  She's in apartment fourteen.
  Fourteen B's the one upstairs.
  Unit number eighteen's got the cleanout.
  It's the second door, seventeen.
  The address on the ticket's forty-five.
  Forty-five's tub is draining right now.
  Somebody at thirty-nine just flushed.
  Thirty-nine's washing machine, hear that?
  Have thirty-nine run some water for me.
  Tell twenty-seven not to flush.
  Ask twenty-seven if their sink's running.
  I'm going to knock on twenty-seven when we're done.
  Twenty-seven isn't on this line I don't think.
  Whether that's twenty-seven or twenty-nine I couldn't tell you.
  Today is the nineteenth of November.
  November nineteenth, twenty twenty-six.
  It's eleven nineteen twenty-six.
  Date's the fourteenth.
  Thursday the twelfth.
  We were out here on the eighth.
  I was here back on March twelve.
  I got here at quarter past ten.
  It's half past ten.
  Half past twelve already.
  It's ten to nine in the morning.
  It's about twenty after.
  Started at eight forty-five.
  Twenty to eleven right now.
  Time's ten forty-two.
  Be out of here by twelve.
  I've got another one at thirteen hundred.
  I told her we'd be done by eleven.
  Water's off till two.
  Phone's five five five oh one three two.
  Her number's five five five, oh one, forty-seven.
  You can reach me at five five five zero one nineteen.
  Permit's B twenty-two fourteen.
  Permit number thirty-one forty.
  It's permit 12-0456.
  Job twenty-six eighteen.
  Work order's forty-four seventeen.
  The ticket is number fifty-two.
  On page twelve of the plans.
  Sheet fourteen shows it different.
  Card number thirty-three.
  Case number twenty-six.
  That's three taps.
  There are three taps on this one, I was told two.
  We've seen four of them so far.
  That's the third one.
  Six of these joints are like that.
  I count eleven joints.
  I'd say every third joint.
  A dozen roots, maybe twenty.
  There's about fifteen, twenty little hairline cracks.
  Thirty or forty cracks in this one.
  I've run fifty of these this year.
  We've been doing this thirty years.
  I've been at it for twenty-five years.
  My dad did this for forty.
  He's had it snaked twelve times.
  It's four inch.
  It's a four inch line, six inch main.
  It's four-inch all the way.
  Goes from four to six here.
  Four by four wye.
  It's three inch, no, four.
  Bushing, six to four.
  Two feet of cover here.
  There's about twelve feet of cover.
  It's only thirty inches down.
  It's twelve foot down at the street.
  It's nine deep.
  Depth is seven and a half.
  The locator's reading seven six.
  It's buried eleven feet.
  The trench'd be twelve feet.
  You'd be digging twelve feet down.
  They're six foot sticks.
  Ten foot sticks of plastic.
  Twenty foot sticks.
  I've got a thirteen foot van.
  About a thirty degree bend.
  That's a twenty-two and a half.
  It's a twenty-two.
  A forty-five and then another forty-five.
  It's a forty-five on its side.
  Long sweep ninety.
  Two forty-fives make the turn.
  It's running about a two percent grade.
  Slope's one and a half.
  It's at two percent.
  Thirty percent blocked.
  I'd call it forty percent.
  It's half full.
  Roots are taking up, what, forty percent of it.
  It's ten, fifteen percent offset.
  A couple hundred gallons went through there.
  A forty gallon heater drained into it.
  I'm jetting at eighteen gallons.
  Pressure's at fifteen hundred.
  I'm at twenty-five hundred psi.
  That'll run you forty-five hundred.
  It's about twelve thousand to dig.
  He said it'd be fifteen.
  She paid thirty for it.
  Thirty-two fifty for the liner.
  Forty bucks a foot.
  It was quoted at fourteen five.
  It's thirty-eight out here this morning.
  It's like twenty degrees.
  It's forty-one and raining.
  High of fifty-five today.
  Temperature's at thirty-four.
  It got down to nineteen last night.
  We're twelve minutes in.
  About fourteen minutes on the tape.
  The time on the screen is ten twenty-two.
  Timestamp's off by twelve.
  Recording twelve.
  It's at twelve minutes thirty on the video.
  Camera's the mini, forty-one head.
  Head's an inch and three quarters.
  My sonde's five twelve.
  The reel's got two hundred on it.
  I've got a hundred and fifty of cable.
  There's another twenty of rod in the truck.
  I've got fifty left on the reel.
  Battery's at twenty-two.
  Battery says fifty-one percent.
  Lights at forty percent.
  Turn the light down to fifty.
  Brightness is on twenty.
  Zoom's two to one.
  I've got a crew of eleven.
  Six guys standing around.
  I'm forty-eight years old and my back is done.
  He's fourteen, wants to be a plumber.
  My kid turns twelve on Saturday.
  The truck has two hundred thousand on it.
  Highway forty-two was backed up.
  We came down fifty-one to get here.
  It's schedule forty.
  SDR thirty-five by the look of it.
  It's thirty-five, not schedule forty.
  ASTM thirty thirty-four.
  C seven hundred clay.
  That's class twenty-four.
  Built in thirty-six.
  The house is a thirty-six.
  House is from fifty-two.
  Looks like it was put in, fifties, fifty-five maybe.
  In eighty-four they redid the kitchen.
  The card's from forty-eight.
  It's been in the ground sixty years.
  Fifty year old clay.
  Warranty's twenty-five.
  Warranty's good for ten.
  It's number two in the queue.
  This is camera two.
  That's take two.
  One, two, three, okay it's recording.
  Testing one two.
  Channel sixteen.
  The tree's about fifteen feet over.
  That maple's ten, twelve feet from the line.
  The gas meter is eight feet left of the cleanout.
  Cleanout's about three feet off the wall.
  It's about twenty feet from the curb.
  The cleanout's fifteen feet from the street.
  The house sits back forty feet.
  The lot's fifty wide.
  It's a fifty foot lot.
  Garage is twenty by twenty.
  From the porch it's eleven steps.
  Street's thirty feet wide.
  The right of way's fifty.
  There's a twelve inch main out there.
  The water main's an eight.
  The main's a ten.
  It's an eight inch main, clay, manhole's two hundred feet down.
  There's a manhole forty feet up the street.
  Next manhole's about thirty down.
  The other manhole is fifty feet past the house.
  They'd need to cut a four by eight in the street.
  Four foot wide trench.
  Shoring's rated to twenty.
  The crack's about fourteen inches long.
  It's off by an inch, inch and a half.
  Gap's three quarters of an inch.
  About a half inch of drop.
  You could stick a twelve inch pipe wrench in there.
  There's two inches of water in here.
  It's holding water, inch, inch and a half.
  Mud's three inches deep.
  It's about a foot and a half of roots.
  The belly's about twelve feet long.
  It goes on like this for fifteen feet.
  I'd replace ten feet of it.
  You'd want to dig up about twelve feet.
  I'd line fifty feet of it.
  We'd need a fifteen foot liner.
  Give it a twelve by twelve pit.
  I'd say section from the sidewalk, ten or twelve feet of it, is shot.
  He wants twenty copies.
  Zip code's nine four five one eight.
  Case 26-1184.
  It's the I-40 side.
  Page one of two.
  Let me count, one, two, three.
  Two more to go.
  Give me ten.
  Give me two seconds.
  Copy that, ten four.
  Ten more minutes.
  I'd say it's eighty twenty that it's theirs.
  Nine times out of ten that's roots.
  It's a hundred percent roots.
  It's a twelve point buck on that fence.
  Got a one in a million chance.
  First of two.
  It was a size ten boot in there.
`;

const FOOTAGE = `
  22 | Coming up on twenty-two, tap on the left.
  22 | At twenty-two, tap on the left.
  22 | Tap on the left at twenty-two.
  22 | Twenty-two, tap on the left.
  22 | Twenty-two.
  22 | Okay, twenty-two.
  22 | Now we're at twenty-two.
  22 | We're sitting at twenty-two.
  22 | That's twenty-two.
  22 | That's at twenty-two.
  22 | It's at twenty-two.
  22 | Mark twenty-two.
  22 | Mark that at twenty-two.
  22 | Call it twenty-two.
  22 | I'm at twenty-two now.
  22 | Now twenty-two.
  22 | We just passed twenty-two.
  22 | Here at twenty-two there's a tap.
  22 | Right here, twenty-two, there's a tap on the left.
  22 | There's a tap, twenty-two.
  22 | Tap, twenty-two, left side.
  22 | Left side tap twenty-two.
  22 | Twenty-two feet, tap.
  22 | Twenty-two foot, tap.
  22 | Say twenty-two.
  22 | About twenty-two.
  22 | Around twenty-two, tap on the left.
  22 | Just under twenty-two.
  22 | That puts us at twenty-two.
  22 | Which is twenty-two.
  22 | So twenty-two on the tap.
  22 | Counter says twenty-two.
  22 | Counter, twenty-two.
  22 | Footage twenty-two.
  22 | Reading twenty-two.
  22 | Twenty-two on the counter.
  22 | Twenty-two on the screen.
  22 | Reads twenty-two.
  22 | You can see twenty-two feet there.
  22.5 | Twenty-two and a half.
  22.5 | Twenty-two five.
  22.5 | Twenty-two point five.
  22.5 | Tap at twenty-two five.
  22 | And another tap, that's at twenty-two.
  22 | Crack starts at twenty-two.
  22 | Goes to clay at twenty-two.
  22 | Clay begins at twenty-two.
  22 | Changes to cast at twenty-two.
  22 | Plastic quits at twenty-two.
  22 | Clay from twenty-two on.
  22 | From twenty-two on it's clay.
  22 | Roots. Twenty-two.
  22 | Roots, twenty-two.
  22 | Got roots. That was twenty-two.
  22 | We've got roots in the joint at, uh, twenty-two.
  22 | Bad joint, uh, twenty-two.
  22 | Offset joint, that's going to be twenty-two.
  22 | Tap on the left, looks like twenty-two.
  22 | Tap on the left, I've got twenty-two.
  22 | Tap on the left. Got twenty-two on it.
  22 | Past twenty-two now.
  22 | Twenty-two and counting.
  22 | Going past twenty-two, roots.
  22 | Roots once you hit twenty-two.
  22 | Once we get to twenty-two you see roots.
  22 | When I hit twenty-two I see roots.
  22 | There we are, twenty-two.
  22 | Let me see, twenty-two.
  22 | Tap at 22.
  22 | 22, tap left.
  22 | 22' tap left.
  22 | 22 ft tap left.
  22.4 | 22.4 tap left.
  22 | Dead on twenty-two.
  22 | Right on twenty-two.
  22 | Right at twenty-two.
  22 | Stop. Twenty-two.
  22 | Tap. Twenty-two. Left.
  22 | We're in about twenty-two.
  22 | In twenty-two feet.
  22 | Twenty-two in.
  22 | Twenty-two out.
  22 | Twenty-two feet out, tap.
  22 | Twenty-two feet from the cleanout.
  22 | Write down twenty-two.
  22 | Put down twenty-two for that tap.
  22 | Log that, twenty-two.
  22 | Note a tap at twenty-two.
  12 | Twelve. Tap.
  12 | Tap at twelve.
  12 | At twelve, tap, left.
  12 | Twelve feet, roots.
  12 | Twelve, roots in the joint.
  12 | I'm at twelve.
  12 | Okay twelve.
  9 | Nine, bad joint.
  9 | At nine there's a bad joint.
  9 | Nine feet.
  9.5 | Nine and a half, tap.
`;

// In captions without points a footage runs into the number that tells of its find.
const BESIDE_OTHERS = `
  52 | fifty two third tap on the right
  42 | forty two four inch clay
  42 | forty two feet four inch clay pipe
  33 | thirty three six inch wye on the left
  22 | twenty two tap three o'clock
  36 | thirty six ten o'clock there's a tap
  44 | forty four two cracks
  28 | twenty eight fifty percent roots
  28 | twenty eight roots fifty percent
  40 | at forty a twelve inch crack
  35 | thirty five five inch gap
  35.75 | thirty five and three quarters
  35.7 | thirty five point seven
  35.7 | thirty five seven
  30 | thirty feet two foot belly
  27 | twenty seven forty five degree bend
  38 | thirty eight one inch offset
  38 | thirty eight half inch offset
  24 | at twenty four there's three or four inches of water
  46 | forty six six o'clock hole
  46 | forty six at six o'clock hole
  21 | twenty one nine to three o'clock cracked
  50 | fifty ten percent deposits
  25.25 | twenty five feet three inches
  15 | fifteen feet that's nine oh two's
  20 | twenty tap that's number nine ten
  48 | forty eight feet eight inch main
  48 | forty eight belly about six feet of it
  48 | forty eight roots for the next four feet
  48 | forty eight crack runs two feet
  48 | forty eight crack two foot long
  48 | forty eight roots in three joints
  48 | forty eight there's a repair coupling four inch
  48 | forty eight tap at two o'clock
  48 | forty eight tap four inch two o'clock
  48 | forty eight tap sticking in two inches
  48 | forty eight tap sticks in about two
  48 | forty eight water's up to about four
  48 | forty eight water's at about half
  48 | forty eight open joint maybe two inch gap
  48 | forty eight depth's about nine
  48 | forty eight and it's about nine feet deep
  48 | forty eight that's right under the driveway about ten feet from the garage
  48 | forty eight roots ninety percent
  48 | forty eight I had to hit it three times
`;

/** Feet, read off in every talk below. */
const FRAME = [0, 6.2, 58.4, 70];

const TALKS: readonly (readonly [string, (words: string) => string])[] = [
  [
    "on the way to the main",
    (words) =>
      `0:00 Zero at the cleanout, clay pipe.\n0:20 Six point two, wye on the left.\n0:40 ${words}\n1:05 Fifty-eight four, crack on top.\n1:40 Seventy feet, we're at the main.`,
  ],
  [
    "on the way back from it",
    (words) =>
      `0:00 Zero at the main, pulling back.\n0:20 Six point two, wye on the left.\n0:40 ${words}\n1:05 Fifty-eight four, crack on top.\n1:40 Seventy feet, that's the cleanout.`,
  ],
  [
    "in captions without points",
    (words) =>
      `WEBVTT\n\n00:00:00.000 --> 00:00:05.000\nokay zero at the cleanout clay pipe\n\n00:00:20.000 --> 00:00:24.000\nsix point two wye on the left\n\n00:00:40.000 --> 00:00:44.000\n${spoken(words)}\n\n00:01:05.000 --> 00:01:09.000\nfifty eight four crack on top\n\n00:01:40.000 --> 00:01:44.000\nseventy feet we're at the main\n`,
  ],
];

function spoken(words: string): string {
  return words
    .toLowerCase()
    .replace(/[.,?](?!\d)/g, "")
    .replace(/-(?=\D)/g, " ");
}

function readings(text: string): number[] {
  const log = draftLog(text, { looks: "downstream", measuredFrom: null, mainCounter: null });
  return log.readings.map(({ counter }) => counter / 100);
}

function linesOf(text: string): string[] {
  return text
    .trim()
    .split("\n")
    .map((line) => line.trim());
}

describe.each(TALKS)("%s", (_, talk) => {
  test.each(linesOf(NO_FOOTAGE))("is no footage: %s", (words) => {
    expect(readings(talk(words))).toEqual(FRAME);
  });

  test.each(linesOf(FOOTAGE))("is a footage: %s", (line) => {
    const [feet, words = ""] = line.split(" | ");
    expect(readings(talk(words))).toEqual([0, 6.2, Number(feet), 58.4, 70]);
  });
});

test.each(linesOf(BESIDE_OTHERS))("is the footage of what follows: %s", (line) => {
  const [feet, words = ""] = line.split(" | ");
  const captions = TALKS.at(-1)?.[1] ?? String;
  expect(readings(captions(words))).toEqual([0, 6.2, Number(feet), 58.4, 70]);
});
