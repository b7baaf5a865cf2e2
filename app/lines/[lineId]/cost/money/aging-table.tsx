import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { AGES, type Age } from "#lib/domain/ledger/aging.ts";
import { LEDGER_WORDS } from "#lib/domain/ledger/words.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { Beneath } from "../../beneath.tsx";
import { counted, propertyName } from "../../names.ts";
import styles from "./money.module.css";
import type { MoneyRow } from "./rows.ts";

const WORDS = LEDGER_WORDS.en.age;

/** How long each balance has been due, by account; nothing where nothing is due. */
export function AgingTable({
  lineId,
  file,
  rows,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly rows: readonly MoneyRow[];
}) {
  const open = rows.filter(({ aging }) => aging.invoices.length > 0);
  if (open.length === 0) return null;
  return (
    <Section
      title="Aging"
      folded={`${counted(open.length, "account")} with a balance due`}
      note="Payments are applied to the oldest due invoice, whatever the check says."
    >
      <Scroll>
        <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
          <Heads of={["Property", ...AGES.map((age) => ({ num: WORDS[age] }))]} />
          <tbody>
            {open.map(({ propertyId, partyId, billedTo, aging }) => (
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
                    data-nil={nil(aging.ages[age])}
                  >
                    {moneyWords(aging.ages[age])}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">Total</th>
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
  return rows.reduce((sum, { aging }) => sum + aging.ages[age], 0);
}
