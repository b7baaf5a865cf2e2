import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { Cents } from "../money/cents.ts";
import type { Day } from "../time/day.ts";
import { daysBetween } from "../time/days.ts";
import { balanceOf, standingEntries } from "./balance.ts";

export const AGES = ["not-due", "to-30", "to-60", "to-90", "over-90"] as const;
/** How long what is open has been due: not yet, 1–30, 31–60, 61–90, over 90 days. */
export type Age = (typeof AGES)[number];

/** An invoice of which something is still open. */
interface OpenInvoice {
  readonly entry: LedgerEntry;
  readonly open: Cents;
  readonly dueOn: Day;
  /** Below zero: so many days before it is due. */
  readonly daysLate: number;
}

export interface Aging {
  readonly ages: Readonly<Record<Age, Cents>>;
  /** What the office holds beyond everything that was invoiced. */
  readonly ahead: Cents;
  /** Those not paid in full, the first due first. */
  readonly invoices: readonly OpenInvoice[];
  /** Sum of what is open past its day. */
  readonly overdue: Cents;
  /** The earliest day on which something open was or is due. */
  readonly oldestDue: Day | null;
}

/**
 * How old is what is open on ONE account. Money received and credits go to the invoice that is due
 * first, whatever was written on the check; a refund takes them away again. What was given back
 * beyond that counts as due on the day of the last refund. The ages less what is ahead are the
 * account's open balance, to the cent.
 */
export function agingOf(entries: readonly LedgerEntry[], today: Day): Aging {
  const { received, credited, refunded } = balanceOf(entries);
  let money = received + credited - refunded;
  const invoices: OpenInvoice[] = [];
  for (const charge of chargesIn(entries, Math.max(-money, 0))) {
    const paid = Math.min(Math.max(money, 0), charge.open);
    money -= paid;
    const open = charge.open - paid;
    if (open > 0) invoices.push({ ...charge, open, daysLate: daysBetween(charge.dueOn, today) });
  }
  const ages = sumByAge(invoices);
  return {
    ages,
    ahead: Math.max(money, 0),
    invoices,
    overdue: invoices.reduce((sum, { open, daysLate }) => (daysLate > 0 ? sum + open : sum), 0),
    oldestDue: invoices[0]?.dueOn ?? null,
  };
}

type Charge = Omit<OpenInvoice, "daysLate">;

/** What was asked for, the first due first; with what was refunded beyond all that came in. */
function chargesIn(entries: readonly LedgerEntry[], beyond: Cents): Charge[] {
  const standing = standingEntries(entries);
  const charges = standing.flatMap((entry) =>
    entry.kind === "invoice" ? [{ entry, open: entry.amount, dueOn: entry.dueOn ?? entry.on }] : [],
  );
  const refund = standing.findLast(({ kind }) => kind === "refund");
  if (refund !== undefined && beyond > 0)
    charges.push({ entry: refund, open: beyond, dueOn: refund.on });
  return charges.sort(
    (one, other) => one.dueOn.localeCompare(other.dueOn) || one.entry.number - other.entry.number,
  );
}

/** The age of something due so many days ago. */
export function ageOf(daysLate: number): Age {
  if (daysLate <= 0) return "not-due";
  if (daysLate <= 30) return "to-30";
  if (daysLate <= 60) return "to-60";
  return daysLate <= 90 ? "to-90" : "over-90";
}

function sumByAge(invoices: readonly OpenInvoice[]): Record<Age, Cents> {
  const ages: Record<Age, Cents> = {
    "not-due": 0,
    "to-30": 0,
    "to-60": 0,
    "to-90": 0,
    "over-90": 0,
  };
  for (const { open, daysLate } of invoices) ages[ageOf(daysLate)] += open;
  return ages;
}
