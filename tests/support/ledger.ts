import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { FrozenShare, SplitVersion } from "#lib/domain/facts/split.ts";

/** An invoice of $100.00 to the owner of 12, unless said otherwise; the number makes the id. */
export function aLedgerEntry(number: number, overrides: Partial<LedgerEntry> = {}): LedgerEntry {
  return {
    id: `entry-${number}`,
    number,
    kind: "invoice",
    partyId: "owner-12",
    propertyId: "12",
    amount: 10_000,
    on: "2026-11-01",
    dueOn: null,
    splitId: null,
    reversesId: null,
    method: null,
    reference: "",
    uploadId: null,
    note: "",
    enteredBy: "Dana Okafor",
    enteredAt: "2026-11-01T17:00:00.000Z",
    ...overrides,
  };
}

/** Takes an entry back whole. */
export function aReversal(number: number, of: LedgerEntry): LedgerEntry {
  const { partyId, propertyId, amount, id } = of;
  return aLedgerEntry(number, { kind: "reversal", partyId, propertyId, amount, reversesId: id });
}

/** A version by its shares: the amount of each property in cents, or with what it carries. */
export function aVersion(
  number: number,
  shares: Readonly<Record<string, number | readonly [amount: number, carried: number]>>,
  overrides: Partial<SplitVersion> = {},
): SplitVersion {
  const frozen = Object.entries(shares).map(([propertyId, share]): FrozenShare => {
    const [amount, recoverable] = typeof share === "number" ? [share, 0] : share;
    return { propertyId, tieInId: null, amount, recoverable };
  });
  return {
    id: `split-${number}`,
    number,
    rule: "equal",
    faultStation: null,
    payerId: null,
    unknownShares: "carried",
    reason: "All owners asked for it",
    chosenBy: "Dana Okafor",
    chosenOn: "2026-10-01",
    total: frozen.reduce((sum, { amount }) => sum + amount, 0),
    shares: frozen,
    basis: "basis",
    optionId: null,
    sentAt: null,
    ...overrides,
  };
}
