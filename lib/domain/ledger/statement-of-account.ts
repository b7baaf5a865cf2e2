import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Cents } from "../money/cents.ts";
import type { Language } from "../say/language.ts";
import type { Day } from "../time/day.ts";
import { letterDay } from "../time/letter-day.ts";
import { accountEntries } from "./accounts.ts";
import { type Account, effectOf } from "./balance.ts";
import { LEDGER_WORDS } from "./words.ts";

/** One entry as its reader sees it, with what is open after it. */
export interface StatementRow {
  readonly entryId: string;
  readonly number: number;
  readonly on: Day;
  readonly words: string;
  /** Null where it went the other way. */
  readonly charged: Cents | null;
  readonly settled: Cents | null;
  readonly balance: Cents;
}

type Books = Pick<LineFile, "ledger" | "splits">;

/**
 * Every entry of one account in the order in which it was entered, in words, with the running
 * balance; the last one is what is open. What was taken back stays, with what takes it back.
 */
export function statementRows(
  file: Books & Pick<LineFile, "roles" | "parties">,
  account: Account,
  language: Language,
): StatementRow[] {
  let balance = 0;
  return accountEntries(file, account).map((entry) => {
    const effect = effectOf(file.ledger, entry);
    balance += effect;
    return {
      entryId: entry.id,
      number: entry.number,
      on: entry.on,
      words: entryWords(file, entry, language),
      charged: effect > 0 ? effect : null,
      settled: effect < 0 ? -effect : null,
      balance,
    };
  });
}

/** `Invoice no. 3, share of the work, split no. 2, due December 25, 2026`. */
export function entryWords(file: Books, entry: LedgerEntry, language: Language): string {
  const words = LEDGER_WORDS[language];
  if (entry.kind === "reversal") return reversalWords(file, entry, language);
  const split = file.splits.find(({ id }) => id === entry.splitId);
  const parts = [
    `${words.kind[entry.kind]} ${words.number(entry.number)}`,
    split === undefined ? "" : words.bySplit(split.number),
    entry.dueOn === null ? "" : words.due(letterDay(entry.dueOn, language)),
    entry.method === null ? "" : words.method[entry.method],
    entry.reference === "" ? "" : words.reference(entry.reference),
    entry.note,
    file.ledger.some(({ reversesId }) => reversesId === entry.id) ? words.undone : "",
  ];
  return parts.filter((part) => part !== "").join(", ");
}

function reversalWords({ ledger }: Books, entry: LedgerEntry, language: Language): string {
  const words = LEDGER_WORDS[language];
  const undone = ledger.find(({ id }) => id === entry.reversesId);
  const what = undone === undefined ? "" : words.kind[undone.kind];
  const taken = words.takesBack(what, undone?.number ?? 0);
  return entry.note === "" ? taken : `${taken}: ${entry.note}`;
}
