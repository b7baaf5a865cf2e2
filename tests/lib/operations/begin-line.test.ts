import { expect, test } from "vitest";
import { scheduleSheet } from "#lib/domain/packet/sheets-line.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { beginLine } from "#lib/operations/begin-line.ts";
import { saveLine } from "#lib/operations/save-line.ts";
import { aNotice, anOffice, aParty } from "#tests/support/file.ts";
import { aDb, addRows, anAct, anOpenLine, fileOf, must } from "#tests/support/office.ts";

// A card measured from the house: the last house stands at 0.0 on it, where the shared pipe begins. A
// camera sees a cleanout there and no branch.

function line() {
  const act = anAct(aDb());
  const lineId = anOpenLine(act);
  must(saveLine(act, { lineId, facts: { upperEnd: 9_400 } }));
  addRows(act, { lineId, table: "records" }, [
    { id: "card", title: "Card 2264", measuredFrom: "upper-end", length: 9_400 },
  ]);
  addRows(act, { lineId, table: "entries" }, [
    { id: "e21", recordId: "card", label: "House 21", distance: 0 },
    { id: "e19", recordId: "card", label: "House 19", distance: 1_920, side: "left" },
  ]);
  return { act, lineId };
}

test("beginLine() gives the house at the upper end a tie-in there, matched with its entry", () => {
  const { act, lineId } = line();
  must(beginLine(act, { lineId, entryId: "e21" }));
  const file = fileOf(act, lineId);
  expect(file.tieIns.map(({ label, station }) => ({ label, station }))).toEqual([
    { label: "T1", station: 9_400 },
  ]);
  expect(file.pairings).toMatchObject([{ entryId: "e21", state: "accepted" }]);
  const found = reportOn(file, act.today).entries.find(({ entryId }) => entryId === "e21");
  expect(found?.standing).toBe("on-record-and-seen");
  expect(beginLine(act, { lineId, entryId: "e21" })).toMatchObject({ ok: false });
});

test("papers say of the house where the line begins that it has no side and was not seen as a branch", () => {
  const { act, lineId } = line();
  must(beginLine(act, { lineId, entryId: "e21" }));
  const opened = fileOf(act, lineId);
  const file = { ...opened, parties: [aParty("ines")] };
  const input = { file, report: reportOn(file, act.today), office: anOffice() };
  const schedule = JSON.stringify(scheduleSheet(input).blocks);
  expect(schedule).toContain('"House 21","94.0","none"');
  expect(schedule).toContain("on record; the shared pipe begins here, not a branch");
  expect(schedule).not.toContain("on record and seen");
  const told = (language: "en" | "es") => {
    const notice = aNotice("n", { kind: "finding", partyId: "ines", propertyId: null, language });
    return letterText(composeLetter({ ...input, notice })).replace(/\s+/g, " ");
  };
  expect(told("en")).toContain("on record; the shared pipe begins here, not a branch");
  expect(told("en")).not.toContain("on record and seen");
  expect(told("es")).toContain("aquí comienza la tubería compartida, no es un ramal");
});

test("beginLine() refuses an entry that lies along the line", () => {
  const { act, lineId } = line();
  expect(beginLine(act, { lineId, entryId: "e19" })).toMatchObject({
    ok: false,
    error: { reason: "not-in-this-state" },
  });
  expect(fileOf(act, lineId).tieIns).toEqual([]);
});
