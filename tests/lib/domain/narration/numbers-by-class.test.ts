import { describe, expect, test } from "vitest";
import type { NarrationRun } from "#lib/domain/narration/footage/run-told.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Each class of what numbers are said for, in ten ways of as many people; in runs whose footages
// leave room for any number.

const RUN: NarrationRun = { looks: "downstream", measuredFrom: null, mainCounter: null };
/** Feet, read off in each talk below. */
const FRAME = [0, 4.2, 88.4, 99];

const TALKS: readonly ((words: string) => string)[] = [
  (words) =>
    `0:00 Zero at the main, pulling back.\n0:20 Four point two, wye on the left.\n0:50 ${words}\n1:30 Eighty-eight four, crack on top.\n2:00 Ninety-nine feet, that's the cleanout.`,
  (words) =>
    `WEBVTT\n\n00:00:00.000 --> 00:00:05.000\nokay zero at the cleanout clay pipe\n\n00:00:20.000 --> 00:00:24.000\nfour point two wye on the left\n\n00:00:50.000 --> 00:00:54.000\n${withoutPoints(words)}\n\n00:01:30.000 --> 00:01:34.000\neighty eight four crack on top\n\n00:02:00.000 --> 00:02:04.000\nninety nine feet we're at the main\n`,
];

function withoutPoints(words: string): string {
  return words
    .toLowerCase()
    .replace(/[.,?](?!\d)/g, "")
    .replace(/-(?=\D)/g, " ");
}

function read(text: string): number[] {
  return draftLog(text, RUN)
    .readings.map(({ counter }) => counter / 100)
    .sort((a, b) => a - b);
}

