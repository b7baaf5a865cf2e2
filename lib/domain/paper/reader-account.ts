import { heldAt, type Owed, owedBy } from "../ledger/owed.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { paragraph } from "./common.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";

/** What the reader is asked for: what is open on their account, or their share before an invoice. */
export function demanded(facts: LetterFacts): Cents {
  return owedOf(facts)?.open ?? (facts.share?.amount ?? 0) - heldFor(facts);
}

/** What the reader’s account owes; null before anything was invoiced. */
export function owedOf({ file, party, property, report }: LetterFacts): Owed | null {
  if (property === null) return null;
  return owedBy(file, { partyId: party.id, propertyId: property.id }, report.today);
}

/** A deposit that came in before anything was invoiced. */
export function heldFor({ file, property }: LetterFacts): Cents {
  return property === null ? 0 : heldAt(file, property.id);
}

/** The one amount that a letter is about. */
export function amountBlock(words: string, amount: Cents): LetterBlock {
  return { kind: "amount", words, amount: formatCents(amount) };
}

/** To whom and how to pay; nothing where the office has not said. */
export function payToBlocks({ office, words }: LetterFacts): LetterBlock[] {
  if (office.payee === "") return [];
  const methods = office.payMethods.map((method) => words.demand.method[method]);
  const last = methods.at(-1) ?? "";
  const named =
    methods.length < 2 ? last : `${methods.slice(0, -1).join(", ")} ${words.demand.or} ${last}`;
  return [paragraph(words.demand.payTo(office.payee, named))];
}

/** What the office has not said of how it is paid. */
export function payeeGap({ office }: LetterFacts): string | null {
  return office.payee === "" || office.payMethods.length === 0
    ? "Payee and payment methods are not entered: add them under Office."
    : null;
}

/** Why there is no share to speak of. */
export function shareGap({ split, share, place }: LetterFacts): string | null {
  if (split === null) return "No split has been chosen yet.";
  return share === null ? `The split has no share for ${place}.` : null;
}
