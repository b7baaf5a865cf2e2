import { expect, test } from "vitest";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import type { Language } from "#lib/domain/say/language.ts";
import { aLedgerEntry } from "#tests/support/ledger.ts";
import { SAMPLE_AMOUNTS, sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

const [FIRST] = recipientsOf(sampleLine().file, sampleLine().report, "share-demand");
const READER = { partyId: FIRST?.partyId ?? "", propertyId: FIRST?.propertyId ?? "" };

function entry(number: number, overrides: Partial<LedgerEntry>): LedgerEntry {
  return aLedgerEntry(number, { ...READER, ...overrides });
}

function demand(ledger: readonly LedgerEntry[], language: Language = "en") {
  const { file, report, office } = sampleLine();
  const notice = sampleNotice(READER.partyId, READER.propertyId, {
    kind: "share-demand",
    language,
    replyBy: "2026-12-20",
  });
  const input = { file: { ...file, ledger }, report, office, notice };
  return {
    text: letterText(composeLetter(input)).replaceAll(/\s+/g, " "),
    gaps: letterGaps(input),
  };
}

const INVOICE = entry(1, { amount: 123_400, dueOn: "2026-10-01" });
const PAYMENT = entry(2, { kind: "payment", amount: 100_000 });

test("a demand asks for the share while nothing is invoiced", () => {
  const share = SAMPLE_AMOUNTS[READER.propertyId as keyof typeof SAMPLE_AMOUNTS];
  const { text } = demand([]);
  expect(text).toContain(formatCents(share));
  expect(text).not.toContain("statement of account");
});

test("a deposit counts toward the share before there is an invoice", () => {
  const share = SAMPLE_AMOUNTS[READER.propertyId as keyof typeof SAMPLE_AMOUNTS];
  const { text } = demand([entry(1, { kind: "deposit", amount: 100 })]);
  expect(text).toContain(`Balance due for`);
  expect(text).toContain(`I will pay ${formatCents(share - 100)}.`);
  expect(text).toContain("your $1.00 deposit is applied to it");
});

test("a demand asks for what is open by the money book, says since when, and encloses the statement", () => {
  const { text } = demand([INVOICE, PAYMENT]);
  expect(text).toContain("$234.00");
  expect(text).toContain("$1,234.00 invoiced; $1,000.00 paid or credited.");
  expect(text).toContain("The oldest amount was due on October 1, 2026.");
  expect(text).toContain("the statement of account");
  expect(text).toContain("I will pay $234.00.");
});

test("a demand for a tie-in that the authority accepted does not say that it is on record", () => {
  const { file, report, office } = sampleLine();
  const tieIns = report.tieIns.map((each) =>
    each.propertyId === READER.propertyId
      ? { ...each, standing: "accepted-by-ruling" as const }
      : each,
  );
  const notice = sampleNotice(READER.partyId, READER.propertyId, { kind: "share-demand" });
  const input = { file, report: { ...report, tieIns }, office, notice };
  const text = letterText(composeLetter(input)).replaceAll(/\s+/g, " ");
  expect(text).toContain("accepted in writing by the authority, though not on the permit record");
  expect(text).not.toContain("on the permit record, and found there by the camera");
});

test("a demand in Spanish says the same", () => {
  const { text } = demand([INVOICE, PAYMENT], "es");
  expect(text).toContain("Se facturó $1,234.00");
  expect(text).toContain("el estado de cuenta");
});

test("who has paid is not asked again", () => {
  const paid = [INVOICE, entry(2, { kind: "payment", amount: 123_400 })];
  expect(demand(paid).gaps.join()).toContain("has no balance due");
  const { file, report } = sampleLine();
  const asked = recipientsOf({ ...file, ledger: paid }, report, "share-demand");
  expect(asked.map(({ partyId }) => partyId)).not.toContain(READER.partyId);
});

test("another’s account stands in nobody’s demand", () => {
  const other = aLedgerEntry(3, { partyId: "other", propertyId: "elsewhere", amount: 987_654 });
  expect(demand([INVOICE, PAYMENT, other]).text).not.toContain("9,876.54");
});
