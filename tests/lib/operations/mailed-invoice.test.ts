import { describe, expect, test, vi } from "vitest";
import { getOffice, putOffice } from "#db/queries/office.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { mailInvoices } from "#lib/operations/mail-invoices.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aWorker } from "#tests/support/link.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { aPeer } from "#tests/support/smtp.ts";

vi.setConfig({ testTimeout: 600_000 });

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

describe("an invoice goes out by email without a cover letter", () => {
  function aBill({ email = "ottilie@example.com", language = "en" as "en" | "both" } = {}) {
    const desk = aDesk();
    const { act, lineId } = desk;
    const file = fileOf(act, lineId);
    const owner = file.parties.find(({ id }) => id === "owner-12");
    if (owner === undefined) throw new Error("no owner");
    updateRow(act.db, "parties", { lineId, row: { ...owner, email, language } });
    const row = aLedgerEntry(1, { amount: 119_000, on: "2026-11-20", dueOn: "2026-12-25" });
    insertRow(act.db, "ledger", { lineId, row });
    return { desk, act, lineId, order: { lineId, invoiceIds: [row.id], again: false } };
  }
  function waived({ act, lineId }: ReturnType<typeof aBill>): void {
    for (const { key } of reportOn(fileOf(act, lineId), act.today).holds)
      must(waiveHold(act, { lineId, holdKey: key, reason: "The owner asked for the bill" }));
  }

  test("once, with its PDF, in both languages, and once more only when asked for", async () => {
    const bill = aBill({ language: "both" });
    waived(bill);
    const { desk, act, lineId, order } = bill;
    must(mailInvoices(act, order));
    expect(mailInvoices(act, order)).toMatchObject({ ok: false, error: { path: "again" } });
    const peer = await aPeer();
    const place = aWorker(desk, peer.smtp);
    expect(await sendNextOutgoing(place)).toBe(true);
    expect(await sendNextOutgoing(place)).toBe(false);
    const [mail] = peer.received;
    expect(mail?.headers.get("to")).toMatchObject({ value: [{ address: "ottilie@example.com" }] });
    expect(mail?.text).toContain("The invoice is attached as a PDF.");
    expect(mail?.text).toContain("La factura va adjunta en PDF.");
    expect(mail?.text).toContain("$1,190.00");
    const text = readPdf(mail?.attachments[0]?.content ?? new Uint8Array()).text();
    expect(text).toContain("Payment slip");
    expect(text).toContain("1,190.00");
    expect(fileOf(act, lineId).uploads.at(-1)).toMatchObject({ note: "As sent" });
    expect(fileOf(act, lineId).deliveries).toEqual([]);
    expect(mailInvoices(act, order)).toMatchObject({ ok: false, error: { path: "again" } });
    must(mailInvoices(act, { ...order, again: true }));
    expect(await sendNextOutgoing(place)).toBe(true);
    expect(peer.received).toHaveLength(2);
  });

  test("a hold on money, a missing address and a technician stop it", () => {
    const held = aBill();
    expect(mailInvoices(held.act, held.order)).toMatchObject({
      ok: false,
      error: { reason: "held" },
    });
    const none = aBill({ email: "" });
    waived(none);
    expect(mailInvoices(none.act, none.order)).toMatchObject({
      ok: false,
      error: { path: "invoice", detail: expect.stringContaining("No email address on file") },
    });
    const field = { ...none.act, actor: { ...none.act.actor, role: "field" as const } };
    expect(mailInvoices(field, none.order)).toMatchObject({
      ok: false,
      error: { reason: "not-allowed" },
    });
  });
});
