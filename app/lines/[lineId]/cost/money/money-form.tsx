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
import type { EnteredKind } from "#lib/operations/enter-money.ts";
import { listed, partyName, propertyName, stakeAt } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { enterMoneyAction } from "./actions.ts";
import type { MoneyQuery } from "./invoice-part.tsx";

const KIND_WORDS: Record<EnteredKind, string> = {
  payment: "payment: came in for an invoice",
  deposit: "deposit: came in before an invoice",
  credit: "credit: let off, and not invoiced again",
  refund: "refund: given back",
};

const METHOD_WORDS: Record<PaymentMethod, string> = {
  check: "check",
  card: "card",
  "bank-transfer": "bank transfer",
  cash: "cash",
  other: "another way",
};

/** Takes down money that came in or was given back, and what is let off. */
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
      <Empty title="There is nobody yet whose money it could be.">
        <p>Enter the owners first, under “Who is on it?”.</p>
      </Empty>
    );
  }
  return (
    <ActionForm
      className="stack"
      action={enterMoneyAction.bind(null, lineId)}
      label="Take money down"
      reset
    >
      <div className="form-grid">
        <Choice
          label="What it is"
          name="kind"
          required
          defaultValue="payment"
          options={optionsOf(KIND_WORDS)}
        />
        <Choice
          label="Whose"
          name="account"
          required
          defaultValue={askedAccount(file, query)}
          options={[{ value: "", label: "choose" }, ...options]}
        />
        <Field
          label="Amount"
          name="amount"
          required
          inputMode="decimal"
          width={14}
          unit="$"
          example="1,234.56"
        />
        <Field label="Day" name="on" type="date" required defaultValue={today} max={today} />
        <Choice
          label="How it was paid"
          name="method"
          defaultValue="check"
          options={optionsOf(METHOD_WORDS)}
          hint="A credit is paid in no way; this is then left out."
        />
        <Field
          label="Reference"
          name="reference"
          hint="Number of the check or the transfer."
          width={18}
        />
      </div>
      <Field
        label="Note"
        name="note"
        hint="A credit needs one: it stands in the owner’s statement."
        example="Access was late by a day"
      />
      <Tick
        label="More than is held for them is given back, and it is meant (say why in the note)"
        name="beyond"
      />
      <Upload lineId={lineId} name="uploadId" label="A scan of the check or receipt" />
      <div>
        <SubmitButton pendingWord="Entering …">Enter it in the book</SubmitButton>
      </div>
    </ActionForm>
  );
}

/**
 * Accounts first, those of several owners together once with all their names; then everybody else
 * with a role at a property, each once.
 */
function accountOptions(file: LineFile): { readonly value: string; readonly label: string }[] {
  const options = new Map<string, string>();
  for (const account of accountsIn(file)) {
    const names = billedTo(file, account);
    const together = names.length > 1 ? ", together" : "";
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

function keyOf({ partyId, propertyId }: Account): string {
  return `${partyId} ${propertyId}`;
}

/** The account that the page's address names; one owner's name leads to the account of all. */
function askedAccount(file: LineFile, { account }: MoneyQuery): string {
  const [partyId = "", propertyId = ""] = account?.toString().split(" ") ?? [];
  return propertyId === "" ? "" : keyOf(accountOf(file, { partyId, propertyId }));
}
