import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { compareSplits } from "#lib/domain/split/compare.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";
import { listed } from "../names.ts";
import { CompareTable } from "./compare-table.client.tsx";
import type { BothOutcomes } from "./particulars.ts";
import { SplitBars } from "./split-bars.tsx";

/**
 * Every rule's amounts in one table and one drawing. Where owners are unknown, twice: with their
 * share carried by the others, and with it held apart.
 */
export function SideBySide({
  file,
  report,
  outcomes,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly outcomes: BothOutcomes;
}) {
  const unknown = nobodysTieIns(report.tieIns);
  if (unknown.length === 0) {
    return <OneWay file={file} report={report} outcomes={outcomes.carried} heading={null} />;
  }
  const names = listed(unknown.map((found) => found.tieIn.label));
  return (
    <div className="stack-wide">
      <OneWay
        file={file}
        report={report}
        outcomes={outcomes.carried}
        heading={`While the others carry the share of ${names}, whose owner is unknown`}
      />
      <OneWay
        file={file}
        report={report}
        outcomes={outcomes.heldApart}
        heading={`With the share of ${names} held apart until the owner is known`}
      />
    </div>
  );
}

function OneWay({
  file,
  report,
  outcomes,
  heading,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly outcomes: readonly SplitOutcome[];
  readonly heading: string | null;
}) {
  const chosen = latestSplit(file);
  const payers = compareSplits(outcomes, chosen?.rule ?? null);
  const workable = outcomes.filter((outcome) => outcome.refusal === null);
  const total = workable[0]?.total ?? null;
  return (
    <div className="stack">
      {heading === null ? null : <h3>{heading}</h3>}
      <CompareTable
        payers={payers}
        outcomes={outcomes}
        chosen={chosen?.rule ?? null}
        marks={Object.fromEntries(payers.map(({ key }) => [key, markOf(report, key)]))}
        caption={
          total === null
            ? "No rule can be worked out yet."
            : `${formatCents(total)} in all, under each rule. ${differenceWords(chosen?.rule ?? null)}`
        }
      />
      <SplitBars payers={payers} outcomes={outcomes} chosen={chosen?.rule ?? null} />
    </div>
  );
}

function differenceWords(chosen: string | null): string {
  return chosen === null
    ? "No rule is chosen yet."
    : "Below each amount: the difference to the chosen rule.";
}

/** The mark on the strip that belongs to a payer: the tie-in of the property, or the tie-in itself. */
function markOf(report: Report, key: string): string {
  const own = report.tieIns.find((found) => found.propertyId === key);
  return own?.tieIn.id ?? key;
}
