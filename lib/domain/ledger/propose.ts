import { consentStanding } from "../consent/standing.ts";
import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { SplitVersion } from "../facts/split.ts";
import type { Report } from "../findings/report.ts";
import { apportion } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { signersFor } from "../party/signers.ts";
import { latestSplit } from "../split/latest-split.ts";
import { mayBeDemanded } from "../tiein/may-be-demanded.ts";
import { accountsIn } from "./accounts.ts";
import { standingEntries } from "./balance.ts";

export const BILLINGS = ["one-invoice", "each-owner"] as const;
/**
 * Who is billed where a property has several owners: one invoice to all of them, on the account of
 * the first, or one each in equal parts.
 */
export type Billing = (typeof BILLINGS)[number];

/** An invoice or a credit that would bring what was invoiced to the split. */
export interface Proposal {
  readonly kind: "invoice" | "credit";
  readonly propertyId: string;
  readonly partyId: string;
  readonly amount: Cents;
}

/** What is still to be invoiced or given back, and what cannot be yet. */
export interface Proposed {
  readonly proposals: readonly Proposal[];
  readonly blocked: readonly Blocked[];
  /** Shares of unknown owners that are held apart: asked of nobody. */
  readonly heldApart: readonly { readonly tieInId: string | null; readonly amount: Cents }[];
}

interface Blocked {
  readonly propertyId: string;
  readonly amount: Cents;
  readonly why: "no-owner" | "not-shown";
}

type MoneyFile = Pick<LineFile, "ledger" | "splits" | "roles" | "parties" | "consents">;

/**
 * What the split in force asks of each property, less what was invoiced under any version and not
 * credited or taken back: what is left becomes an invoice, what was too much a credit. Credits given
 * for another reason than the split do not come back as invoices. A property whose tie-ins nothing
 * shows well enough (trade ladder: below level 5 and not accepted) is asked for nothing, unless its
 * owners agreed to pay. Null before a rule is chosen.
 */
export function proposedEntries(
  file: MoneyFile,
  report: Pick<Report, "tieIns" | "holds">,
  billing: Billing,
): Proposed | null {
  const version = latestSplit(file);
  if (version === null) return null;
  const rows = propertiesIn(file, version).map((propertyId) => {
    const due = shareIn(version, propertyId) - invoicedUnderSplit(file.ledger, propertyId);
    return { propertyId, due, why: due > 0 ? whyNot(file, report, propertyId) : null };
  });
  return {
    proposals: rows
      .filter(({ why }) => why === null)
      .flatMap((row) => proposalsFor(file, row, billing)),
    blocked: rows.flatMap(({ propertyId, due, why }) =>
      why === null ? [] : [{ propertyId, amount: due, why }],
    ),
    heldApart: version.shares.flatMap(({ propertyId, tieInId, amount }) =>
      propertyId === null && amount !== 0 ? [{ tieInId, amount }] : [],
    ),
  };
}

/** What a version asks of a property; nothing where it has no share. */
export function shareIn(version: Pick<SplitVersion, "shares">, propertyId: string): Cents {
  return version.shares
    .filter((share) => share.propertyId === propertyId)
    .reduce((sum, { amount }) => sum + amount, 0);
}

/** What a property was invoiced under the split, less what was credited because of it. */
export function invoicedUnderSplit(ledger: readonly LedgerEntry[], propertyId: string): Cents {
  return netOf(standingEntries(ledger).filter((entry) => entry.propertyId === propertyId));
}

function netOf(standing: readonly LedgerEntry[]): Cents {
  return standing
    .filter(({ splitId }) => splitId !== null)
    .reduce((net, { kind, amount }) => {
      if (kind === "invoice") return net + amount;
      return kind === "credit" ? net - amount : net;
    }, 0);
}

/** Properties with a share first, in the version's order; then those that were invoiced before. */
function propertiesIn(file: MoneyFile, version: SplitVersion): string[] {
  const sharing = version.shares.flatMap(({ propertyId }) => propertyId ?? []);
  const invoiced = accountsIn(file).map(({ propertyId }) => propertyId);
  return [...new Set([...sharing, ...invoiced])];
}

function whyNot(
  file: MoneyFile,
  report: Pick<Report, "tieIns" | "holds">,
  propertyId: string,
): Blocked["why"] | null {
  if (signersFor(file, propertyId).length === 0) return "no-owner";
  const own = report.tieIns.filter((each) => each.live && each.propertyId === propertyId);
  const shown = own.length === 0 || own.some((finding) => mayBeDemanded(finding, report));
  return shown || hasAgreed(file, propertyId) ? null : "not-shown";
}

function hasAgreed(file: MoneyFile, propertyId: string): boolean {
  const version = latestSplit(file);
  return file.consents.some(
    (consent) =>
      consent.kind === "pay" &&
      consentStanding(file, consent) === "current" &&
      consent.propertyId === propertyId &&
      consent.splitId === version?.id,
  );
}

interface DueRow {
  readonly propertyId: string;
  readonly due: Cents;
}

function proposalsFor(file: MoneyFile, { propertyId, due }: DueRow, billing: Billing): Proposal[] {
  const parts =
    due > 0
      ? invoiceParts(file, { propertyId, due }, billing)
      : creditParts(file, { propertyId, due });
  const kind = due > 0 ? "invoice" : "credit";
  return parts.flatMap(({ partyId, amount }) =>
    amount === 0 ? [] : [{ kind, propertyId, partyId, amount } as const],
  );
}

type Part = Pick<Proposal, "partyId" | "amount">;

function invoiceParts(file: MoneyFile, { propertyId, due }: DueRow, billing: Billing): Part[] {
  const owners = signersFor(file, propertyId);
  const billed = billing === "each-owner" ? owners : owners.slice(0, 1);
  return partsOf(
    due,
    billed.map(({ partyId }) => ({ partyId, weight: 1 })),
  );
}

/** A credit goes to who was invoiced, in proportion; else to the first owner. */
function creditParts(file: MoneyFile, { propertyId, due }: DueRow): Part[] {
  const invoiced = accountsIn(file)
    .filter((account) => account.propertyId === propertyId)
    .map(({ partyId }) => ({ partyId, weight: netOn(file.ledger, propertyId, partyId) }))
    .filter(({ weight }) => weight > 0);
  const [first] = signersFor(file, propertyId);
  const fallback = first === undefined ? [] : [{ partyId: first.partyId, weight: 1 }];
  return partsOf(-due, invoiced.length > 0 ? invoiced : fallback);
}

function netOn(ledger: readonly LedgerEntry[], propertyId: string, partyId: string): Cents {
  return netOf(
    standingEntries(ledger).filter(
      (entry) => entry.propertyId === propertyId && entry.partyId === partyId,
    ),
  );
}

function partsOf(total: Cents, among: readonly { partyId: string; weight: number }[]): Part[] {
  if (among.length === 0 || total === 0) return [];
  const amounts = apportion(
    total,
    among.map(({ weight }) => BigInt(weight)),
  );
  return among.map(({ partyId }, at) => ({ partyId, amount: amounts[at] ?? 0 }));
}

/** A text that is the same for the same proposals: a preview is entered as it was shown. */
export function proposalsKey(proposals: readonly Proposal[]): string {
  return JSON.stringify(
    proposals.map(({ kind, propertyId, partyId, amount }) => [kind, propertyId, partyId, amount]),
  );
}
