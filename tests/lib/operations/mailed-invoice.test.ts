import { describe, expect, test, vi } from "vitest";
import { getOffice, putOffice } from "#db/queries/office.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import { replyThings } from "#lib/domain/desk/reply-things.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { readLineFile, writeLineFile } from "#lib/exchange/line-file.ts";
import type { Act } from "#lib/operations/act.ts";
import { dealWithReply, reopenReply } from "#lib/operations/deal-with-reply.ts";
import { draftNotices } from "#lib/operations/draft-notices.ts";
import { mailInvoices } from "#lib/operations/mail-invoices.ts";
import { judgeParties } from "#lib/operations/merge-parties.ts";
import { officeReportRows } from "#lib/operations/office-report-rows.ts";
import { recordInvoiceReply } from "#lib/operations/record-invoice-reply.ts";
import { sendNotices } from "#lib/operations/send-notices.ts";
import { sendNextOutgoing } from "#lib/operations/send-outgoing.ts";
import { readIncoming } from "#lib/operations/take-incoming.ts";
import { waiveHold } from "#lib/operations/waive-hold.ts";
import { aParty, aRole } from "#tests/support/file.ts";
import { aMailbox } from "#tests/support/imap.ts";
import { anAnswer } from "#tests/support/imap-server.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { aWorker } from "#tests/support/link.ts";
import { aDesk, fileOf, must } from "#tests/support/office.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { aPeer } from "#tests/support/smtp.ts";
import { aWorkplace } from "#tests/support/workplace.ts";

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
  function saying(word: Partial<Parameters<typeof recordInvoiceReply>[1]>) {
    const paper = { kind: "other", receivedOn: "2026-11-25", words: "", uploadId: null } as const;
    return { ...paper, ...word };
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

  test("what they answer waits on the desk until somebody deals with it", async () => {
    const bill = aBill();
    waived(bill);
    const { desk, act, lineId, order } = bill;
    must(mailInvoices(act, order));
    const peer = await aPeer();
    const mailbox = await aMailbox();
    const { place, wait } = aWorkplace(desk, { smtp: peer.smtp, imap: mailbox.imap });
    await sendNextOutgoing(place);
    const [sent] = listOutgoing(act.db, lineId);
    if (sent === undefined) throw new Error("nothing was sent");
    const { messageId, toAddress: to } = sent;
    mailbox.add(anAnswer({ messageId, to }, { words: "I paid this last week." }));
    wait(2);
    await readIncoming(place);
    const [entry] = fileOf(act, lineId).ledger;
    const [reply] = fileOf(act, lineId).replies;
    expect(reply).toMatchObject({
      ...{ noticeId: null, entryId: entry?.id, kind: "other", takenBy: "Mailbox", dealtBy: "" },
      words: "Email from ottilie@example.com: I paid this last week.",
    });
    expect(replyThings(fileOf(act, lineId), act.today)).toMatchObject([
      {
        sentence:
          "Ottilie Brandvold replied (invoice No. 1, 12 Fennel Row): “Email from ottilie@example.com: I paid this last week.”",
        kind: "due",
        waitsOn: "office",
      },
    ]);
    const text = writeLineFile({ file: fileOf(act, lineId), contents: new Map() });
    expect(must(readLineFile(text)).file.replies).toEqual(fileOf(act, lineId).replies);
    const dealing = { how: "answered", on: act.today, words: "Found it; sent a receipt" } as const;
    must(dealWithReply(act, { lineId, replyId: reply?.id ?? "", ...dealing }));
    expect(replyThings(fileOf(act, lineId), act.today)).toEqual([]);
    expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
      "Dealt with the reply to invoice No. 1 (answered): Found it; sent a receipt",
    );
    must(reopenReply(act, { lineId, replyId: reply?.id ?? "", reason: "It was another check" }));
    expect(replyThings(fileOf(act, lineId), act.today)).toHaveLength(1);
  });

  test("an answer by phone is taken down like one to a letter, and the desk says what to do", () => {
    const { act, lineId, order } = aBill();
    const [entryId = ""] = order.invoiceIds;
    const call = { kind: "wants-paper", words: "Mail it to my son", suitsOn: null } as const;
    must(recordInvoiceReply(act, { lineId, entryId, ...saying(call) }));
    const objection = { kind: "disagrees", words: "Not my pipe", suitsOn: "2026-12-01" } as const;
    must(recordInvoiceReply(act, { lineId, entryId, ...saying(objection) }));
    expect(fileOf(act, lineId).history.at(-1)?.sentence).toBe(
      "Reply to invoice No. 1: disagrees, December 1, 2026 works: Not my pipe",
    );
    expect(replyThings(fileOf(act, lineId), act.today)).toMatchObject([
      {
        sentence:
          "Ottilie Brandvold objects: Tuesday, December 1 works (invoice No. 1, 12 Fennel Row): “Not my pipe”",
        kind: "due",
      },
      {
        sentence:
          "Ottilie Brandvold wants it on paper; print the invoice and mail it (invoice No. 1, 12 Fennel Row): “Mail it to my son”",
        kind: "due",
        where: "cost/money",
      },
    ]);
  });

  test("an answer that is not of one person for sure, or of a party read as another, says so", () => {
    const { act, lineId, order } = aBill();
    const [entryId = ""] = order.invoiceIds;
    const answered = { lineId, entryId, ...saying({ receivedOn: act.today, words: "Paid." }) };
    must(recordInvoiceReply(act, answered));
    const said = () => replyThings(fileOf(act, lineId), act.today)[0]?.sentence;
    expect(said()).toBe("Ottilie Brandvold replied (invoice No. 1, 12 Fennel Row): “Paid.”");
    const county = aParty("county", { name: "BRANDVOLD, O." });
    insertRow(act.db, "parties", { lineId, row: county });
    must(
      judgeParties(act, {
        lineId,
        partyId: "owner-12",
        intoId: "county",
        same: true,
        reason: "Same house",
      }),
    );
    expect(said()).toBe("BRANDVOLD, O. replied (invoice No. 1, 12 Fennel Row): “Paid.”");
    insertRow(act.db, "roles", { lineId, row: aRole("owner-14", "12") });
    expect(said()).toBe("Someone at 12 Fennel Row replied (invoice No. 1, 12 Fennel Row): “Paid.”");
    // Invoiced by themselves since, the other owner may still have answered the first invoice.
    const other = aLedgerEntry(2, { partyId: "owner-14" });
    insertRow(act.db, "ledger", { lineId, row: other });
    expect(said()).toMatch(/^Someone at 12 Fennel Row replied/);
  });

  test("an answer to what is no invoice, or of a day to come, is refused", () => {
    const { act, lineId, order } = aBill();
    const [entryId = ""] = order.invoiceIds;
    const answered = { lineId, entryId, ...saying({ receivedOn: act.today, words: "Paid." }) };
    expect(recordInvoiceReply(act, { ...answered, entryId: "gone" })).toMatchObject({
      error: { path: "entryId" },
    });
    expect(recordInvoiceReply(act, { ...answered, receivedOn: "2199-01-01" })).toMatchObject({
      error: { path: "receivedOn" },
    });
    const technician: Act = { ...act, actor: { ...act.actor, role: "field" } };
    expect(recordInvoiceReply(technician, answered)).toMatchObject({ ok: false });
    expect(recordInvoiceReply(act, { ...answered, suitsOn: "soon" })).toMatchObject({
      error: { path: "suitsOn" },
    });
    expect(recordInvoiceReply(act, { ...answered, uploadId: "gone" })).toMatchObject({
      error: { path: "uploadId" },
    });
    expect(fileOf(act, lineId).replies).toEqual([]);
  });

  test("a line with an answered invoice and no letter is in the report of replies due", async () => {
    const { act, lineId, order } = aBill();
    const [entryId = ""] = order.invoiceIds;
    const paid = saying({ receivedOn: act.today, words: "Paid." });
    must(recordInvoiceReply(act, { lineId, entryId, ...paid }));
    const lines: unknown[][][] = [];
    for await (const rows of officeReportRows(act.db, "replies", act.today)) lines.push(rows);
    expect(lines.flat()).toHaveLength(1);
    expect(lines[0]?.[0]).toContain("invoice No. 1");
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
