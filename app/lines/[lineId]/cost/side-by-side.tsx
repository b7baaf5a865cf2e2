import { Fold } from "#app/_components/fold.client.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitRule, UnknownShares } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { compareSplits } from "#lib/domain/split/compare.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";
import { listed } from "../names.ts";
import { costAddress } from "./address.ts";
import { CompareTable } from "./compare-table.client.tsx";
import type { BothOutcomes, Particulars, RulesUnder } from "./particulars.ts";
import { SplitBars } from "./split-bars.tsx";

interface SideProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly particulars: Particulars;
}

/**
 * Every rule’s amounts in one table and one drawing. Where owners are unknown, the other way to treat
 * their share is folded below.
 */
export function SideBySide({
  outcomes: { main, other },
  ...side
}: SideProps & { readonly outcomes: BothOutcomes }) {
  if (other === null) return <Under {...side} under={main} />;
  const names = listed(nobodysTieIns(side.report.tieIns).map(({ tieIn }) => tieIn.label));
  return (
    <div className="stack-wide">
      <div className="stack">
        <h3>{TREATED[main.unknownShares](names)}</h3>
        <Under {...side} under={main} />
      </div>
      <Fold summary={<h3>{TREATED[other.unknownShares](names)}</h3>}>
        <Under {...side} under={other} />
      </Fold>
    </div>
  );
}

const TREATED: Record<UnknownShares, (names: string) => string> = {
  carried: (names) => `If the others cover the share of ${names} (owner unknown)`,
  "held-apart": (names) => `If the share of ${names} is set aside until the owner is known`,
};

function Under({
  lineId,
  file,
  report,
  particulars,
  under: { outcomes, unknownShares },
}: SideProps & { readonly under: RulesUnder }) {
  const chosen = latestSplit(file)?.rule ?? null;
  const payers = compareSplits(outcomes, chosen);
  const workable = outcomes.filter((outcome) => outcome.refusal === null);
  const total = workable[0]?.total ?? null;
  return (
    <div className="stack">
      <CompareTable
        payers={payers}
        rules={outcomes.map(({ choice, title, refusal }) => ({
          rule: choice.rule,
          title,
          refusal,
        }))}
        chosen={chosen}
        marks={Object.fromEntries(payers.map(({ key }) => [key, markOf(report, key)]))}
        calculation={costAddress(lineId, "compare/calculation", particulars, {
          unknown: unknownShares,
        })}
        caption={
          total === null
            ? "No rule can be calculated yet."
            : `${formatCents(total)} total under each rule. ${differenceWords(chosen)}`
        }
      />
      <Fold onPhone bare summary="How each amount varies">
        <SplitBars payers={payers} outcomes={outcomes} chosen={chosen} />
      </Fold>
    </div>
  );
}

function differenceWords(chosen: SplitRule | null): string {
  return chosen === null
    ? "No rule is chosen yet."
    : "The difference from the chosen rule is shown below each amount.";
}

/** The mark on the strip that belongs to a payer: the tie-in of the property, or the tie-in itself. */
function markOf(report: Report, key: string): string {
  const own = report.tieIns.find((found) => found.propertyId === key);
  return own?.tieIn.id ?? key;
}
