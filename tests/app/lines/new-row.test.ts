import { expect, test } from "vitest";
import { RUN_BLANK } from "#app/lines/[lineId]/camera/columns.ts";
import { newRow } from "#app/lines/[lineId]/new-row.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import { ROW_TABLES } from "#lib/domain/facts/row-table.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ROW_SHAPES } from "#lib/exchange/rows.ts";
import { aFile, aRun } from "../../support/file.ts";

test.each(ROW_TABLES)("a new row of %s lacks nothing but what a person has to say", (table) => {
  const row = newRow(table);
  const parsed = ROW_SHAPES[table].safeParse(row);
  const asked = Object.entries(LISTS[table].fields).flatMap(([field, { usual }]) =>
    usual === null ? [field] : [],
  );
  expect(parsed.error?.issues.map(({ path }) => path[0]).sort()).toEqual(asked.sort());
});

test("a page says what its new rows have otherwise", () => {
  expect(newRow("runs", { looks: "downstream" })).toMatchObject({
    looks: "downstream",
    ended: "unknown",
  });
});

test("of a new run nobody has said yet that nothing crosses the pipe, and cutting waits for it", () => {
  const run = aRun("run", { ...RUN_BLANK, toCounter: 10_000 });
  const { holds } = reportOn(aFile({ runs: [run] }), "2026-11-25");
  expect(holds.map(({ cause }) => cause)).toContain("crossing-not-ruled-out");
});
