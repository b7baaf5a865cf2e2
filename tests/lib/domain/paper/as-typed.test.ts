import { expect, test } from "vitest";
import { typedInEnglish } from "#lib/domain/paper/as-typed.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

function said(kind: "proposed-split" | "finding" | "drain-pause", language: "en" | "es") {
  const notice = sampleNotice("jesus", "p14", { kind, language, ownWords: "Replace pipe" });
  return typedInEnglish({ ...sampleLine(), notice });
}

test("typedInEnglish() names what a Spanish letter prints as the office typed it", () => {
  expect(said("proposed-split", "es")).toContain(
    "This Spanish letter contains English text typed in work items",
  );
  expect(said("finding", "es")).toContain("access points of camera runs");
  expect(said("finding", "es")).not.toContain("work items");
});

test("typedInEnglish() says nothing of an English letter, nor where no such text is printed", () => {
  expect(said("proposed-split", "en")).toBeNull();
  expect(said("drain-pause", "es")).toBeNull();
});
