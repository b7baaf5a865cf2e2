import Link from "next/link";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { AGES, type Age } from "#lib/domain/ledger/ageing.ts";
import { LEDGER_WORDS } from "#lib/domain/ledger/words.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { Beneath } from "../../beneath.tsx";
import { propertyName } from "../../names.ts";
import styles from "./money.module.css";
import type { MoneyRow } from "./rows.ts";

const WORDS = LEDGER_WORDS.en.age;

/** How long what is open has been due, by account; nothing where nothing is open. */
export function AgeingTable({
  lineId,
  file,
  rows,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly rows: readonly MoneyRow[];
}) {
  const open = rows.filter(({ ageing }) => ageing.invoices.length > 0);
  if (open.length === 0) return null;
  return (
    <Section
      title="How long it has been due"
      note="What comes in pays the invoice that is due first, whatever was written on the check."
    >
      <Scroll>
        <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
          <thead>
            <tr>
              <th scope="col">Property</th>
              {AGES.map((age) => (
                <th key={age} scope="col" className="num">
                  {WORDS[age]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {open.map(({ propertyId, partyId, billedTo, ageing }) => (
              <tr key={`${propertyId} ${partyId}`}>
                <th scope="row">
                  <Link href={`/lines/${lineId}/cost/money/${propertyId}`}>
                    {propertyName(file, propertyId)}
                  </Link>
                  <Beneath>{billedTo}</Beneath>
                </th>
                {AGES.map((age) => (
                  <td
                    key={age}
                    className="num"
                    data-label={WORDS[age]}
                    data-nil={nil(ageing.ages[age])}
                  >
                    {moneyWords(ageing.ages[age])}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">In all</th>
              {AGES.map((age) => (
                <td
                  key={age}
                  className="num"
                  data-label={WORDS[age]}
                  data-nil={nil(sumOf(open, age))}
                >
                  {moneyWords(sumOf(open, age))}
                </td>
              ))}
            </tr>
          </tfoot>
        </table>
      </Scroll>
    </Section>
  );
}

function moneyWords(cents: Cents): string {
  return cents === 0 ? "–" : formatCents(cents);
}

/** Marks a cell that a phone leaves out. */
function nil(cents: Cents): "" | undefined {
  return cents === 0 ? "" : undefined;
}

function sumOf(rows: readonly MoneyRow[], age: Age): Cents {
  return rows.reduce((sum, { ageing }) => sum + ageing.ages[age], 0);
}
