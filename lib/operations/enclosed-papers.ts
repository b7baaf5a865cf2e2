import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { accountEntries } from "#lib/domain/ledger/accounts.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import type { AccountPaper } from "#lib/domain/paper/paper-frame.ts";
import type { Statement } from "#lib/domain/paper/statement.ts";
import { enclosedStatements } from "./enclosed-statements.ts";

interface Facts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/** The papers that these letters say they enclose: a statement of a share, or invoices. */
export function enclosedPapers(
  sent: readonly { readonly notice: Notice; readonly letter: Letter }[],
  facts: Facts,
): Map<Letter, Statement | readonly AccountPaper[]> {
  const covers = sent.flatMap(({ notice, letter }): [Letter, readonly AccountPaper[]][] => {
    const papers = letter.kind === "invoice-cover" ? invoicesOf(notice, letter, facts) : [];
    return papers.length === 0 ? [] : [[letter, papers]];
  });
  return new Map<Letter, Statement | readonly AccountPaper[]>([
    ...enclosedStatements(sent, facts),
    ...covers,
  ]);
}

/** The invoices of the reader's account whose numbers stand in the letter, whatever was paid since. */
function invoicesOf(
  { partyId, propertyId }: Notice,
  { blocks }: Letter,
  { file, office, report }: Facts,
): AccountPaper[] {
  if (propertyId === null) return [];
  // “No. 2”, “Núm. 2”: the number is the same in whatever words it was sent.
  const named = new Set(
    blocks.flatMap((block) =>
      block.kind === "table" ? block.rows.map(([first = ""]) => /\d+$/.exec(first)?.[0]) : [],
    ),
  );
  const ids = accountEntries(file, { partyId, propertyId })
    .filter((entry) => entry.kind === "invoice" && named.has(String(entry.number)))
    .map(({ id }) => id);
  return accountPapers({ file, office, today: report.today }, ids);
}
