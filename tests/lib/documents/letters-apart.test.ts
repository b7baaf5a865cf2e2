import { expect, test } from "vitest";
import { joinParts } from "#lib/documents/join-pdf.ts";
import { drawLetters, sharesOf } from "#lib/documents/letters-apart.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const ABOUT = { title: "", author: "", subject: "", language: "en", day: "2026-11-25" };

function letterTo(name: string, overrides: Partial<Letter> = {}): Letter {
  const notice = sampleNotice("lodz", "p18", { kind: "drain-pause" });
  const letter = composeLetter({ ...sampleLine(), notice });
  return { ...letter, to: [name, ...letter.to.slice(1)], ...overrides };
}

function tasksOf(letters: readonly Letter[]) {
  return letters.map((letter) => ({ letter, enclosed: null }));
}

async function printed(letters: readonly Letter[], processes: number): Promise<Uint8Array> {
  const parts = await drawLetters(tasksOf(letters), new Map(), processes);
  return (await joinParts(parts, ABOUT)).save();
}

test("letters that two processes draw come out in order, the same byte for byte", async () => {
  const letters = ["One", "Two", "Three"].map((name) => letterTo(name));
  const [apart, here] = [await printed(letters, 2), await printed(letters, 1)];
  expect(Buffer.compare(apart, here)).toBe(0);
  const parts = await drawLetters(tasksOf(letters), new Map(), 2);
  expect(parts.map(({ title }) => title.split(":")[0])).toEqual(["One", "Two", "Three"]);
});

test("what the other process refuses is refused in the same words", async () => {
  const letters = [letterTo("One"), letterTo("Two", { subject: "Line \u{1F6BD} seven" })];
  await expect(printed(letters, 2)).rejects.toThrow(/letter to Two/);
});

test("each process has a share, in order, the first one more: the others have to start", () => {
  const numbers = (count: number) => Array.from({ length: count }, (_, at) => at);
  for (const [letters, processes] of [
    [1, 1],
    [3, 2],
    [41, 2],
    [100, 2],
    [101, 4],
  ] as const) {
    const shares = sharesOf(numbers(letters), processes);
    expect(shares).toHaveLength(processes);
    expect(shares.flat()).toEqual(numbers(letters));
    expect(shares.every((share) => share.length > 0)).toBe(true);
  }
  expect(sharesOf(numbers(100), 2).map((share) => share.length)).toEqual([60, 40]);
});
