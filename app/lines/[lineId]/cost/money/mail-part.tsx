import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Tick } from "#app/_components/choice.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountEntries, accountsIn } from "#lib/domain/ledger/accounts.ts";
import { agingOf } from "#lib/domain/ledger/aging.ts";
import { billedParties } from "#lib/domain/ledger/billed-to.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { Outgoing } from "#lib/domain/notices/outgoing.ts";
import { counted, listed, propertyName } from "../../names.ts";
import { mailInvoicesAction } from "./actions.ts";

/** Emails invoices with a balance due as they are, without a cover letter. */
export function MailPart({
  lineId,
  file,
  today,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
  readonly work: boolean;
}) {
  const open = accountsIn(file).flatMap(
    (account) => agingOf(accountEntries(file, account), today).invoices,
  );
  if (!work || open.length === 0) return null;
  const went = listOutgoing(db(), lineId).filter(({ entryId }) => entryId !== null);
  const reached = open.filter(({ entry }) => addressed(file, entry).length > 0);
  const without = open.flatMap(({ entry }) =>
    addressed(file, entry).length > 0 ? [] : [`No. ${entry.number}`],
  );
  return (
    <div className="screen-only">
      <Section
        title="Email invoices"
        id="email"
        folded={`${counted(open.length, "invoice")} with a balance due`}
        note="Each goes as a PDF to everyone it is addressed to, without a cover letter, in their language. To ask for a reply or send a private link, write an invoice letter under “Who has been notified?” instead."
      >
        <ActionForm
          className="stack"
          action={mailInvoicesAction.bind(null, lineId)}
          label="Email invoices"
        >
          {reached.map(({ entry, open }) => (
            <Tick
              key={entry.id}
              name="invoice"
              value={entry.id}
              label={`No. ${entry.number}, ${propertyName(file, entry.propertyId)}, ${listed(addressed(file, entry))}: ${formatCents(open)}${wentWords(went, entry)}`}
            />
          ))}
          {without.length === 0 ? null : (
            <p className="muted">
              No email address on file for {listed(without)}. Enter one under{" "}
              <Link href={`/lines/${lineId}/who`}>Who is on it?</Link>
            </p>
          )}
          {reached.length === 0 ? null : (
            <>
              {went.length === 0 ? null : <Tick name="again" label="Send again" />}
              <div>
                <SubmitButton pendingWord="Sending…">Email the checked invoices</SubmitButton>
              </div>
            </>
          )}
        </ActionForm>
      </Section>
    </div>
  );
}

/** Those it is addressed to who have an email address. */
function addressed(file: LineFile, entry: LedgerEntry): string[] {
  return billedParties(file, entry).flatMap(({ name, email }) => (email === "" ? [] : [name]));
}

const STATE_WORDS: Record<Outgoing["state"], string> = {
  waiting: "waiting to be emailed",
  sending: "being emailed",
  sent: "already emailed",
  failed: "email failed",
};

function wentWords(went: readonly Outgoing[], { id }: LedgerEntry): string {
  const last = went.findLast(({ entryId }) => entryId === id);
  return last === undefined ? "" : ` (${STATE_WORDS[last.state]})`;
}
