import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { rowsToStart, tallyOf, tallySentence } from "#lib/domain/reconnection/tally.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { deedsOfWork } from "#lib/domain/split/work-deeds.ts";
import { holdsAgainst } from "#lib/domain/stops/stopped-by.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aPairing,
  aPoint,
  aProperty,
  aRecord,
  aRun,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";
import { aReconnection } from "#tests/support/plan.ts";

const TODAY = "2026-11-25";

/** House 12 joins at 30 ft and is on record; a liner from 10 to 60 ft closes it. */
function aLine(rest: Omit<Partial<LineFile>, "line"> = {}): LineFile {
  return aFile({
    properties: [aProperty("12")],
    records: [aRecord("card")],
    entries: [anEntry("House 12", { distance: 3_000, propertyId: "12" })],
    pairings: [aPairing("House 12", "T1")],
    tieIns: [aTieIn("T1", { station: 3_000, propertyId: "12" })],
    scope: [aScopeItem("liner", { kind: "line", place: "stretch", from: 1_000, to: 6_000 })],
    ...rest,
  });
}

function rows(file: LineFile) {
  return tallyOf(file, scopeInForce(file), reportOn(file, TODAY).tieIns);
}

function held(file: LineFile): string[] {
  const report = reportOn(file, TODAY);
  return holdsAgainst(report.holds, deedsOfWork(file, report.tieIns))
    .filter(({ cause }) => cause === "branch-unmeasured")
    .map(({ sentence }) => sentence);
}

const MEASURED = aReconnection("r", { fromLower: 3_020, fromUpper: 5_960 });

test.each(["line", "burst", "dig-and-replace"] as const)(
  "%s over a live branch waits until it is measured from both ends",
  (kind) => {
    const scope = [
      aScopeItem("w", { kind, place: "stretch", from: 1_000, to: 6_000, title: "The work" }),
    ];
    const file = aLine({ scope });
    expect(held(file)).toEqual([
      "“The work” closes or cuts off active branches that may not be found again. T1 at 30.0 ft is active and not measured from the lower end and from the upper end.",
    ]);
    const half = [aReconnection("r", { fromLower: 3_020 })];
    expect(held({ ...file, reconnections: half })[0]).toContain("not measured from the upper end.");
    expect(held({ ...file, reconnections: [MEASURED] })).toEqual([]);
  },
);

test.each(["spot-repair", "clear", "clean", "reconnect"] as const)(
  "%s closes no branch",
  (kind) => {
    const scope = [aScopeItem("w", { kind, place: "stretch", from: 1_000, to: 6_000 })];
    expect(rows(aLine({ scope }))).toEqual([]);
  },
);

test("work that nobody named counts as closing, and work without a place as closing all", () => {
  const unnamed = [
    aScopeItem("w", { kind: "unknown", title: "Fix it", place: "stretch", from: 1_000, to: 6_000 }),
  ];
  expect(rows(aLine({ scope: unnamed }))).toHaveLength(1);
  const general = [aScopeItem("w", { kind: "line", place: "general", from: null, to: null })];
  expect(rows(aLine({ scope: general }))).toHaveLength(1);
});

test("only live branches of the trunk within reach of the work are in it, from the main upstream", () => {
  const tieIns = [
    aTieIn("far", { station: 9_000 }),
    aTieIn("edge", { station: 6_050 }),
    aTieIn("low", { station: 1_500 }),
    aTieIn("dead", { station: 2_000, inactive: true }),
    aTieIn("roof", { station: 2_500, kind: "roof-drain" }),
    aTieIn("child", { station: 3_100, parentId: "low" }),
  ];
  // A place that was measured is taken as it is; one that may be off reaches farther.
  expect(rows(aLine({ tieIns })).map(({ label }) => label)).toEqual(["low"]);
  const seen = {
    runs: [aRun("run", { measuredFrom: "main" })],
    observations: [anObservation("o", { runId: "run", counter: 6_050, tieInId: "edge" })],
  };
  const unplaced = tieIns.map((each) => (each.id === "edge" ? { ...each, station: null } : each));
  expect(rows(aLine({ ...seen, tieIns: unplaced })).map(({ label }) => label)).toEqual([
    "low",
    "edge",
  ]);
});

test("a branch that nobody can place may lie anywhere under the work", () => {
  const [row] = rows(aLine({ tieIns: [aTieIn("T1")] }));
  expect(row?.sentence).toBe(
    "T1 at no known station is active and not measured from the lower end and from the upper end.",
  );
});

test("both ends stand beside each other with their difference", () => {
  const [row] = rows(aLine({ reconnections: [MEASURED] }));
  expect([row?.lower?.station, row?.upper?.station, row?.difference]).toEqual([3_020, 3_040, 20]);
  expect(row?.state).toBe("ready");
  expect(row?.sentence).toBe(
    "T1 lies at 30.2 ft by the lower end and at 30.4 ft by the upper end, 0.2 ft apart.",
  );
});

