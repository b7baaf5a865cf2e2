import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { composeAsBuilt } from "#lib/domain/packet/as-built.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aDrawingItem } from "#tests/support/application.ts";
import {
  aFile,
  anAuthority,
  anObservation,
  anOffice,
  aPermit,
  aProperty,
  aRun,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";
import { aBuiltPiece } from "#tests/support/plan.ts";

const TODAY = "2026-11-25";

/** A clay pipe with a crack at 10 ft that was dug up from 5 to 15 ft; houses 12 and 14 join above. */
function aLine(rest: Omit<Partial<LineFile>, "line"> = {}, line: Partial<LineFile["line"]> = {}) {
  const file = aFile({
    properties: [aProperty("12"), aProperty("14")],
    runs: [aRun("before", { measuredFrom: "main", looks: "upstream", toCounter: 9_000 })],
    observations: [
      anObservation("crack", { runId: "before", kind: "fault", fault: "crack", counter: 1_000 }),
    ],
    tieIns: [
      aTieIn("T1", { station: 3_000, propertyId: "12", side: "left", ownerAccepted: true }),
      aTieIn("T2", { station: 5_000, propertyId: "14", side: "right" }),
    ],
    scope: [
      aScopeItem("dig", {
        title: "Dig and replace",
        kind: "dig-and-replace",
        place: "stretch",
        from: 500,
        to: 2_000,
      }),
      aScopeItem("cap", { title: "Cap T2", kind: "cap", place: "branch", tieInId: "T2" }),
    ],
    built: ["dig", "cap"].map((itemId) => ({
      id: itemId,
      itemId,
      on: "2026-11-23",
      by: "Marek Sandoval",
      words: "",
      uploadId: null,
    })),
    builtPieces: [aBuiltPiece("p", { depthFrom: 700, depthTo: 720, slope: 210 })],
    permits: [aPermit("permit", { number: "SS-1" })],
    ...rest,
  });
  return {
    ...file,
    line: {
      ...file.line,
      material: "vitrified-clay",
      diameter: 6,
      upperEnd: 9_000,
      ...line,
    } satisfies LineFile["line"],
  };
}

function composed(file: LineFile) {
  return composeAsBuilt({ file, report: reportOn(file, TODAY), office: anOffice() });
}

function drawn(file: LineFile) {
  return composed(file).sheets.find(({ drawing }) => drawing !== null)?.drawing;
}

describe("composeAsBuilt()", () => {
  test("draws the new pipe in the place of the old one, and what was measured below it", () => {
    const drawing = drawn(aLine());
    expect(drawing?.pipes.map(({ from, to, words }) => [from, to, words])).toEqual([
      [0, 500, "6 in vitrified clay"],
      [500, 1_500, "6 in PVC"],
      [1_500, 9_000, "6 in vitrified clay"],
    ]);
    const band = (title: string) => drawing?.bands.find((each) => each.title === title)?.cells;
    expect(band("As built")).toMatchObject([
      { from: 500, to: 1_500, words: "replaced 5.0 to 15.0 ft" },
    ]);
    expect(band("Invert")).toMatchObject([{ words: "7.0 to 7.2 ft deep" }]);
  });

  test("draws nothing as built that is only priced, and no defect from before the work", () => {
    const file = aLine({ built: [], builtPieces: [aBuiltPiece("p")] });
    const drawing = drawn(file);
    expect(drawing?.pipes.map(({ words }) => words)).toEqual(["6 in vitrified clay"]);
    expect(drawing?.bands.map(({ title }) => title)).not.toContain("As built");
    expect(drawing?.onPipe.map(({ kind }) => kind)).toEqual(["main", "upper-end"]);
    expect(composed(file).missing).toEqual(
      expect.arrayContaining([
        "Nothing is recorded as built.",
        "“Dig and replace” is not recorded as done.",
        "“Cap T2” is not recorded as done.",
      ]),
    );
  });

  test("says of each branch what became of it", () => {
    const drawing = drawn(aLine());
    expect(drawing?.below.map(({ label, detail }) => [label, detail])).toEqual([
      ["T1", "12 Fennel Row, not on record"],
      ["T2", "capped"],
    ]);
    const text = JSON.stringify(composed(aLine()).sheets[0]?.blocks);
    expect(text).toContain(
      '["T1","30.0","left","4 in clay","12 Fennel Row","in use, not changed"]',
    );
    expect(text).toContain("capped, November 23, 2026");
    expect(text).toContain(
      '["replaced","5.0 to 15.0","6 in PVC","7.0 to 7.2","2.1%","Marek Sandoval, November 24, 2026","–"]',
    );
  });

  test("names what a clerk would send back, and has a plan view only with a bearing", () => {
    const bare = aLine({
      builtPieces: [aBuiltPiece("p", { material: "unknown", diameter: null })],
      permits: [aPermit("permit", { number: "" })],
    });
    expect(composed(bare).missing).toEqual([
      "Replaced 5.0 to 15.0: material, size, and depth to the invert not entered.",
      "No plan view and no north arrow: the bearing at the main connection is not entered.",
      "No point of the line is tied to fixed points.",
      "The distance of the main connection from the downstream manhole is not entered.",
      "The number of the side sewer permit is not entered.",
    ]);
    const plan = (file: LineFile) => composed(file).sheets.flatMap(({ plans }) => plans)[0];
    expect(plan(bare)).toBeUndefined();
    const words = plan(aLine({}, { bearing: 90 }))?.shapes.flatMap((shape) =>
      shape.kind === "words" ? [shape.text] : [],
    );
    expect(words?.join(" ")).toContain("replaced, 5.0 to 15.0 ft");
    expect(words?.join(" ")).not.toContain("20.0 ft");
  });

  test("holds the as-built against the authority’s drawing checklist, depths by the new pipe", () => {
    const authority = anAuthority({
      drawingItems: [aDrawingItem("inverts"), aDrawingItem("ties")],
    });
    const shallow = composed({ ...aLine({ builtPieces: [aBuiltPiece("p")] }), authority });
    expect(shallow.missing.filter((words) => words.includes(": "))).toEqual(
      expect.arrayContaining([
        expect.stringContaining("not entered for both ends of each piece of new pipe"),
        expect.stringContaining("No point is tied to fixed points."),
      ]),
    );
    const measured = composed({ ...aLine(), authority });
    expect(measured.missing.join(" ")).not.toContain("both ends");
    expect(JSON.stringify(measured.sheets[0]?.blocks)).toContain("☑ shown");
  });
});