const NO_FOOTAGE: Readonly<Record<string, string>> = {
  "score of a game": `
    Forty-one to thirty-seven at the half.
    They're up twenty-one to fourteen in the third.
    Twenty-eight to ten final.
    Seventeen to ten at halftime.
    It was thirty-one to twenty-four in overtime.
    We lost forty-two to thirty-five.`,
  "length of work done": `
    So they lined twenty-one feet and went home.
    Somebody replaced thirty feet of it.
    They relined forty feet in the nineties.
    He said they dug up twenty-five feet and quit.
    Whoever it was patched sixteen feet and left.`,
  "house, named just before": `
    Yeah, boss. House forty-one. We're at forty-one, you sent us for forty-one.
    No, it's house fifty-three. I'm at fifty-three.
    House number sixty-two. We're at sixty-two, aren't we?`,
  hour: `
    It's ten fifteen a.m.
    Ten fifteen a.m., Saturday.
    We rolled up about nine twenty.
    Quarter to eleven now.
    It's a little after two.
    Gotta be out of here by three thirty.
    Inspector's coming at one forty-five.
    Crew shows up around seven.
    School lets out at two fifty so the street fills up.
    Been here since seven thirty this morning.
    It's eleven oh five on my watch.
    Started recording at 9:52 a.m.
    Call it noon, noon ten.
    The city guy said between one and three.
    I told the lady two o'clock, it's already two twenty.`,
  date: `
    Today's the twenty-eighth.
    It's Saturday, November twenty-eight.
    Twenty-eighth of November, twenty twenty-six.
    Eleven, twenty-eight, twenty-six is the date.
    Date on the work order is ten thirteen.
    He closes on the house the fifteenth.
    Last one out here was the third of May.
    We did this same line back in twenty nineteen.
    The week of the twelfth we'll come dig.
    Permit was issued June eighteen of eighty-seven.`,
  address: `
    This is the sewer for fourteen through twenty-two Quince Court.
    Cleanout's at 18 Quince, side yard.
    We're out front of thirty-one.
    I went in at forty-four's front cleanout.
    So that'd be for thirty-eight.
    That's twenty-six' line.
    That's gotta feed twenty-eight.
    Twenty's got the big dog so watch it.
    Thirty-two and thirty-four are the two in back.
    Whoever's in thirty-six is running the shower.
    Sixteen through twenty-four all tie in to this.
    The gray one, that's twenty-two.
    Over here it's odd numbers, nineteen, twenty-one, twenty-three.
    That has to be eighteen's because twenty's is downstream.
    Customer's a Mr. Abbott, eighteen Quince.
    Apartment thirty over the garage.
    Her address is one eighteen, his is one twenty.
    Four doors down from forty-one.`,
  reference: `
    Work order six six one four.
    Job's number twenty-six dash four oh eight.
    Permit S dash nineteen dash two two seven.
    Ticket ends in forty-four.
    Invoice thirty-one eighteen.
    Case file twenty-two point four.
    My license number's three three oh one eight.
    Route nineteen was closed.
    PO is forty-seven.
    Permit fifty-five twelve, says four inch.`,
  phone: `
    His cell is five five five oh one eight eight.
    Call the office, 555-0142.
    Five five five, zero one, twenty-three is the number.
    Area code four one two.`,
  price: `
    That'd run about thirty-five hundred.
    He wanted sixty a foot for the liner.
    It's a forty dollar fitting.
    We're at twenty-eight fifty for the whole thing.
    Somebody quoted them eighteen.
    I charge one ninety-five for the camera.
    I wouldn't pay more than twenty for that.
    Figure eight to ten grand.`,
  counts: `
    That's number four.
    We've got five houses on this.
    There's two of 'em up here.
    Fourth one now.
    I've seen forty of these.
    Two guys and a mini excavator.
    I'd give it a three out of ten.
    It's like nineteen cracks in a row.
    One of the five is capped.
    He counted eleven, I get ten.`,
  depth: `
    We're about seven feet down here.
    It's only about three foot deep.
    Locator's showing eight six.
    Depth eight foot four.
    Nine feet of dirt over it.
    Sonde's calling it six and a half.
    I'm getting five eleven on depth.
    It drops down to eleven feet at the street.
    Figure you're eight, nine feet in the ground.`,
  frost: `
    I don't think anything freezes at six feet down with hot water in it.
    Frost line's at five feet around here.
    Frost goes down six feet some winters.
    The ground's froze to eight feet this year.
    It's buried ten feet.
    They buried it at twelve feet.
    You'd be shoveling nine feet of dirt.
    The water table's about eleven feet.
    It won't freeze at nine feet.
    Anything above six feet freezes up here.`,
  "the hour once more": `
    Roots at nine o'clock, I mean the clock, so yeah nine.
    It's at ten o'clock. Ten, yeah.
    Crack, eleven o'clock, call it eleven.
    That's nine o'clock. He says say the clock. So nine.
    Twelve o'clock, straight up, twelve.
    It's around ten o'clock, ten or so.`,
  "what is so long": `
    Four foot drop in here.
    There's a six foot fall to the road.
    I've got a ten foot ladder in the hole.
    It's a nine foot manhole.
    There's an eight foot riser on it.
    They want a fifteen foot easement.
    It's got a twelve foot ceiling down here.
    They dug a twenty foot trench.
    There's a thirty foot oak right over it.
    He parked a forty foot trailer on the lid.
    I'll need the sixty foot boom for that.
    The fifty foot rod won't make it.`,
  "cable and rods": `
    Bring the long rod, fifty feet.
    The short reel's eighty feet.
    This snake is only fifty feet.
    My little camera only goes sixty feet.
    The jetter hose is eighty feet long.
    We got the other cable, seventy-five feet.
    His rods quit at fifty feet.`,
  "priced by the foot": `
    Call it thirty foot, at a hundred ten a foot.
    Thirty feet at ninety a foot.
    So forty feet times a hundred and five.
    Say twenty feet, at one fifty per foot.
    Sixty dollars a foot, forty feet of it.
    A hundred a foot, fifty feet, five thousand.
    Figure thirty feet for thirty-three hundred.
    It's twenty feet, so two thousand bucks.
    About twelve feet at two hundred a foot installed.
    Thirty feet, that's three thousand dollars.`,
  size: `
    That's your four inch.
    Four on a six.
    It's a six by four wye.
    Six inch main, four inch laterals.
    It necks down to three.
    This is an eight, not a six.
    Goes six to four right here.
    The liner'd be a four.
    Schedule forty.
    SDR twenty-six maybe.
    The head on this camera's about an inch and a half.
    It's like a two inch lip.`,
  share: `
    I'd say it's thirty, forty percent.
    About a third full.
    Call it half to two thirds closed.
    Eighty percent of the pipe's gone.
    It's running a quarter per foot.`,
  weather: `
    Thirty-one degrees and sleet.
    Supposed to be forty tomorrow.
    We got two inches Thursday.
    Wind's about twenty.`,
  gear: `
    I got a two hundred footer on here.
    Battery's at forty.
    My reel's only got one thirty on it.
    There's maybe sixty feet of cable left.
    Five twelve on the sonde.
    I set the light at thirty.
    Head's spinning, it's twelve o'clock now.
    I gotta grab the other reel, this one's a hundred.`,
  elapsed: `
    We're four minutes into the video.
    Clip's at two thirty.
    At the five minute mark you'll hear a dog.
    Go to minute nine on the file.
    Took us forty-five minutes to get it open.
    Give it thirty seconds.
    I've been on this one twenty minutes.`,
  ground: `
    That's about ten feet from the oak.
    We're maybe fifteen feet out in the street.
    The lot's only forty wide.
    House is set back thirty feet.
    The curb's twelve feet that way.
    It's thirty feet from here to the sidewalk.
    Fence line is about twenty feet over.
    Manhole's sixty feet past her driveway.
    Two car lengths, say thirty feet, from the hydrant.
    You're about five feet off the porch.
    Gas is three feet to the left of us.`,
  another: `
    The one on Birch Street was at sixty.
    Last time we hit the roots at forty feet over at his mother's.
    Yesterday's job it was at thirty-five.
    My cousin's had one at twenty.`,
  "to do": `
    You'd want to replace maybe ten feet.
    I'd dig a four by six hole.
    We could spot repair six feet of it.
    It'll take about eighty feet of liner.`,
  speed: `
    I'm pulling about twenty feet a minute.
    Thirty feet a minute is what the city wants.`,
  people: `
    She's eighty-one, she's lived here since sixty-four.
    He's been doing this thirty-one years.
    My back's sixty and the rest of me is forty.
    Kid's nine.`,
  "guess of length": `
    I'm guessing it's about eighty to the main.
    Should be about sixty-five total.
    Supposed to be seventy feet to the tap.
    It'll be another thirty before we get there.
    We've got maybe forty to go.
    Only twenty more and we're there.`,
  "sports and others": `
    Cowboys lost by fourteen.
    That's twenty-four seven with this guy.
    Ten to one it's the willow.
    She bought a dozen, I ate four.
    Table for nine tonight.
    Channel nine said snow.
    Lane two's closed.`,
};

