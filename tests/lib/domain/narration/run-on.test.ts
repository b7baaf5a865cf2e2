import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function feetIn(text: string): number[] {
  return draftLog(text, RUN).readings.map(({ counter }) => counter / 100);
}

const caption = (second: number, words: string) =>
  `00:${String(Math.floor(second / 60)).padStart(2, "0")}:${String(second % 60).padStart(2, "0")}.000 --> 00:${String(Math.floor(second / 60)).padStart(2, "0")}:${String((second % 60) + 5).padStart(2, "0")}.000\n${words}\n`;

describe("a footage in talk without points is one, whatever stands before its opener or goes on behind it", () => {
  test.each([
    [27.9, "somebody knocked a hole in it and stuck a pipe in and mortared it twenty seven nine"],
    [27.9, "there's a tap on the right that nobody ever told us of twenty seven nine"],
    [27.5, "offset joint bad enough to feel it then twenty seven and a half there's a wye"],
    [31, "we're going under water now thirty one and we stay in the water"],
    [27.9, "roots thick as a horse tail okay twenty seven nine there's a wye on the right"],
    [27, "joint kicked over where the truck parks so twenty seven wye on the left"],
    [27.4, "crack and the owner put a birdbath right on it twenty seven four"],
    [27.6, "see that hole that's what the dog heard twenty seven six"],
    [30, "roots and they quit there about thirty feet"],
    [27, "she's squashed from that truck anyway twenty seven wye left side"],
  ])("%s: %s", (feet, words) => {
    const talk = `WEBVTT\n\n${[
      caption(0, "okay zero at the cleanout clay pipe"),
      caption(20, "four point two wye on the left"),
      caption(60, words),
      caption(110, "eighty eight four crack on top"),
    ].join("\n")}`;
    expect(feetIn(talk)).toEqual([0, 4.2, feet, 88.4]);
  });
});

test("in notes whose lines begin with their footage, each does", () => {
  const notes =
    '4.2 - crack on top\n9 - tap on the left\n13.5 joint pulled apart\n17 reducer to 4" and ugly\n24.6 tap right\n38 hard stop\nLeft at 11. Invoice 2207.';
  expect(feetIn(notes)).toEqual([4.2, 9, 13.5, 17, 24.6, 38]);
});

test("so many counted is no summary, and the talk goes on", () => {
  const talk =
    "0:00 Zero at the cleanout.\n0:20 Eight, wye on the left.\n0:40 Twenty-two, wye on the right. So that makes two.\n1:00 And a crack, starts at thirty-three.\n1:20 Forty-one, that's the main.";
  expect(feetIn(talk)).toEqual([0, 8, 22, 33, 41]);
});

test("a footage that comes at once is nearer than one long ago", () => {
  const talk =
    "0:00 Zero at the cleanout, cast iron.\n0:20 We're at eight feet now.\n0:27 Right there, see that? That's where they went to clay. Ten four.\n0:50 Twenty, wye on the left.";
  expect(draftLog(talk, RUN).drafts.map(({ kind, counter }) => [kind, counter])).toContainEqual([
    "material",
    1040,
  ]);
});

describe("the zero told in Spanish", () => {
  test.each([
    "Entré por el cleanout, empujé hasta la principal, y ahí le puse cero. Ya vengo de regreso.",
    "Empujamos hasta la principal y el contador en cero ahí.",
    "Llegué a la principal, cero.",
  ])("%s", (words) => {
    const { measuredFrom } = draftLog(
      `0:00 ${words}\n0:20 A los cinco pies una junta abierta.\n0:50 Raíces, catorce.`,
      RUN,
    );
    expect(measuredFrom).toBe("main");
  });

  test("and `de seis` is a size", () => {
    expect(feetIn("0:00 Esto es barro, de seis. A los cinco pies una junta abierta.")).toEqual([5]);
  });
});

test("what the record is guessed to say is no footage", () => {
  const talk =
    "0:00 Zero at the main.\n0:20 Thirty-eight four, wye.\n0:30 Card says 40 something, can't read it. 40 or 46.\n0:50 Fifty-nine, crack.";
  expect(feetIn(talk)).toEqual([0, 38.4, 59]);
});

test("`so that one’s` points back to what was told before it", () => {
  const talk =
    "0:00 Zero at the cleanout.\n0:20 Twenty, wye on the left.\n1:10 There's the other connection on the right and it's got some roots in it up in there, so that one's forty and a half.\n1:40 Sixty, that's the main.";
  const { drafts } = draftLog(talk, RUN);
  expect(drafts.map(({ kind, counter }) => [kind, counter])).toContainEqual(["tie-in", 4050]);
});

test.each([
  ["and thirty-one, cast iron from here on up", [8, 31, 60]],
  ["and thirty-one and a half, another wye, on the right", [8, 31.5, 60]],
])("a crack is not at the next footage: %s", (words, feet) => {
  const talk = `0:00 Zero at the cleanout.\n0:10 Eight, wye on the left.\n0:40 Crack in it right here, up top.\n0:46 ${words}.\n1:40 Sixty, that's the main.`;
  const { drafts, readings } = draftLog(talk, RUN);
  expect(readings.map(({ counter }) => counter / 100)).toEqual([0, ...feet]);
  expect(drafts.find(({ fault }) => fault === "crack")?.reading).toBe("between");
});

test("`maybe three, four feet of it` is a length", () => {
  expect(
    feetIn("0:00 Zero at the cleanout.\n0:20 Twelve, grease, maybe three, four feet of it."),
  ).toEqual([0, 12]);
});
