import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { crewSafety, type SafetyPart } from "#lib/domain/safety/crew-safety.ts";
import {
  aFile,
  aGap,
  anAnchor,
  anObservation,
  aPoint,
  aRun,
  aScopeItem,
  aTieIn,
  aWaiver,
} from "#tests/support/file.ts";

const TODAY = "2026-11-25";

function safetyOf(facts: Partial<Omit<LineFile, "line">> & { line?: object } = {}) {
  const { line, ...rest } = facts;
  const file = aFile({
    ...rest,
    line: { upperEnd: 9_600, material: "vitrified-clay", ...line },
  });
  return crewSafety(file, reportOn(file, TODAY));
}

const part = (parts: readonly SafetyPart[], key: SafetyPart["key"]) =>
  parts.find((each) => each.key === key);
const cited = (one: SafetyPart | undefined) =>
  one?.rules.map(({ citation }) => citation).filter((citation) => citation !== "") ?? [];
const said = (one: SafetyPart | undefined) => one?.rules.map(({ words }) => words).join(" ") ?? "";

const DIG = aScopeItem("dig", { kind: "dig-and-replace", from: 1_000, to: 3_000 });
const depthAt = (station: number, depth: number) => aPoint(`c${station}`, { station, depth });

describe("crewSafety() on a dig", () => {
  test("gives every excavation its daily inspection, spoil, utilities and water", () => {
    const trench = part(safetyOf({ scope: [DIG], points: [depthAt(2_000, 300)] }), "trench");
    expect(cited(trench)).toEqual([
      "29 CFR 1926.651(b)",
      "29 CFR 1926.651(k)(1)",
      "29 CFR 1926.651(j)(2)",
      "29 CFR 1926.651(h)",
      "29 CFR 1926.652(a)(1)(ii)",
    ]);
  });

  test("adds way out, air and walls by the depth of the trench, half a foot below the pipe", () => {
    const trench = part(safetyOf({ scope: [DIG], points: [depthAt(2_000, 480)] }), "trench");
    expect(trench?.why).toBe(
      "Deepest dig: 5.3 ft at 20.0 ft (the pipe is 4.8 ft deep there, and the trench half a foot deeper).",
    );
    expect(cited(trench)).toEqual(
      expect.arrayContaining([
        "29 CFR 1926.651(c)(2)",
        "29 CFR 1926.651(g)(1)",
        "29 CFR 1926.652(a)(1)",
        "29 CFR 1926.652(b)(1)(i)",
      ]),
    );
    // 3 ft at the bottom and 7.95 ft on either side of 5.3 ft.
    expect(said(trench)).toContain("about 19 ft wide at the top for 3.0 ft at the bottom");
  });

  test("takes a depth between notes up to the next half foot", () => {
    const points = [depthAt(0, 400), depthAt(6_000, 460)];
    const trench = part(safetyOf({ scope: [DIG], points }), "trench");
    expect(trench?.why).toBe(
      "Deepest dig: 5.0 ft at 30.0 ft (the pipe is, going by the nearest recorded depths, about 4.5 ft deep there, and the trench half a foot deeper).",
    );
    expect(cited(trench)).toContain("29 CFR 1926.652(a)(1)");
  });

  test("asks for an engineer beyond 20 ft, and then gives no width", () => {
    const trench = part(safetyOf({ scope: [DIG], points: [depthAt(2_000, 1_960)] }), "trench");
    expect(cited(trench)).toContain("29 CFR 1926 Subpart P");
    expect(cited(trench)).not.toContain("29 CFR 1926.652(b)(1)(i)");
  });

  test("takes a depth that nobody noted for deep", () => {
    const trench = part(safetyOf({ scope: [DIG] }), "trench");
    expect(trench?.why).toMatch(/^No depth is recorded at the dig, so it is treated as deep\./);
    expect(cited(trench)).toContain("29 CFR 1926.652(a)(1)");
    expect(cited(trench)).toContain("29 CFR 1926.651(g)(1)");
  });

  test("says what drains to the open pipe, and has the flow held back or pumped around", () => {
    const flow = part(
      safetyOf({
        scope: [DIG],
        tieIns: [
          aTieIn("T1", { label: "T1", station: 500 }),
          aTieIn("T2", { label: "T2", station: 2_600 }),
          aTieIn("T3", { label: "T3", station: 5_140, kind: "unknown" }),
        ],
      }),
      "flow",
    );
    expect(flow?.why).toBe("2 active connections drain to the open pipe: T2 and T3.");
    const eight = Array.from({ length: 8 }, (_, at) =>
      aTieIn(`T${at + 1}`, { label: `T${at + 1}`, station: 2_600 + at * 300 }),
    );
    const all = part(safetyOf({ scope: [DIG], tieIns: eight }), "flow");
    expect(all?.why).toBe(
      "8 active connections drain to the open pipe: T1, T2, T3, T4, T5, T6, T7 and T8.",
    );
    expect(said(flow)).toContain("pump around the flow");
  });
});

