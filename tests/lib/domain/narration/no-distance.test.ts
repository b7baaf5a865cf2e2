import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Numbers that are said while a camera runs and are no footage, each in the middle of a run, in its
// opening, behind a find, and in captions without points.

const SAID = [
  "It's fifty-eight degrees out and it rained two inches last night.",
  "We got an inch and a half of rain Sunday.",
  "Supposed to hit ninety today.",
  "Permit 04-1177, pulled in April of oh four.",
  "House was built in twenty-four, so the pipe's a hundred years old.",
  "Pipe's been in the ground since the fifties.",
  "He's got five kids and one bathroom.",
  "The neighbor at 24 wants a copy.",
  "That's twenty-six over there with the red door.",
  "Twenty-six is the red house.",
  "Mrs. Ortega in 22 called us.",
  "My knee's killing me, I'm fifty-three.",
  "I'm on my second battery, it's at forty percent.",
  "It's a two hundred foot reel.",
  "I charge two seventy-five for a camera.",
  "Insurance wants it by the twenty-fifth.",
  "Had a call at two in the morning.",
  "It's about ten thirty.",
  "This makes the third time this year.",
  "You'd need a twenty-four inch trench box.",
  "It's eight feet deep here.",
  "They're three foot joints.",
  "It's two-foot pipe, you can count the joints.",
  "Copy, channel four.",
  "Truck twenty-two's blocking the drive.",
  "Call me at 555-0126.",
  "Extension 24.",
  "My locator says six foot four.",
  "Sonde's at five twelve hertz.",
  "Recording's at four minutes twenty.",
  "It says 00:03:22 on the screen.",
  "Clip twenty-five.",
  "Quarter inch to the foot all the way.",
  "Jetter's at three thousand PSI and twelve gallons a minute.",
  "A hundred bucks says it's the willow.",
  "You could get two fingers in there.",
  "Lot 24.",
  "Unit twenty-four's tenant is home.",
  "Two ten's tenant said it gurgles.",
  "Speed limit's twenty-five, slow down.",
  "One more time.",
] as const;

const READ = [0, 11.5, 19.3, 30];

const WAYS: readonly (readonly [string, (words: string) => string])[] = [
  [
    "in the middle",
    (words) =>
      `0:00 Zero at the cleanout, clay pipe.\n0:20 Eleven point five, wye on the left.\n0:45 ${words}\n1:00 Nineteen three, crack on top.\n1:40 Thirty feet, we're at the main.`,
  ],
  [
    "in the opening",
    (words) =>
      `0:00 Morning. ${words}\n0:09 Okay, zero at the cleanout, clay pipe.\n0:25 Eleven point five, wye on the left.\n1:00 Nineteen three, crack on top.\n1:40 Thirty feet, we're at the main.`,
  ],
  [
    "behind a find",
    (words) =>
      `0:00 Zero at the cleanout, clay pipe.\n0:20 Eleven point five, wye on the left.\n1:00 Nineteen three, crack on top. ${words}\n1:40 Thirty feet, we're at the main.`,
  ],
  [
    "in captions",
    (words) =>
      `WEBVTT\n\n00:00:00.000 --> 00:00:05.000\nokay zero at the cleanout clay pipe\n\n00:00:20.000 --> 00:00:24.000\neleven point five wye on the left\n\n00:00:45.000 --> 00:00:49.000\n${words
        .toLowerCase()
        .replace(/[.,]/g, "")
        .replace(
          /-(?=\D)/g,
          " ",
        )}\n\n00:01:00.000 --> 00:01:04.000\nnineteen three crack on top\n\n00:01:40.000 --> 00:01:44.000\nthirty feet we're at the main\n`,
  ],
];

describe.each(WAYS)("a number said %s", (_, talk) => {
  test.each(SAID)("is no footage: %s", (words) => {
    const { readings, drafts } = draftLog(talk(words), {
      looks: "downstream",
      measuredFrom: null,
      mainCounter: null,
    });
    expect(readings.map(({ counter }) => counter / 100)).toEqual(READ);
    expect(drafts.map(({ kind, counter }) => [kind, counter])).toEqual([
      ["material", 0],
      ["tie-in", 1150],
      ["fault", 1930],
    ]);
  });
});
