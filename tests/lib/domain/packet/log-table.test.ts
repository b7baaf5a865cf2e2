import { expect, test } from "vitest";
import { folded } from "#app/_components/grid/choices.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/observation-columns.ts";
import { logTable } from "#lib/domain/packet/log-table.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFile, anObservation, aRun } from "#tests/support/file.ts";

const FILE = aFile({
  runs: [
    aRun("run", { name: "Run 1", looks: "downstream", measuredFrom: "main" }),
    aRun("turning", { name: "Run 2", measuredFrom: "main", selfLeveling: "no" }),
    aRun("untied", { name: "Run 3" }),
  ],
  observations: [
    anObservation("b", {
      counter: 4_390,
      kind: "fault",
      fault: "roots",
      clock: null,
      degree: "severe",
      reduction: 75,
      reading: "between",
      uncertainty: 450,
      quote: "roots here",
      videoSecond: 124,
    }),
    anObservation("a", { counter: 950, clock: 9 }),
    anObservation("c", { runId: "turning", counter: 2_000, clock: 9 }),
    anObservation("d", { runId: "untied", counter: 700, clock: 9 }),
  ],
});

function rowsOf() {
  const { head, rows } = logTable(FILE, reportOn(FILE, "2026-11-25"));
  return rows.map((row) => {
    expect(row).toHaveLength(head.length);
    return Object.fromEntries(head.map((name, at) => [name, row[at]]));
  });
}

test("each reading stands along its run with how it was found and how far off it may be", () => {
  const [first, second] = rowsOf();
  expect(first).toMatchObject({
    Run: "Run 1",
    Counter: 9.5,
    Read: "read",
    "Uncertainty ±": "",
    "Station, ft from the main": 9.5,
    "Station ± ft": 1,
    What: "tie-in",
    "Side, looking upstream": "right",
    "Side is sure": "yes",
  });
  expect(second).toMatchObject({
    Read: "worked out by time",
    "Uncertainty ±": 4.5,
    "Station ± ft": 4.5,
    Defect: "roots",
    Severity: "severe",
    "% blocked": 75,
    Video: "2:04",
    Said: "roots here",
    "Side, looking upstream": "",
    "Side is sure": "",
  });
});

test("the side of a head that turns is told as unsure; a run that is tied to nothing has no stations", () => {
  const rows = rowsOf();
  expect(rows[2]).toMatchObject({
    "Side, looking upstream": "left",
    "Side is sure": "no, the head turns",
  });
  expect(rows[3]).toMatchObject({ "Station, ft from the main": "", "Station ± ft": "" });
});

test("what the log takes out has the headings under which it brings rows in", () => {
  const { head } = logTable(FILE, reportOn(FILE, "2026-11-25"));
  const names = new Set(head.map(folded));
  const missing = OBSERVATION_COLUMNS.filter(({ title }) => !names.has(folded(title)));
  expect(missing.map(({ title }) => title)).toEqual([]);
});
