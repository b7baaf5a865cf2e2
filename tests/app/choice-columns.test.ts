import fs from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { parseCell } from "#app/_components/grid/cell.ts";
import { choicesOf, folded } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import * as application from "#app/lines/[lineId]/authority/application/columns.ts";
import { builtColumns } from "#app/lines/[lineId]/authority/as-built/columns.ts";
import * as authority from "#app/lines/[lineId]/authority/columns.ts";
import { correctionColumns } from "#app/lines/[lineId]/authority/corrections/columns.ts";
import { feeColumns } from "#app/lines/[lineId]/authority/fees/columns.ts";
import { LISTED_COLUMNS } from "#app/lines/[lineId]/bring-in/listed-columns.ts";
import * as capacity from "#app/lines/[lineId]/camera/capacity/columns.ts";
import * as camera from "#app/lines/[lineId]/camera/columns.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/observation-columns.ts";
import * as plan from "#app/lines/[lineId]/camera/plan/columns.ts";
import { OPTION_COLUMNS, scopeColumns } from "#app/lines/[lineId]/cost/scope-columns.ts";
import * as facts from "#app/lines/[lineId]/notices/facts/columns.ts";
import { contractColumns } from "#app/lines/[lineId]/notices/statutory/columns.ts";
import { pipeColumns } from "#app/lines/[lineId]/pipe-columns.ts";
import { testColumns } from "#app/lines/[lineId]/reconcile/undocumented/test-columns.ts";
import * as record from "#app/lines/[lineId]/record/columns.ts";
import { EVENT_COLUMNS } from "#app/lines/[lineId]/schedule/columns.ts";
import { reconnectionColumns } from "#app/lines/[lineId]/schedule/reconnections/columns.ts";
import * as who from "#app/lines/[lineId]/who/columns.ts";
import { FOR_PERMIT } from "#app/office/authorities/[authorityId]/column-parts.ts";
import * as office from "#app/office/authorities/[authorityId]/columns.ts";
import { FEE_COLUMNS } from "#app/office/authorities/[authorityId]/fee-columns.ts";
import * as permit from "#app/office/authorities/[authorityId]/permit-columns.ts";
import { PROOF_COLUMNS } from "#app/office/authorities/[authorityId]/proof-columns.ts";
import { STATUTORY_COLUMNS } from "#app/office/authorities/[authorityId]/statutory-columns.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { aFile, anAddress, anUpload, aPermit, aProperty, aTieIn, aUnit } from "../support/file.ts";

/** Names that lie inside one another, as a street has them. */
const FILE = aFile({
  properties: [
    aProperty("p1", { address: anAddress("4 Fennel Row") }),
    aProperty("p2", { address: anAddress("14 Fennel Row") }),
    aProperty("p3", { address: anAddress("14 Fennel Row", { unit: "A" }) }),
    aProperty("p4", { address: anAddress("14 Fennel Row") }),
  ],
  units: [aUnit("u1", "p1", { name: "A" }), aUnit("u2", "p1", { name: "Annex A" })],
  tieIns: [aTieIn("t1", { label: "T1" }), aTieIn("t11", { label: "T11" })],
  uploads: [anUpload("f1", { name: "card.pdf" }), anUpload("f2", { name: "old card.pdf" })],
  permits: [aPermit("a"), aPermit("b")],
});
const REPORT = {
  tieIns: FILE.tieIns.map((tieIn) => ({ tieIn, station: 2_600 })),
} as unknown as Pick<Report, "tieIns">;

const TABLES: Readonly<Record<string, readonly GridColumn[]>> = {
  "reconcile/undocumented/test-columns": testColumns(FILE),
  "authority/columns": [...authority.locateColumns(FILE), ...authority.inspectionColumns(FILE)],
  "bring-in/listed-columns": LISTED_COLUMNS,
  "application/columns": [
    ...application.authorizationColumns(FILE),
    ...application.pipeColumns(FILE),
    ...application.SURFACE_COLUMNS,
  ],
  "corrections/columns": correctionColumns(FILE),
  "fees/columns": feeColumns(FILE),
  "[authorityId]/column-parts": [FOR_PERMIT],
  "[authorityId]/fee-columns": FEE_COLUMNS,
  "[authorityId]/proof-columns": PROOF_COLUMNS,
  "[authorityId]/statutory-columns": STATUTORY_COLUMNS,
  "statutory/columns": contractColumns(FILE),
  "[authorityId]/permit-columns": [
    ...permit.conditionColumns([]),
    ...permit.ORDER_COLUMNS,
    ...permit.PAVEMENT_COLUMNS,
    ...permit.DRAWING_COLUMNS,
  ],
  "[lineId]/pipe-columns": pipeColumns(),
  "camera/columns": [
    ...camera.RUN_COLUMNS,
    ...camera.ANCHOR_COLUMNS,
    ...camera.GAP_COLUMNS,
    ...camera.POINT_COLUMNS,
    ...camera.tieInColumns(FILE),
  ],
  "camera/observation-columns": OBSERVATION_COLUMNS,
  "capacity/columns": [...capacity.LEVEL_COLUMNS, ...capacity.fixtureColumns(FILE)],
  "cost/scope-columns": [...scopeColumns(FILE, REPORT), ...OPTION_COLUMNS],
  "plan/columns": [
    ...plan.BEND_COLUMNS,
    ...plan.FIXED_COLUMNS,
    ...plan.tieColumns(FILE),
    ...plan.shapeColumns(FILE),
  ],
  "schedule/columns": EVENT_COLUMNS,
  "reconnections/columns": reconnectionColumns(FILE),
  "as-built/columns": builtColumns(FILE),
  "facts/columns": [...facts.digAreaColumns(FILE), ...facts.SPILL_COLUMNS],
  "record/columns": [...record.recordColumns(FILE), ...record.entryColumns(FILE)],
  "who/columns": [
    ...who.PROPERTY_COLUMNS,
    ...who.unitColumns(FILE),
    ...who.peopleColumns(FILE),
    ...who.crossingColumns(FILE),
  ],
  "[authorityId]/columns": [
    ...office.RULE_COLUMNS,
    ...office.REQUIREMENT_COLUMNS,
    ...office.CLOCK_COLUMNS,
    ...office.REFUSAL_COLUMNS,
  ],
};

