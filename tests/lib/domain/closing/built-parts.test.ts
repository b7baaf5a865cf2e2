import { describe, expect, test } from "vitest";
import { asBuiltOf } from "#lib/domain/closing/built-parts.ts";
import type { BuiltWork } from "#lib/domain/facts/built.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  anAnchor,
  anObservation,
  aProperty,
  aRun,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";
import { aBuiltPiece, aReconnection } from "#tests/support/plan.ts";

const DONE: BuiltWork = {
  id: "word",
  itemId: "dig",
  on: "2026-11-23",
  by: "Marek Sandoval",
  words: "",
  uploadId: null,
};

/** House 12 joins at 30 ft; the pipe from 5 to 15 ft is dug up and replaced, and that is recorded as done. */
function aLine(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  return aFile({
    properties: [aProperty("12")],
    tieIns: [aTieIn("T1", { station: 3_000, propertyId: "12" })],
    scope: [
      aScopeItem("dig", {
        title: "Dig",
        kind: "dig-and-replace",
        place: "stretch",
        from: 500,
        to: 1_500,
      }),
    ],
    built: [DONE],
    ...rest,
  });
}

function asBuilt(file: LineFile) {
  return asBuiltOf(file, reportOn(file, "2026-11-25"));
}

describe("asBuiltOf()", () => {
  test("takes nothing that is only priced for built", () => {
    expect(asBuilt(aLine({ built: [] }))).toEqual({
      parts: [],
      open: ["“Dig” is not recorded as done."],
    });
    expect(asBuilt(aLine())).toEqual({
      parts: [],
      open: ["“Dig” is recorded as done; where it lies was not measured."],
    });
  });

  test("takes a measurement that somebody put a name and a day to, the lower end first", () => {
    const turned = aBuiltPiece("p", { from: 1_520, to: 480, depthFrom: 900, depthTo: 700 });
    expect(asBuilt(aLine({ builtPieces: [turned] }))).toMatchObject({
      parts: [
        {
          id: "p",
          kind: "replaced",
          from: 480,
          to: 1_520,
          depthFrom: 700,
          depthTo: 900,
          material: "pvc",
          by: "Marek Sandoval",
          on: "2026-11-24",
          differs: "",
        },
      ],
      open: [],
    });
  });

  test.each([
    [{ measuredBy: " " }, "no one is named who measured it."],
    [{ measuredOn: null }, "the day on which it was measured is not entered."],
    [{ from: null, to: null }, "its station is not entered."],
  ])("does not draw a measurement without %o", (without, why) => {
    const { parts, open } = asBuilt(aLine({ builtPieces: [aBuiltPiece("p", without)] }));
    expect(parts).toEqual([]);
    expect(open.at(-1)).toContain(why);
  });

  test("does not draw what was measured of work that nobody recorded as done", () => {
    const { parts, open } = asBuilt(aLine({ built: [], builtPieces: [aBuiltPiece("p")] }));
    expect(parts).toEqual([]);
    expect(open).toContain("Replaced from 5.0 to 15.0 ft: “Dig” is not recorded as done.");
    const whole = aLine({ built: [{ ...DONE, itemId: null }], builtPieces: [aBuiltPiece("p")] });
    expect(asBuilt(whole).parts).toHaveLength(1);
  });

  test("a branch that was seen open again is reconnected where that video shows it", () => {
    const liner = aScopeItem("dig", { kind: "line", place: "stretch", from: 1_000, to: 6_000 });
    const file = aLine({
      scope: [liner],
      builtPieces: [aBuiltPiece("p", { kind: "lined", from: 1_000, to: 6_000 })],
      runs: [aRun("after", { name: "Run 3", ranOn: "2026-11-24" })],
      anchors: [anAnchor("zero", { runId: "after", counter: 0, station: 0 })],
      observations: [anObservation("seen", { runId: "after", counter: 3_010, tieInId: "T1" })],
      reconnections: [
        aReconnection("r", { openedRunId: "after", openedSecond: 178, openedBy: "Ana" }),
      ],
    });
    expect(asBuilt(file)).toMatchObject({
      parts: [
        { id: "p" },
        {
          id: "branch-T1",
          kind: "reconnected",
          tieInId: "T1",
          from: 3_010,
          by: "Ana",
          on: "2026-11-24",
          runId: "after",
          second: 178,
        },
      ],
      open: [],
    });
    const measured = aBuiltPiece("q", {
      kind: "reconnected",
      tieInId: "T1",
      from: 3_000,
      to: null,
    });
    const told = asBuilt({ ...file, builtPieces: [...file.builtPieces, measured] });
    expect(told.parts.map(({ id }) => id)).toEqual(["p", "q"]);
  });

  test("a branch whose capping is recorded as done is capped where it lies", () => {
    const cap = aScopeItem("cap", { kind: "cap", place: "branch", tieInId: "T1" });
    const file = aLine({ scope: [cap], built: [{ ...DONE, itemId: "cap" }] });
    expect(asBuilt(file)).toMatchObject({
      parts: [{ kind: "capped", tieInId: "T1", from: 3_000, by: "Marek Sandoval" }],
      open: [],
    });
  });

  test("says where the second video, or the branch on file, puts it elsewhere", () => {
    const after = {
      runs: [aRun("after", { name: "Run 3", ranOn: "2026-11-24" })],
      anchors: [anAnchor("zero", { runId: "after", counter: 0, station: 0 })],
      observations: [
        anObservation("pvc", { runId: "after", kind: "material", counter: 510, material: "pvc" }),
        anObservation("clay", { runId: "after", kind: "material", counter: 2_050 }),
      ],
    };
    const file = aLine({ ...after, builtPieces: [aBuiltPiece("p", { runId: "after" })] });
    expect(asBuilt(file).parts[0]?.differs).toBe(
      "Run 3 shows no change of pipe near 15.0 ft: its changes are at 5.1 ft, 20.5 ft.",
    );
    const branch = aBuiltPiece("p", { kind: "reconnected", tieInId: "T1", from: 2_500, to: null });
    expect(asBuilt(aLine({ builtPieces: [branch] })).parts[0]?.differs).toBe(
      "T1 is at 30.0 ft on file.",
    );
  });
});
