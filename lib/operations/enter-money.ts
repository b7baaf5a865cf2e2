import { insertRow } from "#db/queries/row.ts";
import {
  type LedgerEntry,
  type LedgerKind,
  PAYMENT_METHODS,
  type PaymentMethod,
} from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { accountEntries, accountOf } from "#lib/domain/ledger/accounts.ts";
import { balanceOf, standingEntries } from "#lib/domain/ledger/balance.ts";
import { billedTo } from "#lib/domain/ledger/billed-to.ts";
import { LEDGER_WORDS } from "#lib/domain/ledger/words.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { ledgerRows } from "./ledger-row.ts";
import { pastDay } from "./past-day.ts";

/** What the office enters by hand. Invoices follow from the split. */
export const ENTERED_KINDS = [
  "payment",
  "deposit",
  "credit",
  "refund",
] as const satisfies readonly LedgerKind[];
export type EnteredKind = (typeof ENTERED_KINDS)[number];

export interface MoneyWord {
  readonly kind: EnteredKind;
  readonly partyId: string;
  readonly propertyId: string;
  readonly amount: Cents;
  readonly on: Day;
  /** Null for a credit: nothing changes hands. */
  readonly method: PaymentMethod | null;
  readonly reference: string;
  readonly uploadId: string | null;
  readonly note: string;
  /** A refund beyond the credit balance is intended; the note says why. */
  readonly beyond: boolean;
  /** It is the whole balance due, as the person saw it. */
  readonly inFull?: boolean;
}

/**
 * Records money received or returned, or an amount waived: one more entry, never edited.
 * Refuses a party without a role or an account at the property, an amount of nothing, a day to come, the very same
 * entry again, a refund beyond the credit balance unless a note says that it is intended, and a payment
 * in full where the balance is no longer what the person saw.
 */
export function enterMoney(
  act: Act,
  { lineId, ...word }: MoneyWord & { readonly lineId: string },
): Result<{ entryId: string; number: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "enter-money" } as const;
  return changeLine(act, deal, (file) => {
    const wrong =
      wrongAccount(file, word) ??
      wrongWord(act, word) ??
      wrongRefund(file, word) ??
      wrongBalance(file, word) ??
      again(file, word);
    if (wrong !== null) return wrong;
    const { beyond: _, inFull: _inFull, ...facts } = word;
    const [entry] = ledgerRows(act, file.ledger, [facts]);
    if (entry === undefined) throw new Error("One entry was asked for and none was made");
    return ok({
      value: { entryId: entry.id, number: entry.number },
      sentence: `Posted No. ${entry.number}: ${sayEntry(file, entry)}.`,
      detail: { added: [entry] },
      write: (db) => insertRow(db, "ledger", { lineId, row: entry }),
    });
  });
}

function wrongAccount(file: LineFile, { partyId, propertyId, uploadId }: MoneyWord) {
  const at = (row: { partyId: string; propertyId: string }) =>
    row.partyId === partyId && row.propertyId === propertyId;
  if (!file.roles.some(at) && !file.ledger.some(at))
    return refuse("bad-value", "account", "Select someone with a role at the property");
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the document");
  return null;
}

function wrongWord(act: Act, { kind, amount, on, method, note }: MoneyWord) {
  if (!ENTERED_KINDS.includes(kind)) return refuse("bad-value", "kind", "Select the type");
  if (!Number.isSafeInteger(amount) || amount <= 0)
    return refuse("bad-value", "amount", "Enter an amount above zero; the type sets the direction");
  if (method !== null && !PAYMENT_METHODS.includes(method))
    return refuse("bad-value", "method", "Select the method");
  if (kind !== "credit" && method === null)
    return refuse("missing-value", "method", "Select the method");
  if (kind === "credit" && note.trim() === "")
    return refuse("missing-value", "note", "Say what the credit is for");
  return pastDay(act, { day: on, path: "on" });
}

/** The balance due is no longer what the person saw: someone else posted to the account. */
function wrongBalance(file: LineFile, { inFull, amount, ...account }: MoneyWord) {
  if (inFull !== true) return null;
  const { open } = balanceOf(accountEntries(file, account));
  return open === amount ? null : refuse("changed-meanwhile", "", "the balance due");
}

/** More than the credit balance is returned only where it is said to be intended. */
function wrongRefund(file: LineFile, { kind, amount, beyond, note, ...account }: MoneyWord) {
  if (kind !== "refund") return null;
  const held = Math.max(-balanceOf(accountEntries(file, account)).open, 0);
  if (amount <= held) return null;
  if (beyond && note.trim() !== "") return null;
  const holds =
    held === 0
      ? "This account has no credit balance"
      : `The credit balance is only ${formatCents(held)}`;
  return beyond
    ? refuse("missing-value", "note", `${holds}; say why more is refunded`)
    : refuse(
        "bad-value",
        "amount",
        `${holds}; check “This refund is more than the credit balance” if intended, and say why`,
      );
}

/** The same check twice is one check; a reference tells two alike ones apart. */
function again(file: LineFile, word: MoneyWord) {
  const fields = ["kind", "partyId", "propertyId", "amount", "on", "method", "reference"] as const;
  const there = standingEntries(file.ledger).find((entry) =>
    fields.every((field) => entry[field] === word[field]),
  );
  if (there === undefined) return null;
  const words = `Already in the ledger as No. ${there.number}; if there really were two, give each its own reference`;
  return refuse("already-there", "reference", words);
}

/** `payment of $119.00 by Jesús Peña for 14 Fennel Row`, for the history. */
export function sayEntry(
  file: LineFile,
  entry: Pick<LedgerEntry, "kind" | "partyId" | "propertyId" | "amount">,
): string {
  const what = LEDGER_WORDS.en.kind[entry.kind].toLowerCase();
  const names = billedTo(file, accountOf(file, entry));
  const place = nameRow(file, "properties", entry.propertyId).replace(/^property /, "");
  const way = entry.kind === "payment" || entry.kind === "deposit" ? "by" : "to";
  return `${what} of ${formatCents(entry.amount)} ${way} ${sayList(names)} for ${place}`;
}
