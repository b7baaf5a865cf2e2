import fs from "node:fs";
import { expect, test } from "vitest";
import { LETTER_KINDS, LETTERS } from "#lib/domain/facts/letter-kind.ts";
import { LETTER_PLANS } from "#lib/domain/paper/kinds/index.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";

const FOLDER = new URL("../../../../lib/domain/paper/kinds/", import.meta.url);

test("each kind of letter has its plan in a file of its own name, and no file is left over", () => {
  const files = fs.readdirSync(FOLDER).filter((name) => name !== "index.ts");
  expect(files.sort()).toEqual(LETTER_KINDS.map((kind) => `${kind}.ts`).sort());
  expect(Object.keys(LETTER_PLANS).sort()).toEqual([...LETTER_KINDS].sort());
});

test("each kind of letter has a title of its own in every language, a purpose and cautions", () => {
  for (const language of LANGUAGES) {
    const titles = Object.values(LETTER_PLANS).map(({ title }) => title[language]);
    expect(titles.every((title) => title.trim() !== "")).toBe(true);
    expect(new Set(titles).size).toBe(titles.length);
  }
  for (const kind of LETTER_KINDS) {
    const { title, cautions } = LETTER_PLANS[kind];
    expect(title.es).not.toBe(title.en);
    expect(cautions.length).toBeGreaterThan(0);
    expect(LETTERS[kind].purpose).toMatch(/^To .+\.$/);
    expect(LETTERS[kind].said).toMatch(/^\p{Ll}/u);
  }
});
