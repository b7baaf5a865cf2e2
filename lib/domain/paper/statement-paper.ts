import { AGES, agingOf } from "../ledger/aging.ts";
import { type Account, balanceOf } from "../ledger/balance.ts";
import { shareIn } from "../ledger/propose.ts";
import { statementRows } from "../ledger/statement-of-account.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { latestSplit } from "../split/latest-split.ts";
import { heading, list, paragraph, table } from "./common.ts";
import type { LetterBlock } from "./letter.ts";
import {
  type AccountPaper,
  amount,
  framed,
  inReadersLanguages,
  type PaperFacts,
  type PaperInput,
  referenceOf,
} from "./paper-frame.ts";

/**
 * The statement of one account, in its readers' languages: every entry with the running balance, what
 * is open and since when. Throws where the account names nobody in the file.
 */
export function statementPaper(input: PaperInput, account: Account): AccountPaper {
  return inReadersLanguages(input, account, (facts) => statementFrom(facts, account));
}

function statementFrom(facts: PaperFacts, account: Account): AccountPaper {
  const { words, frame, place, today, file } = facts;
  const reference = referenceOf(facts);
  return {
    ...framed(facts, reference),
    title: words.statement.title,
    aside: [
      [frame.frame.date, frame.day(today)],
      [frame.frame.reference, reference],
    ],
    subject: words.statement.subject(place),
    blocks: [
      paragraph(words.statement.opening(place, file.line.name)),
      ...openBlocks(facts),
      ...rowBlocks(facts, account),
      ...ageBlocks(facts),
      paragraph(words.statement.ask),
    ],
  };
}

function openBlocks({ words, entries, today, file, property }: PaperFacts): LetterBlock[] {
  const { open } = balanceOf(entries);
  const { overdue } = agingOf(entries, today);
  const version = latestSplit(file);
  const share = version === null ? 0 : shareIn(version, property.id);
  const shareLine =
    version === null || share === 0
      ? []
      : [words.statement.share(formatCents(share), version.number)];
  const late = overdue > 0 ? [words.statement.overdue(formatCents(overdue))] : [];
  const lines = list([...shareLine, ...late]);
  if (open === 0) return [paragraph(words.statement.settled), ...lines];
  if (open > 0) return [amount(words.statement.open, open), ...lines];
  return [amount(words.statement.held, -open), paragraph(words.statement.heldNote), ...lines];
}

function rowBlocks({ file, words, frame, language }: PaperFacts, account: Account): LetterBlock[] {
  const rows = statementRows(file, account, language);
  if (rows.length === 0) return [paragraph(words.statement.empty)];
  const sum = (side: "charged" | "settled") =>
    formatCents(rows.reduce((all, row) => all + (row[side] ?? 0), 0));
  const side = (cents: Cents | null) => (cents === null ? "" : formatCents(cents));
  const last = formatCents(rows.at(-1)?.balance ?? 0);
  return table(
    words.statement.head,
    [
      ...rows.map((row) => [
        frame.day(row.on),
        row.words,
        side(row.charged),
        side(row.settled),
        formatCents(row.balance),
      ]),
      [words.statement.sum, "", sum("charged"), sum("settled"), last],
    ],
    { numeric: [2, 3, 4], totals: 1 },
  );
}

function ageBlocks({ words, entries, today }: PaperFacts): LetterBlock[] {
  const { ages, overdue } = agingOf(entries, today);
  if (overdue === 0) return [];
  const rows = AGES.filter((age) => ages[age] > 0).map((age) => [
    words.age[age],
    formatCents(ages[age]),
  ]);
  return [
    heading(words.statement.ages),
    ...table(words.statement.agesHead, rows, { numeric: [1] }),
    paragraph(words.statement.order),
  ];
}
