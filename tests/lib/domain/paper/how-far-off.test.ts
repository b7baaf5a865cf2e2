import { expect, test } from "vitest";
import type { LetterKind, Notice } from "#lib/domain/facts/notice.ts";
import { scheduleSheet } from "#lib/domain/packet/sheets-line.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
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

/** A pull-back from the main: a branch worked out by time give or take 4 ft, roots about 50 to 53 ft. */
const FILE = aFile({
  properties: [aProperty("14", { stake: "candidate" })],
  parties: [aParty("nils")],
  roles: [aRole("nils", "14")],
  runs: [aRun("run", { looks: "downstream", measuredFrom: "main", toCounter: 6_200 })],
  tieIns: [aTieIn("T1", { side: "unknown", kind: "unknown" })],
  observations: [
    anObservation("o", {
      counter: 3_150,
      clock: 9,
      tieInId: "T1",
      reading: "between",
      uncertainty: 400,
    }),
    anObservation("f", {
      kind: "fault",
      fault: "roots",
      counter: 5_000,
      toCounter: 5_300,
      uncertainty: 200,
    }),
    anObservation("g", { kind: "fault", fault: "crack", counter: 5_500 }),
  ],
});
const REPORT = reportOn(FILE, "2026-11-25");

function letter(kind: LetterKind, language: Notice["language"] = "en"): string {
  const notice = aNotice("n", {
    ...{ kind, partyId: "nils", propertyId: "14", tieInId: "T1", language },
  });
  const input = { file: FILE, report: REPORT, office: anOffice(), notice };
  return letterText(composeLetter(input)).replace(/\s+/g, " ");
}

test("a letter tells feet from the city's pipe, the side looking upstream, and how far off they may be", () => {
  expect(letter("tie-in-inquiry")).toContain(
    "a branch that joins the shared sewer pipe 31.5 ft ± 4.0 ft from the city’s main, on the right if you look upstream",
  );
  expect(letter("tie-in-inquiry", "es")).toContain(
    "un ramal que se une a la tubería de desagüe compartida a 31.5 pies ± 4.0 pies de la tubería principal de la ciudad",
  );
});

test("a letter says how far off a fault may be where its reading is less sure than the counter", () => {
  const text = letter("finding");
  expect(text).toContain("50.0 to 53.0 ft ± 2.0 ft: ");
  expect(text).toContain("55.0 ft:");
  expect(text).not.toContain("55.0 ft ±");
});

test("the schedule and the log of a pull-back carry station, side and how far off", () => {
  const { blocks } = scheduleSheet({ file: FILE, report: REPORT, office: anOffice() });
  expect(JSON.stringify(blocks)).toContain('["T1","31.5 ± 4.0","none","–","right"');
  expect(JSON.stringify(blocks)).toContain(
    "Looked downstream, its footage measured from the main. Its left is the right side looking upstream.",
  );
});

test("the schedule says of a distance that places nothing that it stands as written", () => {
  const file = aFile({
    records: [aRecord("card", { measuredFrom: "unknown" })],
    entries: [anEntry("House 9", { distance: 3_400 })],
  });
  const { blocks } = scheduleSheet({
    file,
    report: reportOn(file, "2026-11-25"),
    office: anOffice(),
  });
  expect(JSON.stringify(blocks)).toContain('"House 9","34.0 as written, not placed"');
});

test("a finding tells standing water and how deep it was seen, once, in both languages", () => {
  const told = (language: Notice["language"]) => {
    const file = aFile({
      ...FILE,
      observations: [
        anObservation("b", { kind: "fault", fault: "belly", counter: 2_000, toCounter: 2_600 }),
        anObservation("w", { kind: "water", counter: 2_100, toCounter: 2_500, waterDepth: 2.5 }),
        anObservation("v", { kind: "water", counter: 4_000, toCounter: 4_400, waterDepth: 1 }),
        anObservation("u", { kind: "water", counter: 5_500, toCounter: 5_700 }),
      ],
    });
    const notice = aNotice("n", { kind: "finding", partyId: "nils", propertyId: "14", language });
    const input = { file, report: reportOn(file, "2026-11-25"), office: anOffice(), notice };
    return letterText(composeLetter(input)).replace(/\s+/g, " ");
  };
  expect(told("en")).toContain(
    "20.0 to 26.0 ft: a low place that holds water, 2.5 in deep when seen; 40.0 to 44.0 ft: standing water, 1 in deep when seen; 55.0 to 57.0 ft: standing water.",
  );
  expect(told("es")).toContain(
    "un hundimiento que retiene agua, con 2.5 pulgadas de agua cuando se vio; 40.0 a 44.0 pies: agua estancada, con 1 pulgada de agua cuando se vio",
  );
});
