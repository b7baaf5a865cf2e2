import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { beginLine } from "#lib/operations/begin-line.ts";
import { saveLine } from "#lib/operations/save-line.ts";
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

test("beginLine() refuses an entry that lies along the line", () => {
  const { act, lineId } = line();
  expect(beginLine(act, { lineId, entryId: "e19" })).toMatchObject({
    ok: false,
    error: { reason: "not-in-this-state" },
  });
  expect(fileOf(act, lineId).tieIns).toEqual([]);
});