const COLUMNS = Object.entries(TABLES).flatMap(([file, columns]) =>
  columns
    .filter(({ kind }) => kind === "choice" || kind === "yesno")
    .map((column) => [`${file} ${column.key}`, column] as const),
);

test("every file with a choice column is looked at here", () => {
  const app = path.resolve(import.meta.dirname, "../../app");
  const files = fs
    .readdirSync(app, { recursive: true, encoding: "utf8" })
    .filter((name) => /\.tsx?$/.test(name) && !name.startsWith("_components/grid/"))
    .filter((name) => /kind: "(choice|yesno)"/.test(fs.readFileSync(path.join(app, name), "utf8")));
  const missed = files.filter(
    (name) => !Object.keys(TABLES).some((known) => name.endsWith(`${known}.ts`)),
  );
  expect(missed).toEqual([]);
});

describe.each(COLUMNS)("%s", (_name, column) => {
  const choices = choicesOf(column);

  test("gives each choice back for its own words", () => {
    for (const { value, label } of choices) {
      if (column.kind === "yesno" || folded(label) === "") continue;
      expect(parseCell(column, label)).toEqual({ ok: true, value: value === "" ? null : value });
    }
  });

  test("takes no words from the middle of a choice", () => {
    const pieces = choices.flatMap(({ label }) => piecesOf(folded(label)));
    for (const piece of pieces) {
      const read = parseCell(column, piece);
      if (!read.ok || column.kind === "yesno") continue;
      const picked = choices.find(({ value }) => value === (read.value ?? ""));
      const meant = [picked?.label ?? "", ...(picked?.also ?? [])].map(folded);
      expect(meant.some((words) => words.startsWith(piece))).toBe(true);
    }
  });

  test("keeps no word for one choice that could be another", () => {
    for (const choice of choices) {
      for (const word of choice.also ?? []) {
        const others = choices.filter(
          (other) =>
            other !== choice &&
            (folded(other.label).startsWith(folded(word)) || other.also?.includes(word) === true),
        );
        expect(others).toEqual([]);
      }
    }
  });
});

// What a sheet of an office says for a choice whose own words are longer.
test.each([
  ["place", "stretch", "stretch"],
  ["place", "Point", "point"],
  ["place", "branch", "branch"],
  ["kind", "lining", "line"],
  ["kind", "Pipe bursting", "burst"],
  ["kind", "jetting", "clean"],
  ["kind", "permit", "permit-fee"],
  ["kind", "Inspection", "permit-fee"],
  ["kind", "general", "other"],
  ["kind", "Paving", "restore"],
])("priced work takes “%s: %s” for what it means", (key, typed, value) => {
  const column = scopeColumns(FILE, REPORT).find((each) => each.key === key);
  if (column === undefined) throw new Error(`Priced work has no column ${key}`);
  expect(parseCell(column, typed)).toEqual({ ok: true, value });
});

// What an office says of a card: distances start at the main or at the house.
test.each([
  ["house", "upper-end"],
  ["from the house", "upper-end"],
  ["house cleanout", "upper-end"],
  ["main", "main"],
  ["City main", "main"],
])("a record takes “measured from: %s” for what it means", (typed, value) => {
  const column = record.recordColumns(FILE).find(({ key }) => key === "measuredFrom");
  if (column === undefined) throw new Error("Records have no column measuredFrom");
  expect(parseCell(column, typed)).toEqual({ ok: true, value });
});

/** Every run of words in it, from the middle as well. */
function piecesOf(text: string): string[] {
  const words = text.split(" ");
  return words.flatMap((_word, from) =>
    words.slice(from).map((_last, count) => words.slice(from, from + count + 1).join(" ")),
  );
}
