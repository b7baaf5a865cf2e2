import { expect, test, vi } from "vitest";
import { getOffice, putOffice } from "#db/queries/office.ts";
import { insertRow } from "#db/queries/row.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aWorker } from "#tests/support/link.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { aPeer } from "#tests/support/smtp.ts";

vi.setConfig({ testTimeout: 240_000 });

test("an invoice goes out by email behind its cover, once, and its delivery says so", async () => {
  const desk = aDesk();
  const { act, lineId } = desk;
  const office = getOffice(act.db);
  if (office === null) throw new Error("no office");
  putOffice(act.db, { ...office, payee: "Bellwether Trust Account" });
  const row = aLedgerEntry(1, { amount: 119_000, on: "2026-11-20", dueOn: "2026-12-25" });
  insertRow(act.db, "ledger", { lineId, row });
  for (const { key } of reportOn(fileOf(act, lineId), act.today).holds)
    must(waiveHold(act, { lineId, holdKey: key, reason: "The owner asked for the bill" }));
  const one = { partyId: "owner-12", propertyId: "12", tieInId: null, splitId: null };
  const order = { lineId, kind: "invoice-cover", replyBy: null, recipients: [one] } as const;
  const { noticeIds } = must(draftNotices(act, order));
  const sending = { lineId, noticeIds, method: "mail-message", sentOn: act.today } as const;
  must(sendNotices(act, sending));
  expect(sendNotices(act, sending)).toMatchObject({ ok: false });
  const peer = await aPeer();
  const place = aWorker(desk, peer.smtp);
  expect(await sendNextOutgoing(place)).toBe(true);
  expect(await sendNextOutgoing(place)).toBe(false);
  expect(peer.received).toHaveLength(1);
  const [mail] = peer.received;
  const text = readPdf(mail?.attachments[0]?.content ?? new Uint8Array()).text();
  expect(text).toContain("Payment slip");
  expect(text).toContain("1,190.00");
  expect(fileOf(act, lineId).deliveries).toMatchObject([
    { noticeId: noticeIds[0], method: "mail-message", tracking: mail?.messageId },
  ]);
});