describe("crewSafety() on a gas line through the pipe", () => {
  const LINE = aScopeItem("line", { kind: "line", from: 1_000, to: 3_000 });
  const filmed = {
    runs: [aRun("run", { crossingSeen: "no" })],
    anchors: [anAnchor("run")],
    observations: [anObservation("far", { counter: 9_000 })],
    gaps: [aGap("run", { fromCounter: 1_500, toCounter: 2_000 })],
  };

  test("says where it is not ruled out and what is not done there, and what comes before any cut", () => {
    const crossing = part(safetyOf({ scope: [LINE], ...filmed }), "crossing");
    expect(said(crossing)).toMatch(
      /from 15\.0 to 20\.0 ft, such as a gas line bored through it, is not known: it was under water\. Until the office clears it: no cutting inside the pipe, lining or bursting there\./,
    );
    expect(said(crossing)).toContain("a camera on both sides of it, and a call to the gas company");
  });

  test("names who waived it, and keeps it on the sheet", () => {
    const key = "crossing-not-ruled-out:line:lining:1500-2000";
    const waivers = [aWaiver(key, { by: "Ruth Lindqvist" })];
    const crossing = part(safetyOf({ scope: [LINE], ...filmed, waivers }), "crossing");
    expect(said(crossing)).toContain("Ruth Lindqvist has allowed the work to go on");
    expect(said(crossing)).not.toContain("Until the office says so");
  });

  test("is not on the sheet of a dig that cuts nothing inside the pipe and holds nothing", () => {
    expect(part(safetyOf({ scope: [DIG] }), "crossing")).toBeUndefined();
  });
});

test("crewSafety() takes a line whose work nobody priced for one that is dug", () => {
  const trench = part(safetyOf(), "trench");
  expect(trench?.why).toMatch(/^No work is priced yet, so it is treated as digging\./);
  expect(cited(trench)).toContain("29 CFR 1926.652(a)(1)");
});

test("crewSafety() has no trench where nothing is dug, but flow, gas, manholes and sewage all the same", () => {
  const clearing = safetyOf({ scope: [{ ...DIG, kind: "clear", work: "clearing" }] });
  expect(clearing.map(({ key }) => key)).toEqual([
    "crossing",
    "flow",
    "manhole",
    "gas",
    "pipe",
    "sewage",
  ]);
  const filming = safetyOf({ scope: [{ ...DIG, kind: "test" }] });
  expect(filming.map(({ key }) => key)).toEqual(["manhole", "gas", "sewage"]);
});

describe("crewSafety() on manholes", () => {
  test("keeps everybody out where none is entered, under Subpart AA", () => {
    const none = part(safetyOf({ scope: [DIG] }), "manhole");
    expect(none?.why).toContain("No manholes are entered on this line");
    expect(cited(none)).toEqual(["29 CFR 1926 Subpart AA"]);
  });

  test("has judging, air, a person at the top and rescue where there is one", () => {
    const points = [aPoint("mh", { kind: "manhole", station: 0 })];
    const there = part(safetyOf({ scope: [DIG], points }), "manhole");
    expect(there?.why).toBe("There is a manhole at 0.0 ft.");
    expect(cited(there)).toEqual([
      "29 CFR 1926.1203(a)",
      "29 CFR 1926.1204(e)",
      "29 CFR 1926.1209",
      "29 CFR 1926.1211",
    ]);
  });
});

describe("crewSafety() on the old pipe", () => {
  const pipe = (material: string) => part(safetyOf({ scope: [DIG], line: { material } }), "pipe");

  test("has asbestos-cement pipe classed before it is cut, where the work touches it", () => {
    expect(said(pipe("asbestos-cement"))).toContain(
      "Asbestos-cement pipe from 10.0 to 30.0 ft: a competent person classes the work",
    );
    expect(cited(pipe("asbestos-cement"))).toEqual(["29 CFR 1926.1101"]);
  });

  test("takes an unknown pipe for one that may hold asbestos", () => {
    expect(said(pipe("unknown"))).toContain(
      "The pipe material is unknown from 10.0 to 30.0 ft: look before cutting",
    );
  });

  test("has clay cut wet, and says nothing of plastic", () => {
    expect(said(pipe("vitrified-clay"))).toContain("cut it wet");
    expect(pipe("pvc")).toBeUndefined();
  });
});

test("crewSafety() tells of hydrogen sulfide and of gloves on every job, in words for a crew", () => {
  const parts = safetyOf({ scope: [DIG] });
  expect(said(part(parts, "gas"))).toContain("Go by a meter, never by smell");
  expect(said(part(parts, "sewage"))).toContain("Waterproof gloves, face shield or goggles");
  for (const { rules } of parts)
    for (const { words, citation } of rules) {
      expect(words.length).toBeLessThan(240);
      expect(citation).not.toMatch(/memory/);
    }
});
