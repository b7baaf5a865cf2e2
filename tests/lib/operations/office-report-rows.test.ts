import { expect, test } from "vitest";
import { addPermit } from "#lib/operations/add-permit.ts";
import { officeReportRows } from "#lib/operations/office-report-rows.ts";
import { aDesk, anOpenLine, must } from "#tests/support/office.ts";

test("a report reads the lines that have something to tell, each as it stands", async () => {
  const { act, lineId } = aDesk();
  anOpenLine(act);
  must(addPermit(act, { lineId, kind: "side-sewer", number: "SS-7", expiresOn: null, note: "" }));
  const lines: unknown[][][] = [];
  for await (const rows of officeReportRows(act.db, "permits", act.today)) lines.push(rows);
  expect(lines).toHaveLength(1);
  expect(lines[0]?.[0]).toContain("Side sewer permit SS-7");
});
