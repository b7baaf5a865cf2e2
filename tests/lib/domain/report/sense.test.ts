import { expect, test } from "vitest";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { nonsenseIn } from "#lib/domain/report/sense.ts";
import { aFixture } from "#tests/support/capacity.ts";
import { aFile, aNotice, anUpload, aParty, aProperty, aReply, aUnit } from "#tests/support/file.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aPicture } from "#tests/support/plan.ts";

test("a fixture count that names a unit has to name one of its own property", () => {
  const at = (unitId: string | null) =>
    nonsenseIn(
      aFile({
        properties: [aProperty("12"), aProperty("14")],
        units: [aUnit("12-a", "12"), aUnit("14-a", "14")],
        fixtures: [aFixture("12", { unitId })],
      }),
    );
  expect(at("12-a")).toEqual([]);
  expect(at(null)).toEqual([]);
  expect(at("14-a")).toMatchObject([{ list: "fixtures", row: 0, path: "unitId" }]);
});

test("a plan to trace over is a picture, with two points so far apart", () => {
  const wrong = (type: Upload["type"], overrides = {}) =>
    nonsenseIn(
      aFile({
        uploads: [anUpload("plan", { type })],
        planPictures: [aPicture("p", overrides)],
      }),
    ).map(({ list, path }) => [list, path]);
  expect(wrong("image/png")).toEqual([]);
  expect(wrong("image/jpeg", { apart: 0 })).toEqual([["planPictures", "apart"]]);
  expect(wrong("image/png", { otherX: 100 })).toEqual([["planPictures", "otherX"]]);
  expect(wrong("application/pdf")).toEqual([["planPictures", "uploadId"]]);
});

test("a reply answers a letter or an invoice, one of them and not both", () => {
  const invoice = aLedgerEntry(1, { dueOn: "2026-12-01" });
  const paid = aLedgerEntry(2, { kind: "payment", method: "check" });
  const wrong = (noticeId: string | null, entryId: string | null) =>
    nonsenseIn(
      aFile({
        properties: [aProperty("12")],
        parties: [aParty("owner-12")],
        notices: [aNotice("n", { partyId: "owner-12", propertyId: "12" })],
        ledger: [invoice, paid],
        replies: [{ ...aReply("r", "n"), noticeId, entryId }],
      }),
    ).map(({ list, path, message }) => `${list} ${path}: ${message}`);
  expect(wrong("n", null)).toEqual([]);
  expect(wrong(null, invoice.id)).toEqual([]);
  expect(wrong(null, null)).toEqual([
    "replies noticeId: Say what this reply answers: a letter, or an invoice",
  ]);
  expect(wrong("n", invoice.id)).toEqual([
    "replies entryId: Say one of them only: the letter, or the invoice",
  ]);
  expect(wrong(null, paid.id)).toEqual([
    "replies entryId: This entry is no invoice; choose the invoice that was answered",
  ]);
  expect(wrong(null, "gone")).toEqual([
    'replies entryId: There is no ledger entry with the id "gone" in the file; choose one that is there',
  ]);
});
