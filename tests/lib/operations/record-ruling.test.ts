import { expect, test } from "vitest";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { recordRuling, withdrawRuling } from "#lib/operations/record-ruling.ts";
import { settleTieIn } from "#lib/operations/settle-tie-in.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { anOffice } from "#tests/support/file.ts";
import { aDesk, anAct, fileOf, must } from "#tests/support/office.ts";
import { askingFor } from "#tests/support/sample-line.ts";

function aRuledDesk() {
  const desk = aDesk({ undocumented: true });
  const file = fileOf(desk.act, desk.lineId);
  const tieInId = file.observations.find(({ id }) => id === "extra")?.tieInId ?? "";
  const word = {
    lineId: desk.lineId,
    tieInId,
    kind: "disconnect" as const,
    decidedBy: "City of Quillhaven",
    decidedOn: "2026-11-20",
    dueOn: "2026-12-20",
    reference: "case 26-114",
    uploadId: null,
    note: "",
  };
  return { ...desk, word, tieInId };
}

function holdsOf({ act, lineId }: Pick<ReturnType<typeof aRuledDesk>, "act" | "lineId">) {
  return reportOn(fileOf(act, lineId), act.today).holds;
}

test("a ruling is kept with who entered it, and the history tells it", () => {
  const { act, lineId, word } = aRuledDesk();
  const { rulingId } = must(recordRuling(act, word));
  const file = fileOf(act, lineId);
  expect(file.rulings).toMatchObject([
    { id: rulingId, enteredBy: "Dana Okafor", kind: "disconnect" },
  ]);
  expect(file.history.at(-1)?.sentence).toContain(
    "must be disconnected until compliant, per City of Quillhaven",
  );
});

test.each([
  [{ decidedBy: " " }, "decidedBy"],
  [{ decidedOn: "2026-11-26" }, "decidedOn"],
  [{ dueOn: "2026-11-19" }, "dueOn"],
  [{ dueOn: "soon" }, "dueOn"],
  [{ uploadId: "none" }, "uploadId"],
  [{ tieInId: "none" }, "tieInId"],
  [{ kind: "accepted-as-legacy" as const, reference: "" }, "reference"],
])("recordRuling() refuses %j", (wrong, path) => {
  const { act, lineId, word } = aRuledDesk();
  expect(recordRuling(act, { ...word, ...wrong })).toMatchObject({ error: { path } });
  expect(fileOf(act, lineId).rulings).toEqual([]);
});

test("recordRuling() is not for the field", () => {
  const { act, word } = aRuledDesk();
  const field = anAct(act.db, { role: "field" });
  expect(recordRuling(field, word)).toMatchObject({ error: { reason: "not-allowed" } });
});

test("nothing is capped before it is proven dead", () => {
  const { act, lineId, word, tieInId } = aRuledDesk();
  const cap = { ...word, kind: "cap" as const };
  expect(recordRuling(act, cap)).toMatchObject({
    error: { reason: "not-in-this-state", path: "kind" },
  });
  must(
    settleTieIn(act, {
      lineId,
      tieInId,
      kind: "unknown",
      propertyId: null,
      inactive: true,
      ownerAccepted: false,
      reason: "Plugged for two weeks, nothing stood behind the plug",
    }),
  );
  must(recordRuling(act, cap));
  expect(holdsOf({ act, lineId }).map(({ cause }) => cause)).toContain("ruling-not-done");
});

test("a later ruling replaces the first, and one taken out lets the first hold again", () => {
  const { act, lineId, word } = aRuledDesk();
  must(recordRuling(act, word));
  const later = { ...word, kind: "accepted-as-legacy" as const, decidedOn: "2026-11-24" };
  const { rulingId } = must(recordRuling(act, later));
  const causes = () => holdsOf({ act, lineId }).map(({ cause }) => cause);
  expect(causes()).not.toContain("ruling-not-done");
  expect(withdrawRuling(act, { lineId, rulingId, reason: " " })).toMatchObject({
    error: { path: "reason" },
  });
  must(withdrawRuling(act, { lineId, rulingId, reason: "Entered on the wrong tie-in" }));
  expect(causes()).toContain("ruling-not-done");
  expect(fileOf(act, lineId).rulings).toHaveLength(1);
});

test("a waiver prints in the packet with its name and reason; the hold still stands on the sheet", () => {
  const { act, lineId, word } = aRuledDesk();
  must(recordRuling(act, word));
  const reason = "The city’s inspector stands by while it is lined";
  const hold = holdsOf({ act, lineId }).find(({ cause }) => cause === "ruling-not-done");
  must(waiveHold(act, { lineId, holdKey: hold?.key ?? "", reason }));
  const file = fileOf(act, lineId);
  const input = { file, report: reportOn(file, act.today), office: anOffice() };
  const packet = composePacket(askingFor(["holds-and-waivers"], input));
  const sheet = packet.sheets.find(({ kind }) => kind === "holds-and-waivers");
  expect(JSON.stringify(sheet?.blocks)).toContain(reason);
  expect(JSON.stringify(sheet?.blocks)).toContain("Dana Okafor");
});
