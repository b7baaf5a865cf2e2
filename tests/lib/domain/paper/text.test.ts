import { expect, test } from "vitest";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

function textOf(kind: (typeof LETTER_KINDS)[number], ownWords = ""): string {
  const notice = sampleNotice("lodz", "p18", { kind, tieInId: "T3", ownWords });
  return letterText(composeLetter({ ...sampleLine(), notice }));
}

test("letterText() keeps every line within 72 signs", () => {
  for (const kind of LETTER_KINDS) {
    const long = textOf(kind)
      .split("\n")
      .filter((line) => line.length > 72);
    expect(long).toEqual([]);
  }
});

test("letterText() says the drawing in sentences, from the main upstream", () => {
  const text = textOf("finding");
  const at = (words: string) => text.indexOf(words);
  expect(at("Public main at 0.0 ft.")).toBeGreaterThan(0);
  expect(at("T3 joins at 43.1 ft: owner unknown.")).toBeGreaterThan(at("Public main"));
  expect(at("Upper end at 96.0 ft.")).toBeGreaterThan(at("T3 joins"));
});

test("letterText() sets amounts of a narrow table under each other", () => {
  const rows = textOf("proposed-split")
    .split("\n")
    .filter((line) => /^(Equal shares|Rule) /.test(line));
  expect(rows).toHaveLength(2);
  expect(rows[0]?.length).toBe(rows[1]?.length);
});

test("letterText() keeps the office's own paragraphs apart, right after what is asked", () => {
  expect(textOf("finding", "First.\n\nSecond.")).toMatch(
    /Dear .*:\n\nPlease tell us[\s\S]*?\n\nFirst\.\n\nSecond\.\n\nWe are/,
  );
});

test("letterText() ends with the footer and its reference", () => {
  expect(textOf("finding")).toMatch(/-- \nBellwether Drain and Sewer .*ENNEL-7F2A1\n$/s);
});
