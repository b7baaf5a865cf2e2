import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice, Tick } from "#app/_components/choice.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { Upload } from "#app/_components/upload.client.tsx";
import type { PaymentMethod } from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountOf, accountsIn } from "#lib/domain/ledger/accounts.ts";
import type { Account } from "#lib/domain/ledger/balance.ts";
import { billedTo } from "#lib/domain/ledger/billed-to.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { EnteredKind } from "#lib/operations/enter-money.ts";
import { listed, partyName, propertyName, stakeAt } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { enterMoneyAction } from "./actions.ts";
import { FillBalance } from "./fill-balance.client.tsx";
import type { MoneyQuery } from "./invoice-part.tsx";

const KIND_WORDS: Record<EnteredKind, string> = {
  payment: "payment: received against an invoice",
  deposit: "deposit: received before an invoice",
  credit: "credit: amount waived",
  refund: "refund: money returned",
};

const METHOD_WORDS: Record<PaymentMethod, string> = {
  check: "check",
  card: "card",
  "bank-transfer": "bank transfer",
  cash: "cash",
  other: "other",
};

/** Records money received or returned, and what is waived; an account’s balance due is filled in. */
export function MoneyForm({
  lineId,
  file,
  today,
  query,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly query: MoneyQuery;
}) {
  const options = accountOptions(file);
  if (options.length === 0) {
    return (
      <Empty title="No one to record a payment for yet.">
        <p>Enter the owners first, under “Who is on it?”.</p>
      </Empty>
    );
  }
  const asked = askedAccount(file, query);
  const balances = balancesOf(file);
  return (
    <ActionForm
      className="stack"
      action={enterMoneyAction.bind(null, lineId)}
      label="Record a payment"
      reset
    >
      <FillBalance balances={balances}>
        <Choice
          label="Type"
          name="kind"
          required
          defaultValue="payment"
          options={optionsOf(KIND_WORDS)}
        />
        <Choice
          label="Account"
          name="account"
          required
          defaultValue={asked}
          options={[{ value: "", label: "select" }, ...options]}
        />
        <Field
          label="Amount"
          name="amount"
          required
          inputMode="decimal"
          width={14}
          unit="$"
          defaultValue={balances[asked]}
          example="1,234.56"
        />
        <Field label="Date" name="on" type="date" required defaultValue={today} max={today} />
        <Choice
          label="Method"
          name="method"
          defaultValue="check"
          options={optionsOf(METHOD_WORDS)}
          hint="Leave as is for a credit."
        />
        <Field label="Reference" name="reference" hint="Check or transfer number." width={18} />
        <Field
          label="Note"
          name="note"
          hint="Required for a credit; prints on the owner’s statement."
          example="Access was a day late"
        />
        <Upload lineId={lineId} name="uploadId" label="Scan of the check or receipt" />
      </FillBalance>
      <Tick
        label="This refund is more than the credit balance (intended; say why in the note)"
        name="beyond"
      />
      <div>
        <SubmitButton pendingWord="Saving…">Post to ledger</SubmitButton>
      </div>
    </ActionForm>
  );
}

/**
 * Accounts first, those of several owners together once with all their names; then everyone else
 * with a role at a property, each once.
 */
function accountOptions(file: LineFile): { readonly value: string; readonly label: string }[] {
  const options = new Map<string, string>();
  for (const account of accountsIn(file)) {
    const names = billedTo(file, account);
    const together = names.length > 1 ? ", jointly" : "";
    options.set(
      keyOf(account),
      `${propertyName(file, account.propertyId)}: ${listed(names)}${together}`,
    );
  }
  for (const { partyId, propertyId } of file.roles) {
    const key = keyOf(accountOf(file, { partyId, propertyId }));
    if (options.has(key)) continue;
    options.set(key, `${partyName(file, partyId)}, ${stakeAt(file, partyId, propertyId)}`);
  }
  return [...options].map(([value, label]) => ({ value, label }));
}

/** What each account owes, as a person would type it; accounts that owe nothing are left out. */
function balancesOf(file: LineFile): Record<string, string> {
  const owing = accountsIn(file).filter(({ open }) => open > 0);
  return Object.fromEntries(
    owing.map((account) => [keyOf(account), formatCents(account.open).replace("$", "")]),
  );
}

function keyOf({ partyId, propertyId }: Account): string {
  return `${partyId} ${propertyId}`;
}

/** The account that the page's address names; one owner's name leads to the account of all. */
function askedAccount(file: LineFile, { account }: MoneyQuery): string {
  const [partyId = "", propertyId = ""] = account?.toString().split(" ") ?? [];
  return propertyId === "" ? "" : keyOf(accountOf(file, { partyId, propertyId }));
}
