import { describe, expect, test } from "vitest";
import { SCOPE_KINDS } from "#lib/domain/facts/scope.ts";
import { decidedDeeds, deedsOf, deedsOfWork, kindsOf } from "#lib/domain/split/work-deeds.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aFile, aScopeItem, aTieIn } from "#tests/support/file.ts";

const OPTIONS = [
  { id: "lining", title: "In place", kind: "lining" as const, note: "" },
  { id: "burst", title: "Pull through", kind: "bursting" as const, note: "" },
  { id: "new", title: "All new", kind: "full-replacement" as const, note: "" },
];

describe("kindsOf()", () => {
  const kinds = (title: string, rest: Parameters<typeof aScopeItem>[1] = {}) =>
    kindsOf(aScopeItem("i", { kind: "unknown", title, work: "repair", ...rest }), {
      options: OPTIONS,
    });

  test("takes a person’s word, whatever the title says", () => {
    for (const kind of SCOPE_KINDS.filter((each) => each !== "unknown"))
      expect(kinds("Line and burst and dig", { kind })).toEqual([kind]);
  });

  test.each([
    ["Line the trunk", ["line"]],
    ["Reline 0 to 50 ft", ["line"]],
    ["Cured-in-place pipe", ["line"]],
    ["Dig up the line", ["dig-and-replace"]],
    ["Replace sewer line", ["dig-and-replace"]],
    ["Pipe bursting, 20 to 60 ft", ["burst"]],
    ["Cut roots and jet", ["clear", "clean"]],
    ["Cap T4", ["cap"]],
    ["Line it and reopen T1", ["line", "reconnect"]],
    ["Permit, traffic control and restoration of surface", ["restore", "permit-fee"]],
    ["Mobilization", ["other"]],
  ])("of “%s”, of which nobody said the kind, is %j", (title, named) => {
    expect(kinds(title)).toEqual(named);
  });

  test("goes by the option, and then by all that a repair may come to", () => {
    expect(kinds("CIPP", { optionId: "lining" })).toEqual(["line"]);
    expect(kinds("HDPE", { optionId: "burst" })).toEqual(["burst"]);
    expect(kinds("HDPE", { optionId: "new" })).toEqual(["dig-and-replace", "burst"]);
    expect(kinds("As agreed")).toEqual(["dig-and-replace", "line", "burst"]);
    expect(kinds("As agreed", { work: "clearing" })).toEqual(["clear"]);
  });
});

describe("deedsOf()", () => {
  const branch = aTieIn("T1", { station: 4_000 });
  const site = { options: OPTIONS, tieIns: [aFinding(branch, { uncertainty: 200 })] };
  const stops = (rest: Parameters<typeof aScopeItem>[1]) =>
    deedsOf(aScopeItem("i", rest), site).map(({ stop }) => stop);

  test("says what each kind of work does", () => {
    expect(stops({ kind: "line" })).toEqual(["lining", "closing-branches"]);
    expect(stops({ kind: "burst" })).toEqual(["bursting", "digging", "closing-branches"]);
    expect(stops({ kind: "dig-and-replace" })).toEqual(["digging", "closing-branches"]);
    expect(stops({ kind: "spot-repair" })).toEqual(["digging"]);
    expect(stops({ kind: "cap" })).toEqual(["capping", "digging"]);
    expect(stops({ kind: "clear" })).toEqual(["clearing"]);
    expect(stops({ kind: "clean" })).toEqual(["jetting"]);
    for (const kind of ["test", "restore", "permit-fee", "other"] as const)
      expect(stops({ kind })).toEqual([]);
  });

  test("opens a branch from inside a liner, and digs one up to join a new pipe", () => {
    expect(stops({ kind: "reconnect", optionId: "lining" })).toEqual(["lining"]);
    expect(stops({ kind: "reconnect" })).toEqual(["digging"]);
  });

  test("lies where the item does: a branch where it leaves the trunk, nowhere said is everywhere", () => {
    const place = (rest: Parameters<typeof aScopeItem>[1]) =>
      deedsOf(aScopeItem("i", rest), site)[0]?.stretch;
    expect(place({ from: 1_000, to: 2_000 })).toEqual({ from: 1_000, to: 2_000 });
    expect(place({ place: "branch", from: null, to: null, tieInId: "T1" })).toEqual({
      from: 3_800,
      to: 4_200,
    });
    expect(place({ place: "general", from: null, to: null })).toBeNull();
    expect(place({ place: "branch", from: null, to: null, tieInId: "gone" })).toBeNull();
  });

  test("takes a branch of a branch where its trunk branch leaves", () => {
    const child = aTieIn("T2", { parentId: "T1", station: 900 });
    const deeds = deedsOf(aScopeItem("i", { place: "branch", tieInId: "T2", kind: "cap" }), {
      ...site,
      tieIns: [...site.tieIns, aFinding(child)],
    });
    expect(deeds[0]?.stretch).toEqual({ from: 3_800, to: 4_200 });
  });
});

test("deedsOfWork() digs anywhere while nothing is priced, and does all options while none is chosen", () => {
  expect(deedsOfWork(aFile(), [])).toEqual([{ stop: "digging", stretch: null }]);
  const scope = [
    aScopeItem("a", { optionId: "lining", kind: "line" }),
    aScopeItem("b", { optionId: "new" }),
  ];
  const stops = (optionId: string | null) =>
    deedsOfWork(aFile({ options: OPTIONS, scope, line: { optionId } }), []).map(({ stop }) => stop);
  expect(stops(null)).toEqual(["lining", "closing-branches", "digging", "closing-branches"]);
  expect(stops("new")).toEqual(["digging", "closing-branches"]);
});

test("decidedDeeds() leaves digging to the permit until work has begun", () => {
  const deeds = (["digging", "lining", "clearing"] as const).map((stop) => ({
    stop,
    stretch: null,
  }));
  expect(decidedDeeds(deeds, false).map(({ stop }) => stop)).toEqual(["lining", "clearing"]);
  expect(decidedDeeds(deeds, true)).toEqual(deeds);
});