const FORMS = `
  22 | Twenty-two is where the tap is.
  22 | We're in twenty-two feet and there's a tap.
  22.5 | Twenty-two foot six.
  22.6 | Twenty-two point six oh.
  22.6 | Two two point six.
  22.5 | Twenty-two and a half-ish, tap.
  22.8 | Twenty-two eight, that's your tap.
  23 | Twenty-three on the nose.
  22.9 | It's reading twenty-two nine.
  23 | Twenty-three flat, offset.
  22 | At the twenty-two foot mark there's a tap.
  22 | Twenty-two foot mark, tap.
  22 | We've got a tap in at twenty-two.
  22 | I'm showing twenty-two.
  22 | Counter's at twenty-two.
  22 | Counter's on twenty-two, tap.
  22.3 | Footage is twenty-two three.
  22.3 | Display says twenty-two three.
  22.3 | Meter reads twenty-two three.
  22.3 | I've got twenty-two three on the screen.
  22.3 | 22 point 3 tap.
  22.25 | Twenty-two and a quarter.
  22 | Right around twenty-two feet.
  22.7 | Twenty-two seven left side tap.
  22.7 | Tap left side twenty-two seven.
  22.7 | So that tap was at twenty-two seven.
  22.7 | Bottom of the offset's at twenty-two seven.
  22 | Crack running from about twenty-two.
  22.5 | 22 1/2 wye on left
  22.5 | 22-1/2 tap
  22.5 | 22½ tap
  22.5 | 22 ½ ft tap
  22.5 | 22 1/2' tap
  22.25 | tap at 22 1/4
  22.75 | tap @ 22-3/4 ft
  22.5 | wye left 22 1/2
  22.5 | 22 1/2 joint offset 1/2"
  22.5 | 22' 6" tap
  22.6 | Twenty-two six tenths.
  22.3 | Twenty-two dot three, tap.
  22.1 | Tap at twenty-two and a tenth.`;

