import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { scheduleSheet } from "#lib/domain/packet/sheets-line.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import {
  aFile,
  aNotice,
  anEntry,
  anObservation,
  anOffice,
  aParty,
  aProperty,
  aRecord,
  aRole,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";
import { aShape } from "#tests/support/plan.ts";

const TODAY = "2026-11-25";

/** T2 at 50 ft on the right of a line that runs due west: north. 14’s garage stands there. */
function aStreet(
  line: Partial<LineFile["line"]>,
  planShapes: LineFile["planShapes"] = [],
): LineFile {
  return aFile({
    line,
    planShapes,
    properties: [aProperty("14", { stake: "candidate" }), aProperty("16")],
    parties: [aParty("nils")],
    roles: [aRole("nils", "14")],
    records: [aRecord("card")],
    entries: [anEntry("House 9", { distance: 9_000, side: "left" })],
    tieIns: [aTieIn("T2", { station: 5_000, side: "right", kind: "unknown" })],
  });
}

const GARAGE = "-60,30; -40,30; -40,50; -60,50";

function inquiry(file: LineFile, language: Notice["language"] = "en"): string {
  const notice = aNotice("n", {
    kind: "tie-in-inquiry",
    partyId: "nils",
    propertyId: "14",
    tieInId: "T2",
    language,
  });
  const input = { file, report: reportOn(file, TODAY), office: anOffice(), notice };
  return letterText(composeLetter(input)).replace(/\s+/g, " ");
}

test("without a bearing a letter tells the side as one looks upstream", () => {
  expect(inquiry(aStreet({ bearing: null }))).toContain(
    "a branch that joins the shared sewer pipe 50.0 ft from the city’s main, on the right if you look upstream, away from the public main.",
  );
});

test("with a bearing it tells the side by the compass", () => {
  const text = inquiry(aStreet({ bearing: 270 }));
  expect(text).toContain(
    "joins the shared sewer pipe 50.0 ft from the city’s main, on the north side of the pipe.",
  );
  expect(text).not.toContain("look upstream");
});

test("with a plan it tells whose building lies that way", () => {
  const own = [aShape("g", GARAGE, { name: "Garage", propertyId: "14" })];
  expect(inquiry(aStreet({ bearing: 270 }, own))).toContain(
    "on the north side of the pipe, toward your garage.",
  );
  const other = [aShape("g", GARAGE, { name: "Garage", propertyId: "16" })];
  expect(inquiry(aStreet({ bearing: 270 }, other))).toContain(
    "on the north side of the pipe, toward the building at 16 Fennel Row.",
  );
  const nobodys = [aShape("g", GARAGE, { name: "Garage" })];
  expect(inquiry(aStreet({ bearing: 270 }, nobodys))).toContain("on the north side of the pipe.");
});

test("in Spanish too, also where the building has a name of its own", () => {
  const own = [aShape("g", GARAGE, { name: "Garage", propertyId: "14" })];
  expect(inquiry(aStreet({ bearing: 270 }, own), "es")).toContain(
    "del lado norte de la tubería, hacia su garaje.",
  );
  const odd = [aShape("g", GARAGE, { name: "Old barn", propertyId: "14" })];
  expect(inquiry(aStreet({ bearing: 270 }, odd), "es")).toContain("hacia su edificio.");
});

test("schedule, strip and report name the wind beside left and right", () => {
  const file = aStreet({ bearing: 270 });
  const report = reportOn(file, TODAY);
  expect(report.tieIns.map(({ compass }) => compass)).toEqual(["north"]);
  expect(report.entries.map(({ compass }) => compass)).toEqual(["south"]);
  const office = anOffice();
  const schedule = JSON.stringify(scheduleSheet({ file, report, office }));
  expect(schedule).toContain("right, north");
  expect(schedule).toContain("left, south");
  const [mark] = drawStrip(file, report, "all").below;
  expect(mark?.sentence).toContain("T2 at 50.0 ft, right, north side, owner unknown");
});

test("the depth of standing water is said on the strip where somebody told it", () => {
  const seen = {
    runId: "run",
    kind: "fault",
    fault: "belly",
    counter: 4_000,
    tieInId: null,
  } as const;
  const marks = (waterDepth: number | null) => {
    const runs = [aRun("run", { measuredFrom: "main" })];
    const observations = [anObservation("o", { ...seen, waterDepth })];
    const file = { ...aStreet({}), runs, observations };
    return drawStrip(file, reportOn(file, TODAY), "all").onPipe.map(({ sentence }) => sentence);
  };
  expect(marks(4)).toContain("Belly, 40.0 ft, 4 in of water standing.");
  expect(marks(null)).toContain("Belly, 40.0 ft.");
});

test("a branch on a branch has no bearing of its own, so no wind is named", () => {
  const file = aStreet({ bearing: 270 });
  const child = aTieIn("T3", { parentId: "T2", station: 5_000, side: "right" });
  const report = reportOn({ ...file, tieIns: [...file.tieIns, child] }, TODAY);
  expect(report.tieIns.map(({ compass }) => compass)).toEqual(["north", null]);
});
