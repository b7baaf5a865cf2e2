import { describe, expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// Some count the joints as they go. None of these numbers is a footage; what is read off between is.

const RUN = { looks: "downstream", measuredFrom: null, mainCounter: null } as const;

function read(lines: readonly string[]): number[] {
  const said = ["Zero at the cleanout.", ...lines, "Sixty-one two, that's the main."];
  const cues = said.map((line, at) => {
    const [minute, second] = [Math.floor((at * 15) / 60), (at * 15) % 60];
    return `00:${String(minute).padStart(2, "0")}:${String(second).padStart(2, "0")}.000 --> 00:${String(minute).padStart(2, "0")}:${String(second + 9).padStart(2, "0")}.000\n${line}\n`;
  });
  return draftLog(`WEBVTT\n\n${cues.join("\n")}`, RUN).readings.map(({ counter }) => counter / 100);
}

const bare = (line: string) => line.replace(/[.,;](?!\d)/g, "").toLowerCase();

const COUNTED: Readonly<Record<string, string>> = {
  "joint by joint": `Six feet, old clay.
Joint one.
Joint two, clean.
Fourteen five. Joint three, a few roots.
Joint four, nothing.
Joint five, shifted, twenty-one three.
Six.
Joint seven, fine.
Joint eight, crack on top. Thirty point four.
Nine, fine.
Ten, good.
Joint eleven is pulled apart. Thirty-nine seven.
Joint twelve.`,
  "sections with numbers": `Six feet, old clay.
Section number one, good.
Section number two.
Fourteen five. Section three, roots.
Section five, okay, twenty-one three.
Section number eight, crack. Thirty point four.
Section eleven open at the bell. Thirty-nine seven.
Section twelve.`,
  "sticks and the next": `Six feet, old clay.
This is stick two.
That's stick three.
Fourteen five. Stick four has roots.
Stick six is fine, twenty-one three on the counter.
Stick nine is cracked. Thirty point four.
Stick twelve. Thirty-nine seven.
Thirteen. Fourteen, good.`,
};

describe.each(Object.entries(COUNTED))("%s", (_, text) => {
  test.each([
    ["with points", (line: string) => line],
    ["without", bare],
  ])("%s", (_way, way) => {
    expect(read(text.split("\n").map((line) => way(line)))).toEqual([
      0, 6, 14.5, 21.3, 30.4, 39.7, 61.2,
    ]);
  });
});

test("a joint whose number is its footage is read off", () => {
  const lines = ["Offset joint, twelve.", "Open joint twenty-six.", "Joint thirty-one, roots."];
  expect(read(lines)).toEqual([0, 12, 26, 31, 61.2]);
});

test("feet read off one after another are each a reading", () => {
  expect(read(["Four feet, five feet, good.", "Twelve even."])).toEqual([0, 4, 5, 12, 61.2]);
  expect(read(["four foot five foot it's alright", "twelve even"])).toEqual([0, 4, 5, 12, 61.2]);
  expect(read(["Maybe four feet, five feet, a tap.", "Twelve even."])).toEqual([0, 4.5, 12, 61.2]);
});
