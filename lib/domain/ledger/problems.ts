import type { LedgerEntry } from "../facts/ledger-entry.ts";

/** Something in the money book that can't be so. */
export interface LedgerProblem {
  /** Number of the row, from 0. */
  readonly row: number;
  readonly path: "number" | "amount" | "reversesId" | "dueOn";
  readonly message: string;
}

type Ledger = readonly LedgerEntry[];

/**
 * What keeps a money book from balancing: a number that is missing or there twice, an amount of
 * nothing, a reversal that takes back nothing, a reversal, another account's entry, another amount,
 * or what was taken back already.
 */
export function ledgerProblems(ledger: Ledger): LedgerProblem[] {
  return ledger.flatMap((entry, row) => {
    const found = [
      amountProblem(entry),
      numberProblem(ledger, entry, row),
      undoProblem(ledger, entry),
    ];
    return found.flatMap((problem) => (problem === null ? [] : [{ row, ...problem }]));
  });
}

type Found = Omit<LedgerProblem, "row"> | null;

function amountProblem({ amount }: LedgerEntry): Found {
  if (Number.isSafeInteger(amount) && amount > 0) return null;
  return {
    path: "amount",
    message: "An amount is whole cents above zero; the type sets the direction",
  };
}

function numberProblem(ledger: Ledger, entry: LedgerEntry, row: number): Found {
  const { number } = entry;
  const twice = ledger.some((each, at) => at < row && each.number === number);
  if (twice)
    return {
      path: "number",
      message: `There is already a No. ${number}; each number is used once`,
    };
  const before = number === 1 || ledger.some((each) => each.number === number - 1);
  if (number >= 1 && before) return null;
  return { path: "number", message: `No. ${number - 1} is missing; numbers must be consecutive` };
}

/** Why a reversal can't be: also asked before one is entered. */
export function undoProblem(ledger: Ledger, entry: LedgerEntry): Found {
  const { kind, reversesId } = entry;
  const wrong = (message: string): Found => ({ path: "reversesId", message });
  if (kind !== "reversal") {
    return reversesId === null ? null : wrong("Only a reversal can reverse another entry");
  }
  const undone = ledger.find(({ id }) => id === reversesId);
  if (undone === undefined) return wrong("Say which entry it reverses");
  if (undone.kind === "reversal")
    return wrong("A reversal can’t be reversed; enter the payment again");
  if (ledger.some((each) => each.id !== entry.id && each.reversesId === reversesId))
    return wrong(`No. ${undone.number} was already reversed`);
  const same =
    undone.partyId === entry.partyId &&
    undone.propertyId === entry.propertyId &&
    undone.amount === entry.amount;
  return same
    ? null
    : wrong(`A reversal must cover all of No. ${undone.number} on the same account`);
}
