import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Fold } from "#app/_components/fold.client.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { payerKey } from "#lib/domain/split/compare.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { lineFileOf } from "../../../file.ts";
import { costAddress } from "../../address.ts";
import { CalculationTable } from "../../calculation-table.tsx";
import styles from "../../cost.module.css";
import { type CostQuery, particularsOf, unknownSharesOf } from "../../particulars.ts";

export const metadata: Metadata = { title: "Calculations" };

/** Every amount under one rule with the calculation behind it, to check or print. */
export default async function CalculationsPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string; rule: string }>;
  readonly searchParams: Promise<CostQuery>;
}) {
  const { lineId, rule: asked } = await params;
  const rule = SPLIT_RULES.find((each) => each === asked);
  if (rule === undefined) notFound();
  const { file, report } = await lineFileOf(lineId);
  const query = await searchParams;
  const particulars = particularsOf(file, report, query);
  const unknownShares = unknownSharesOf(file, query);
  const outcome = splitOutcome(file, report, { rule, ...particulars, unknownShares });
  return (
    <>
      <PageHead
        asked={`Calculations: ${outcome.title}`}
        answer={outcome.refusal ?? formatCents(outcome.total)}
      >
        {outcome.refusal === null ? <p>{outcome.sentence}</p> : null}
        <p className="screen-only">
          <Link href={costAddress(lineId, "compare", particulars)}>Back to the comparison</Link>
        </p>
      </PageHead>
      <div className={styles["rules"]}>
        {outcome.shares.map((share, at) => (
          <section
            key={payerKey(share)}
            id={payerKey(share)}
            className="stack-tight"
            aria-label={share.label}
          >
            <Fold
              onPhone
              opened={at === 0}
              summary={
                <h2>
                  {share.label}: {formatCents(share.amount)}
                </h2>
              }
            >
              <CalculationTable calculation={share} oddCents="" />
            </Fold>
          </section>
        ))}
      </div>
      {outcome.oddCents === "" ? null : <p className="muted">{outcome.oddCents}</p>}
    </>
  );
}
