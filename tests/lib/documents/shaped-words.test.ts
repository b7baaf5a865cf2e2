import fs from "node:fs";
import { createRequire } from "node:module";
import * as fontkit from "@cantoo/fontkit";
import { expect, test } from "vitest";
import { rememberShapes, type Shaping } from "#lib/documents/shaped-words.ts";

const FILE = createRequire(import.meta.url).resolve(
  "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf",
);
const WORDS = "The office “Łódź” affirms: T2, 28.1 ft.";

function face(): Shaping {
  return fontkit.create(fs.readFileSync(FILE)) as unknown as Shaping;
}

function counted(most?: number): { readonly shaping: Shaping; readonly asked: string[] } {
  const shaping = face();
  const shape = shaping.layout.bind(shaping);
  const asked: string[] = [];
  shaping.layout = (text, ...rest) => {
    asked.push(text);
    return shape(text, ...rest);
  };
  rememberShapes(shaping, most);
  return { shaping, asked };
}

const usual = (shaping: Shaping, text: string) =>
  shaping.layout(text, [], undefined, undefined, "ltr");

test("rememberShapes() shapes a text once, and as the typeface itself does", () => {
  const { shaping, asked } = counted();
  const first = usual(shaping, WORDS);
  expect(usual(shaping, WORDS)).toBe(first);
  expect(asked).toEqual([WORDS]);
  const alone = usual(face(), WORDS);
  expect(first.positions).toEqual(alone.positions);
  expect(first.glyphs.length).toBe(alone.glyphs.length);
});

test("rememberShapes() gives nothing that a reader could change for the next one", () => {
  const { shaping } = counted();
  const { glyphs, positions } = usual(shaping, WORDS);
  expect(() => (glyphs as unknown[]).pop()).toThrow(TypeError);
  const [position] = positions as { xAdvance: number }[];
  if (position === undefined) throw new Error("Nothing was shaped");
  expect(() => {
    position.xAdvance = 0;
  }).toThrow(TypeError);
});

test("rememberShapes() keeps nothing that is asked with features, and forgets before it grows", () => {
  const { shaping, asked } = counted(20);
  for (let round = 0; round < 2; round += 1)
    shaping.layout(WORDS, ["tnum"], undefined, undefined, "ltr");
  expect(asked.length).toBe(2);
  usual(shaping, "first");
  usual(shaping, "sixteen letters x");
  usual(shaping, "first");
  expect(asked.filter((text) => text === "first").length).toBe(2);
});
