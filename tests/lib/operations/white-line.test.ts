import { expect, test } from "vitest";
import { getRevisions } from "#db/queries/revision.ts";
import { insertRow } from "#db/queries/row.ts";
import { earliestStart } from "#lib/domain/clocks/earliest-start.ts";
import type { LocateTicket } from "#lib/domain/facts/permit.ts";
import { chooseRule } from "#lib/operations/choose-rule.ts";
import { saveAuthority } from "#lib/operations/save-authority.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import { aClockRule, aLocateTicket, anAuthority, anUpload, aRule } from "#tests/support/file.ts";
import { aDesk, anAct, fileOf, must } from "#tests/support/office.ts";

const ASKS = aClockRule("opens", {
  ...{ event: "locate-called", count: 2, unit: "business-days", meaning: "not-before" },
  ...{ whiteLineFirst: true, citation: "RCW 19.122.030" },
});

function desk() {
  const { act, lineId } = aDesk();
  const authority = anAuthority({ rules: [aRule("rule")], clockRules: [ASKS] });
  must(saveAuthority(anAct(act.db, { role: "admin" }), authority));
  must(chooseRule(act, { lineId, authorityId: "authority-1", ruleId: "rule" }));
  insertRow(act.db, "uploads", { lineId, row: anUpload("photo", { type: "image/jpeg" }) });
  const save = (ticket: Partial<LocateTicket>) =>
    saveRows(act, {
      ...{ lineId, table: "locateTickets", base: getRevisions(act.db, lineId).locateTickets },
      rows: [aLocateTicket("t", { calledOn: "2026-11-16", number: "26-1", ...ticket })],
    });
  const against = () =>
    earliestStart(fileOf(act, lineId), act.today).bars.filter(({ because }) =>
      /white/.test(because),
    );
  return { act, lineId, save, against };
}

test("white-lining is saved with the ticket, and a call before it is against the start until a new call", () => {
  const { act, lineId, save, against } = desk();
  must(save({}));
  expect(against()).toMatchObject([{ until: null, citation: "RCW 19.122.030" }]);
  const lined = {
    ...{ whiteLinedOn: "2026-11-17", whiteLinedBy: "Sami Orlov" },
    ...{ whiteLinedHow: "paint" as const, whiteLinePhotoId: "photo" },
  };
  must(save(lined));
  expect(fileOf(act, lineId).locateTickets).toMatchObject([lined]);
  expect(against()[0]?.because).toMatch(/^locate ticket 26-1 was called in on .*: call 811 again$/);
  must(save({ ...lined, calledOn: "2026-11-18" }));
  expect(against()).toEqual([]);
});

test("a photo that is not on file is not saved", () => {
  const { save } = desk();
  expect(save({ whiteLinedOn: "2026-11-13", whiteLinePhotoId: "gone" }).ok).toBe(false);
});
