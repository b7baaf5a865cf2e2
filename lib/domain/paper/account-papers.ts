import { accountsIn } from "../ledger/accounts.ts";
import { invoicePaper } from "./invoice-paper.ts";
import type { AccountPaper, PaperInput } from "./paper-frame.ts";
import { statementPaper } from "./statement-paper.ts";

/**
 * The papers for a list of properties and invoices, in its order: for a property the statement of
 * each account there, for an invoice the invoice. What is in the file no more is left out.
 */
export function accountPapers(input: PaperInput, subjectIds: readonly string[]): AccountPaper[] {
  const { file } = input;
  return subjectIds.flatMap((id) => {
    if (file.properties.some((property) => property.id === id))
      return accountsIn(file)
        .filter(({ propertyId }) => propertyId === id)
        .map((account) => statementPaper(input, account));
    const invoice = file.ledger.find((entry) => entry.id === id && entry.kind === "invoice");
    return invoice === undefined ? [] : [invoicePaper(input, id)];
  });
}
