import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import type { Account } from "#lib/domain/ledger/balance.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { payInFullAction } from "./actions.ts";
import styles from "./money.module.css";

/** One press: the balance due, paid today by check; the check’s number if it is at hand. */
export function PayInFull({
  lineId,
  account: { partyId, propertyId },
  owed,
  name,
}: {
  readonly lineId: string;
  readonly account: Account;
  readonly owed: Cents;
  /** Whose account it is, for those who hear the form. */
  readonly name: string;
}) {
  return (
    <ActionForm
      key={owed}
      className={styles["pay"] ?? ""}
      action={payInFullAction.bind(null, { lineId, partyId, propertyId, owed })}
      label={`${formatCents(owed)} paid in full: ${name}`}
    >
      <input
        className="input"
        name="reference"
        aria-label={`Check number, ${name}`}
        placeholder="check no."
        autoComplete="off"
      />
      <SubmitButton pendingWord="Saving…" quiet>
        Paid in full
      </SubmitButton>
    </ActionForm>
  );
}
