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

test("typedInEnglish() names the place where neighbors meet", () => {
  const line = sampleLine();
  const meeting = { id: "m", on: "2026-12-03", at: "18:30", until: "20:00", note: "" };
  const file = { ...line.file, meetings: [{ ...meeting, place: "Grange Hall" }] };
  const notice = sampleNotice("jesus", "p14", { kind: "meeting", language: "es" });
  expect(typedInEnglish({ ...line, file, notice })).toContain("the place of the meeting");
});

test("typedInEnglish() says nothing of an English letter, nor where no such text is printed", () => {
  expect(said("proposed-split", "en")).toBeNull();
  expect(said("drain-pause", "es")).toBeNull();
});
