import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { noticeSheet } from "#lib/domain/packet/sheet-notice.ts";
import { sheetState } from "#lib/domain/packet/sheet-states.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aDelivery,
  aFile,
  aNotice,
  anOffice,
  aParty,
  aProperty,
  aReply,
  aRole,
} from "#tests/support/file.ts";

const FACTS = {
  properties: [aProperty("12"), aProperty("14")],
  parties: [aParty("ann", { name: "Ann Aldous" }), aParty("bo", { name: "Bo Brand" })],
  roles: [aRole("ann", "12"), aRole("bo", "14")],
};
const LETTER = { propertyId: "12", partyId: "ann", state: "sent" } as const;

function input(facts: Partial<LineFile>) {
  const { line: _line, ...rest } = aFile({ ...FACTS, ...facts });
  const file = { ...rest, line: aFile().line };
  return { file, report: reportOn(file, "2026-11-25"), office: anOffice() };
}

function state(facts: Partial<LineFile>) {
  return sheetState("proof-of-notice", input(facts));
}

function cells(facts: Partial<LineFile>): readonly (readonly string[])[] {
  const table = noticeSheet(input(facts)).blocks.find(({ kind }) => kind === "table");
  return table?.kind === "table" ? table.rows : [];
}

test("proof of notice is in hand only where something shows that a letter is there", () => {
  expect(state({})).toEqual({
    complete: false,
    sentences: ["No letter was sent to Ann Aldous.", "No letter was sent to Bo Brand."],
  });
  const notices = [aNotice("n", LETTER), aNotice("m", { ...LETTER, partyId: "bo" })];
  const deliveries = [
    aDelivery("1", "n", { outcome: "delivered", outcomeOn: "2026-11-18" }),
    aDelivery("2", "m", { method: "by-hand" }),
  ];
  expect(state({ notices, deliveries })).toEqual({
    complete: false,
    sentences: ["Nothing shows that a letter reached Ann Aldous (first-class mail)."],
  });
  const replies = [aReply("r", "n")];
  expect(state({ notices, deliveries, replies })).toEqual({
    complete: true,
    sentences: ["Every owner on file has been reached."],
  });
});

test("proof of notice is not on file on a line whose owners nobody has entered", () => {
  expect(state({ roles: [] })).toEqual({
    complete: false,
    sentences: ["No owner is on file, so no one can be shown to have been reached."],
  });
});

test("noticeSheet() takes nobody who answered for on its way, and no message-id for a tracking number", () => {
  const notices = [aNotice("n", { ...LETTER, kind: "proposed-split" })];
  const mail = aDelivery("1", "n", {
    method: "mail-message",
    tracking: "<delivery-1@wyebook.example.com>",
  });
  const replies = [aReply("r", "n", { receivedOn: "2026-11-21" })];
  const [row] = cells({ notices, deliveries: [mail], replies });
  expect(row).toEqual([
    "Proposed cost split for the shared sewer, to Ann Aldous",
    "e-mail, November 16, 2026",
    "arrived: they answered November 21, 2026",
  ]);
  expect(JSON.stringify(row)).not.toContain("@wyebook");
});

test("noticeSheet() says of each attempt what it shows, and no more", () => {
  const notices = [aNotice("n", LETTER)];
  const deliveries = [
    aDelivery("1", "n", { method: "certified", outcome: "unclaimed", outcomeOn: "2026-11-20" }),
    aDelivery("2", "n", { sentOn: "2026-11-21" }),
    aDelivery("3", "n", { method: "by-hand", sentOn: "2026-11-22", by: "Marek Łódź" }),
    aDelivery("4", "n", { method: "mail-message", sentOn: "2026-11-23" }),
  ];
  expect(cells({ notices, deliveries }).map(([, how, what]) => [how, what])).toEqual([
    ["certified mail, November 16, 2026", "not collected November 20, 2026"],
    ["first-class mail, November 21, 2026", "mailed; no proof of delivery"],
    ["by hand, November 22, 2026", "arrived November 22, 2026, handed over by Marek Łódź"],
    ["e-mail, November 23, 2026", "sent; no proof of delivery"],
  ]);
});
