import { expect, test } from "vitest";
import { partsOf } from "#app/lines/[lineId]/parts.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aScopeItem, aTestDay, aTestStop } from "#tests/support/file.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

/** The pages of the question on record and camera where work is left. */
function open(file: LineFile): string[] {
  return partsOf("reconcile", file, reportOn(file, "2026-11-25"))
    .filter((part) => part.open)
    .map(({ slug }) => slug);
}

test("what is left to match and to find out is open, and closes once a person has decided it", () => {
  const { file } = sampleLine();
  expect(open(file)).toEqual(["match", "undocumented"]);
  const explained = {
    ...file,
    entries: file.entries.map((entry) =>
      entry.id === "e20" ? { ...entry, explanation: "Never built" } : entry,
    ),
  };
  expect(open(explained)).toEqual(["undocumented"]);
  const accepted = {
    ...explained,
    tieIns: file.tieIns.map((tieIn) => ({ ...tieIn, ownerAccepted: true, propertyId: "p12" })),
  };
  expect(open(accepted)).toEqual([]);
});

test("a record that reads short is to line up until a person accepts the shift", () => {
  const { file } = sampleLine();
  const short = {
    ...file,
    pairings: [],
    entries: file.entries.map((entry) =>
      entry.distance === null ? entry : { ...entry, distance: entry.distance - 240 },
    ),
  };
  expect(open(short)).toContain("line-up");
});

test("a planned test day is open while a stop has no result", () => {
  const { file } = sampleLine();
  const stop = aTestStop("p12", { tieInIds: ["T3"] });
  const planned = { ...file, testDays: [aTestDay([stop])] };
  expect(open(planned)).toContain("test-day");
  const dosed = {
    ...file,
    testDays: [aTestDay([{ ...stop, propertyId: null, passed: "positive" }])],
  };
  expect(open(dosed)).not.toContain("test-day");
});

test("the pages on cost lead from the work to the rule that is to be chosen", () => {
  const { file } = sampleLine();
  const costParts = (line: LineFile) => partsOf("cost", line, reportOn(line, "2026-11-25"));
  const openIn = (line: LineFile) =>
    costParts(line).flatMap(({ slug, open: isOpen }) => (isOpen ? [slug] : []));
  const bare = { ...file, scope: [], splits: [], options: [], changeOrders: [], ledger: [] };
  expect(openIn(bare)).toEqual([""]);
  expect(costParts(bare).map(({ slug }) => slug)).not.toContain("options");
  const priced = { ...bare, scope: [aScopeItem("dig")] };
  expect(openIn(priced)).toEqual(["choose"]);
  const several = {
    ...priced,
    options: ["one", "two"].map((id) => ({ id, title: id, kind: "other" as const, note: "" })),
    scope: [aScopeItem("dig", { optionId: "one" }), aScopeItem("line", { optionId: "two" })],
  };
  expect(openIn(several)).toEqual(["options"]);
});

test("no page of a closed file is open", () => {
  const { file } = sampleLine();
  expect(open({ ...file, line: { ...file.line, closedOn: "2026-11-20" } })).toEqual([]);
});
