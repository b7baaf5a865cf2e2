import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import {
  BILLINGS,
  type Billing,
  type Proposal,
  proposalsKey,
  proposedEntries,
} from "#lib/domain/ledger/propose.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { isStale } from "#lib/domain/split/stale.ts";
import { ASKS_FOR_MONEY } from "#lib/domain/stops/stopped-by.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import { latestSplit } from "../domain/split/latest-split.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { ledgerRows } from "./ledger-row.ts";

interface Invoicing {
  readonly lineId: string;
  readonly billing: Billing;
  /** Due date of the invoices. */
  readonly dueOn: Day;
  /** What the preview showed (`proposalsKey`), so that nothing else is entered than what was seen. */
  readonly seen: string;
  /** Only these properties; null: all that is open. */
  readonly propertyIds: readonly string[] | null;
}

/**
 * Posts what the split in force leaves to invoice: invoices, and credits where a new version asks
 * less than was invoiced. Refuses while a hold keeps the split from being final, while the split is
 * out of date, and where the file changed since the preview.
 */
export function invoiceSplit(
  act: Act,
  { lineId, billing, dueOn, seen, propertyIds }: Invoicing,
): Result<{ entryIds: string[]; invoiceIds: string[] }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "invoice-split" } as const;
  return changeLine(act, deal, (file) => {
    const report = reportOn(file, act.today);
    const wrong = wrongOrder(act, { billing, dueOn }) ?? wrongSplit(file, report);
    if (wrong !== null) return wrong;
    const all = proposedEntries(file, report, billing)?.proposals ?? [];
    if (proposalsKey(all) !== seen)
      return refuse("changed-meanwhile", "", "the split or the ledger");
    const chosen = all.filter(
      ({ propertyId }) => propertyIds === null || propertyIds.includes(propertyId),
    );
    if (chosen.length === 0)
      return refuse("missing-value", "property", "Nothing selected is left to invoice");
    const version = latestSplit(file);
    const rows = ledgerRows(
      act,
      file.ledger,
      chosen.map((proposal) => ({
        ...proposal,
        on: act.today,
        dueOn: proposal.kind === "invoice" ? dueOn : null,
        splitId: version?.id ?? null,
      })),
    );
    return ok({
      value: {
        entryIds: rows.map(({ id }) => id),
        invoiceIds: rows.flatMap(({ id, kind }) => (kind === "invoice" ? [id] : [])),
      },
      sentence: `Posted from split version ${version?.number ?? 0}: ${sayProposals(chosen)}.`,
      detail: { added: rows },
      write: (db) => {
        for (const row of rows) insertRow(db, "ledger", { lineId, row });
      },
    });
  });
}

function wrongOrder(act: Act, { billing, dueOn }: Pick<Invoicing, "billing" | "dueOn">) {
  if (!BILLINGS.includes(billing)) return refuse("bad-value", "billing", "Select who is billed");
  if (!isDay(dueOn)) return refuse("bad-value", "dueOn", "Enter a date as 11/25/2026");
  if (dueOn < act.today)
    return refuse("bad-value", "dueOn", "The due date has passed; enter a later one");
  return null;
}

function wrongSplit(file: LineFile, report: Report) {
  const version = latestSplit(file);
  if (version === null) return refuse("not-in-this-state", "", "Choose a rule for the split first");
  const held = refuseHeld(report, ASKS_FOR_MONEY, "");
  if (held !== null) return held;
  if (isStale(report, version))
    return refuse("not-in-this-state", "", "The split is out of date; update it first");
  return null;
}

/** `3 invoices over $1,200.00 and 1 credit over $5.00`. */
function sayProposals(proposals: readonly Proposal[]): string {
  const parts = (["invoice", "credit"] as const).flatMap((kind) => {
    const own = proposals.filter((each) => each.kind === kind);
    const sum = own.reduce((all, { amount }) => all + amount, 0);
    const many = `${own.length} ${kind}${own.length === 1 ? "" : "s"}`;
    return own.length === 0 ? [] : [`${many} for ${formatCents(sum)}`];
  });
  return sayList(parts);
}
