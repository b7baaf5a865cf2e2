import { expect, test } from "vitest";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { capacitySheet } from "#lib/domain/packet/sheet-capacity.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFixture, aLevel } from "#tests/support/capacity.ts";
import {
  anAnchor,
  anAuthority,
  anObservation,
  anOffice,
  aRequirement,
  aRun,
} from "#tests/support/file.ts";
import { askingFor, sampleLine } from "#tests/support/sample-line.ts";

function sheetWith(change: Partial<ReturnType<typeof sampleLine>["file"]>) {
  const file = { ...sampleLine().file, ...change };
  const input = { file, report: reportOn(file, "2026-11-25"), office: anOffice() };
  return { input, sheet: capacitySheet(input) };
}

const KNOWN = {
  levels: [
    aLevel("main", { invert: 0, method: "level" }),
    aLevel("top", { station: 9_600, invert: 200, method: "level" }),
  ],
  fixtures: ["p12", "p14", "p16", "p18"].map((id) => aFixture(id)),
};

test("composePacket() has slope and load where the authority asks for them, known or not", () => {
  const kinds = (change: Parameters<typeof sheetWith>[0]) =>
    composePacket(sheetWith(change).input).sheets.map(({ kind }) => kind);
  expect(kinds({})).not.toContain("capacity");
  expect(kinds(KNOWN)).not.toContain("capacity");
  const authority = anAuthority({
    requirements: [aRequirement("slope", { sheet: "capacity", title: "Slope and load" })],
  });
  expect(kinds({ authority })).toContain("capacity");
  const check = composePacket(sheetWith({ authority }).input).checks[0];
  expect(check).toMatchObject({ requirementId: "slope", state: "missing" });
  expect(check?.sentence).toContain("Select the plumbing code");
});

test("capacitySheet() says “not a design” first and after every block of results", () => {
  const { sheet } = sheetWith({
    ...KNOWN,
    line: { ...sampleLine().file.line, plumbingCode: "ipc", diameter: 6 },
  });
  const [first, ...rest] = sheet?.blocks ?? [];
  expect(first).toMatchObject({ kind: "caution", title: "Not a design" });
  const headings = rest.flatMap((block) => (block.kind === "heading" ? [block.text] : []));
  expect(headings).toEqual([
    "Levels",
    "Slope between levels",
    "Load by the International Plumbing Code",
    "What a clean pipe carries, by Manning’s formula",
    "Tables used",
  ]);
  const again = rest.filter(
    (block) => block.kind === "paragraph" && block.text === "Not a design.",
  );
  expect(again).toHaveLength(3);
});

test("the line drawing leaves slope and load to their sheet, which draws them", () => {
  const { sheet, input } = sheetWith({
    ...KNOWN,
    line: { ...sampleLine().file.line, plumbingCode: "ipc" },
  });
  const titles = (bands: readonly { readonly title: string }[] = []) =>
    bands.map(({ title }) => title);
  const asked = askingFor(["responsibility", "split"], input);
  const drawing = composePacket(asked).sheets.find(({ kind }) => kind === "line-drawing")?.drawing;
  expect(titles(drawing?.bands)).toEqual(["Camera", "Flow of", "Responsible", "Cost"]);
  const plain = composePacket(input).sheets.find(({ kind }) => kind === "line-drawing")?.drawing;
  expect(titles(plain?.bands)).toEqual(["Camera", "Flow of"]);
  const strip = sheet?.blocks.find((block) => block.kind === "strip");
  expect(titles(strip?.kind === "strip" ? strip.drawing.bands : [])).toEqual(["Slope", "Load"]);
});

test("capacitySheet() prints each table with its edition, and nothing that was not read", () => {
  const { sheet } = sheetWith({
    ...KNOWN,
    line: { ...sampleLine().file.line, plumbingCode: "ipc" },
  });
  const last = sheet?.blocks.at(-1);
  const lines = last?.kind === "list" ? last.lines : [];
  expect(lines).toHaveLength(4);
  expect(lines[1]).toBe(
    "IPC Table 710.1(1), building drains and sewers: model code, 2018 and 2021 read alike. International Plumbing Code. The authority’s own edition decides.",
  );
  expect(lines.join(" ")).not.toMatch(/memory/i);
  expect(lines[3]).toContain("Manning’s n");
});

test("capacitySheet() says where a slope is an average over standing water, and gives it no flow", () => {
  const { sheet } = sheetWith({
    ...KNOWN,
    line: { ...sampleLine().file.line, plumbingCode: "ipc", diameter: 6 },
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    gaps: [],
    observations: [anObservation("w", { kind: "water", counter: 4_090, toCounter: 4_690 })],
  });
  const printed = JSON.stringify(sheet?.blocks);
  expect(printed).toContain("average only: standing water");
  expect(printed).toContain("That is only an average. Water stands from 40.9 to 46.9 ft");
  expect(printed).toContain(
    "0.0–96.0 ft: Water stands from 40.9 to 46.9 ft; no flow is calculated for a dip.",
  );
  expect(printed).not.toContain("gpm");
});
