import { consentTable } from "../consent/table.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { type Proposal, proposedEntries } from "../ledger/propose.ts";
import { overdueAccounts } from "../ledger/sentence.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayProperty } from "../party/say.ts";
import { sayList } from "../say/say-list.ts";
import { latestSplit } from "../split/latest-split.ts";
import { isStale } from "../split/stale.ts";
import { formatDay } from "../time/format-day.ts";
import type { DueThing } from "./answer.ts";

type Thing = Omit<DueThing, "lineId">;

/** Money past due; and shares to be invoiced, or credited after a new split. */
export function moneyThings(file: LineFile, report: Report): Thing[] {
  const late = overdueAccounts(file, report.today).map(
    ({ propertyId, overdue, since }): Thing => ({
      sentence: `${formatCents(overdue)} from ${sayProperty(file, propertyId)} was due ${formatDay(since, report.today)}`,
      on: since,
      kind: "late",
      waitsOn: "neighbor",
      question: "cost",
      where: "cost/money",
    }),
  );
  const ready = readyProposals(file, report);
  return [
    ...late,
    ...listed(file, ready, { kind: "invoice", words: "Not yet invoiced" }),
    ...listed(file, ready, { kind: "credit", words: "Credit not yet issued after the new split" }),
  ];
}

/**
 * What may be entered now: the split can be final, and either its owners agreed or invoicing has
 * begun; a split that is only proposed is nothing to be invoiced.
 */
function readyProposals(file: LineFile, report: Report): readonly Proposal[] {
  const version = latestSplit(file);
  const held = report.holds.some(
    ({ waiver, stops }) => waiver === null && stops.includes("final-split"),
  );
  if (version === null || held || isStale(report, version)) return [];
  const begun = file.ledger.some(({ kind }) => kind === "invoice");
  const agreed = new Set(
    consentTable(file, report)
      .filter(({ cells }) => cells.pay.needed && cells.pay.inHand)
      .map(({ propertyId }) => propertyId),
  );
  const proposals = proposedEntries(file, report, "one-invoice")?.proposals ?? [];
  return proposals.filter(({ propertyId }) => begun || agreed.has(propertyId));
}

function listed(
  file: LineFile,
  proposals: readonly Proposal[],
  { kind, words }: { kind: Proposal["kind"]; words: string },
): Thing[] {
  const own = proposals.filter((each) => each.kind === kind);
  if (own.length === 0) return [];
  const sum = own.reduce((all, { amount }) => all + amount, 0);
  const places = sayList([...new Set(own.map((each) => sayProperty(file, each.propertyId)))], 4);
  return [
    {
      sentence: `${words}: ${formatCents(sum)}, ${places}`,
      on: null,
      kind: "due",
      waitsOn: "office",
      question: "cost",
      where: "cost/money#invoice",
    },
  ];
}
