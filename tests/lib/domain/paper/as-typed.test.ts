import { expect, test } from "vitest";
import { typedInEnglish } from "#lib/domain/paper/as-typed.ts";
import { anEvent } from "#tests/support/file.ts";
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

test("typedInEnglish() names the place of a meeting and the reason of a change order", () => {
  const line = sampleLine();
  const where = anEvent("m", { event: "meeting", reference: "Grange Hall" });
  const file = { ...line.file, events: [...line.file.events, where] };
  const notice = sampleNotice("jesus", "p14", { kind: "meeting", language: "es" });
  expect(typedInEnglish({ ...line, file, notice })).toContain("the place of a meeting");
});

test("typedInEnglish() says nothing of an English letter, nor where no such text is printed", () => {
  expect(said("proposed-split", "en")).toBeNull();
  expect(said("drain-pause", "es")).toBeNull();
});