test("ends that differ by more than readings may hold the work", () => {
  const file = aLine({
    reconnections: [aReconnection("r", { fromLower: 3_020, fromUpper: 5_600 })],
  });
  expect(held(file)[0]).toContain(
    "T1 lies at 30.2 ft by the lower end and at 34.0 ft by the upper end: 3.8 ft apart, more than the 1.0 ft that readings may differ by.",
  );
});

describe("runs of the camera", () => {
  const up = aRun("up", { name: "Run up", looks: "upstream", measuredFrom: "access" });
  const down = aRun("down", { name: "Run down", looks: "downstream", measuredFrom: "access" });
  const anchors = [anAnchor("up"), anAnchor("down", { counter: 0, station: 9_000 })];
  const seen = [
    anObservation("u", { runId: "up", counter: 3_010, tieInId: "T1" }),
    anObservation("d", { runId: "down", counter: 5_990, tieInId: "T1" }),
  ];

  test("one from each end is a measurement from each end", () => {
    const file = aLine({ runs: [up, down], anchors, observations: seen });
    const [row] = rows(file);
    expect([row?.lower?.by, row?.lower?.station]).toEqual(["Run up", 3_010]);
    expect([row?.upper?.by, row?.upper?.station]).toEqual(["Run down", 3_010]);
    expect(held(file)).toEqual([]);
  });

  test("a pull-back whose footage is from the main is read from the lower end, whichever way it looks", () => {
    const pulled = aRun("down", { name: "Pull-back", looks: "downstream", measuredFrom: "main" });
    const observations = [anObservation("d", { runId: "down", counter: 3_000, tieInId: "T1" })];
    const [row] = rows(aLine({ runs: [pulled], observations }));
    expect([row?.lower?.by, row?.upper]).toEqual(["Pull-back", null]);
  });

  test("a reading that was worked out by time measures nothing", () => {
    const guessed = seen.map((each) => ({ ...each, reading: "between" as const }));
    const [row] = rows(aLine({ runs: [up, down], anchors, observations: guessed }));
    expect(row?.state).toBe("unmeasured");
  });

  test("what somebody measured for the tally outranks them", () => {
    const file = aLine({
      runs: [up, down],
      anchors,
      observations: seen,
      reconnections: [MEASURED],
    });
    expect(rows(file)[0]?.lower?.by).toBe("measured 30.2 ft up from the access at 0.0 ft");
  });
});

test("a branch of which its owner is not proven holds even where it is measured", () => {
  const file = aLine({ pairings: [], entries: [], reconnections: [MEASURED] });
  expect(rows(file)[0]?.state).toBe("unproven");
  expect(held(file)[0]).toContain("its owner is not proven");
});

test("it is open again once a run after the work shows it, with the time and who saw it", () => {
  const ticked = {
    ...MEASURED,
    openedRunId: "after",
    openedSecond: 62,
    openedBy: "Marek Sandoval",
  };
  expect(rows(aLine({ reconnections: [ticked] }))[0]?.state).toBe("open-again");
  for (const missing of [{ openedRunId: null }, { openedSecond: null }, { openedBy: " " }])
    expect(rows(aLine({ reconnections: [{ ...ticked, ...missing }] }))[0]?.state).toBe("ready");
});

test("the tally says where it stands in one sentence", () => {
  const ticked = { ...MEASURED, openedRunId: "after", openedSecond: 62, openedBy: "Marek" };
  const said = (rest: Parameters<typeof aLine>[0]) => tallySentence(rows(aLine(rest)));
  expect(said({ scope: [] })).toBe("No active branch is under work that would close it");
  expect(said({})).toBe(
    "1 active branch is closed by the work; T1 holds it until proven and measured from both ends",
  );
  expect(said({ reconnections: [MEASURED] })).toBe(
    "1 active branch is measured from both ends; 1 is not yet seen open after the work",
  );
  expect(said({ reconnections: [ticked] })).toBe(
    "1 active branch is seen open again after the work",
  );
});

test("a started tally knows the ways in beside each branch, and takes none twice", () => {
  const points = [aPoint("low", { station: 600 }), aPoint("high", { station: 8_000 })];
  const file = aLine({ points });
  const [row] = rowsToStart(rows(file), file, () => "new");
  expect(row).toMatchObject({ id: "new", tieInId: "T1", lowerAccess: 600, upperAccess: 8_000 });
  const bare = aLine();
  expect(rowsToStart(rows(bare), bare, () => "new")[0]).toMatchObject({
    lowerAccess: 0,
    upperAccess: bare.line.upperEnd,
  });
  const begun = aLine({ reconnections: [MEASURED] });
  expect(rowsToStart(rows(begun), begun, () => "new")).toEqual([]);
});