const PUT_RIGHT = `
  26.4 | Tap at twenty-four — make that twenty-six four.
  26.4 | Tap at twenty-four... well, twenty-six four.
  26.4 | Tap at twenty-four. Hmm, no. Twenty-six four.
  26.4 | Tap at twenty-four, the glare, twenty-six four.
  26.4 | Tap at twenty-four. Wait a minute. Twenty-six four.
  26.4 | Tap at twenty-four, what am I saying, twenty-six four.
  26.4 | Tap at twenty-four, beg your pardon, twenty-six four.
  26.4 | Tap at twenty-four, that should be twenty-six four.
  26.4 | I said twenty-four on that tap, it's twenty-six four.
  26.4 | Tap at twenty-four, ope, twenty-six four.
  26.4 | Twenty-four, scratch that, twenty-six four, tap.
  26.4 | Twenty-four six, I'm sorry, twenty-six four, tap.
  26.4 | Tap at twenty-four, excuse me, twenty-six four.
  26.4 | Tap at twenty-four, check that, twenty-six four.
  26.4 | Tap at twenty-four, no I read that wrong, twenty-six four.
  26.4 | Tap at twenty-four, or is it, yeah twenty-six four.
  26.4 | Tap at twenty-four, let me back up, twenty-six four.
  26.4 | Tap at twenty-four, oops, twenty-six four.
  26.4 | Tap at twenty-four, strike that, make it twenty-six four.
  26.4 | Tap at twenty-four, my bad, twenty-six four.
  26.4 | Tap at twenty-four. Not twenty-four, twenty-six four.
  26.4 | Tap at twenty-four. Twenty-six four, I mean.
  26.4 | Tap at twenty-four. Did I say twenty-four? Twenty-six four.
  26.4 | Tap at twenty-four. That's wrong. It's twenty-six four.
  26.4 | Tap at twenty-four... nope, twenty-six four.
  26.4 | Tap at twenty-four, I take that back, twenty-six four.
  26.4 | Tap at twenty-four, correction twenty-six point four.
  26.4 | Tap at twenty-four, glare on the screen, it's twenty-six four.`;

function lines(text: string): string[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
}

describe.each(Object.entries(NO_FOOTAGE))("%s is no footage", (_, said) => {
  test.each(lines(said))("%s", (words) => {
    for (const talk of TALKS) expect(read(talk(words))).toEqual(FRAME);
  });
});

describe.each([
  ["a footage is read in any form", FORMS],
  ["a footage that is put right is the second", PUT_RIGHT],
])("%s", (_, said) => {
  test.each(lines(said).map((line) => line.split(" | ")))("%s feet: %s", (feet, words = "") => {
    for (const talk of TALKS)
      expect(read(talk(words))).toEqual([...FRAME, Number(feet)].sort((a, b) => a - b));
  });
});

const NAMED = `
  Tee on the right, that's 18.
  Wye on the left. That's gonna be 20.
  So that's 22's.
  On the right side, 20.
  That one would be 18.
  22 just flushed, you can hear it.
  Mr. Haas ran his water and it came out here. So, 18.
  I'd say that's 20 and not 22.
  20 has a cleanout too.
  Somebody at 18 is home.
  The next house is 22.`;

test.each(lines(NAMED))("a house of the opening stays a house: %s", (words) => {
  for (const talk of TALKS) {
    const opened = talk(words)
      .replace("0:00 ", "0:00 This is for 18, 20 and 22 Chestnut Alley. ")
      .replace("okay zero", "This is for 18, 20 and 22 Chestnut Alley. okay zero");
    expect(read(opened)).toEqual(FRAME);
  }
});

test.each([
  "Wye at 20.",
  "20. Wye, left side.",
  "Counter says 20, crack on top.",
  "20 feet, roots.",
  "Crack on the right at 20.",
])("and a footage of the same number is a footage: %s", (words) => {
  const opened = (TALKS[0]?.(words) ?? "").replace(
    "0:00 ",
    "0:00 This is for 18, 20 and 22 Chestnut Alley. ",
  );
  expect(read(opened)).toEqual([...FRAME, 20].sort((a, b) => a - b));
});

test("a house named behind its street is none of the footages, nor where the camera went in", () => {
  const talk =
    "0:00 Right, Ferry Road, 62. Shared by 62, 64 and 68. In at 68, and I've shoved it down to the main.\n0:12 So that's the main, and I'll call that nought.\n0:30 Twelve and a half, joint dropped.\n0:50 Eighteen, connection, left. That's 62.";
  const log = draftLog(talk, RUN);
  expect(log.measuredFrom).toBe("main");
  expect(log.readings.map(({ counter }) => counter / 100)).toEqual([0, 12.5, 18]);
});

test("a number behind `no.` is no denial, and `con ocho` is tenths", () => {
  expect(
    read("0:00 Zero at the main, pulling back.\n0:30 38 tee coming in right. no. 7. card says 32."),
  ).toEqual([0, 38]);
  expect(
    read(
      "0:00 Cero en la principal.\n0:30 Está quebrado. A los veintiséis, no, perdón, veintiséis con ocho.",
    ),
  ).toEqual([0, 26.8]);
});
