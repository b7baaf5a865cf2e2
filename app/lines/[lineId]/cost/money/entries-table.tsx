import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Field } from "#app/_components/field.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { effectOf, inNumberOrder, standingEntries } from "#lib/domain/ledger/balance.ts";
import { entryWords } from "#lib/domain/ledger/statement-of-account.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../../beneath.tsx";
import { partyName, propertyName } from "../../names.ts";
import { PaperLink } from "../../notices/paper-link.tsx";
import { printAccountsAction, reverseEntryAction } from "./actions.ts";
import styles from "./money.module.css";

interface BookProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly work: boolean;
}

/** Every entry, the latest first, each with what may be done about it. */
export function EntriesTable({ lineId, file, report, work }: BookProps) {
  if (file.ledger.length === 0) {
    return (
      <Empty
        title="No ledger entries."
        example="No. 2, payment by check, reference 1042: $1,000.00 from 12 Fennel Row"
      >
        <p>Invoice the shares, or record the first deposit.</p>
      </Empty>
    );
  }
  const standing = new Set(standingEntries(file.ledger).map(({ id }) => id));
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
        <thead>
          <tr>
            <th scope="col">Entry</th>
            <th scope="col">Account</th>
            <th scope="col" className="num">
              Charged
            </th>
            <th scope="col" className="num">
              Paid or credited
            </th>
            {work ? (
              <th scope="col" className="screen-only">
                Actions
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {inNumberOrder(file.ledger)
            .toReversed()
            .map((entry) => (
              <tr key={entry.id}>
                <th scope="row">
                  {entryWords(file, { ...entry, dueOn: null }, "en")}
                  <Beneath>
                    {formatDay(entry.on, report.today)}
                    {entry.dueOn === null ? "" : `, due ${formatDay(entry.dueOn, report.today)}`},
                    entered by {entry.enteredBy}{" "}
                    <PaperLink
                      lineId={lineId}
                      file={file}
                      uploadId={entry.uploadId}
                      words="document"
                    />
                  </Beneath>
                </th>
                <td data-label="Account">
                  <span className="nowrap">{propertyName(file, entry.propertyId)}</span>
                  <Beneath>{partyName(file, entry.partyId)}</Beneath>
                </td>
                <Sides file={file} entry={entry} />
                {work ? (
                  <td className="screen-only">
                    <Deeds lineId={lineId} entry={entry} stands={standing.has(entry.id)} />
                  </td>
                ) : null}
              </tr>
            ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Sides({ file, entry }: { readonly file: LineFile; readonly entry: LedgerEntry }) {
  const effect = effectOf(file.ledger, entry);
  return (
    <>
      <td className="num" data-label="Charged" data-nil={effect > 0 ? undefined : ""}>
        {effect > 0 ? formatCents(effect) : "–"}
      </td>
      <td className="num" data-label="Paid or credited" data-nil={effect < 0 ? undefined : ""}>
        {effect < 0 ? formatCents(-effect) : "–"}
      </td>
    </>
  );
}

function Deeds({
  lineId,
  entry,
  stands,
}: {
  readonly lineId: string;
  readonly entry: LedgerEntry;
  readonly stands: boolean;
}) {
  if (!stands) return null;
  return (
    <div className="stack-tight">
      {entry.kind === "invoice" ? (
        <JobButton
          start={printAccountsAction.bind(null, lineId, [entry.id])}
          working="Creating the invoice"
          paper={`/lines/${lineId}/notices/paper`}
        >
          Invoice as PDF
        </JobButton>
      ) : null}
      <details>
        <summary>Reverse</summary>
        <ActionForm
          className="stack-tight"
          action={reverseEntryAction.bind(null, { lineId, entryId: entry.id })}
          label={`Reverse No. ${entry.number}`}
        >
          <Field
            label={`Reason for reversing No. ${entry.number}`}
            name="reason"
            required
            example="Check was returned (NSF)"
          />
          <div>
            <SubmitButton pendingWord="Saving…" quiet>
              Reverse No. {entry.number}
            </SubmitButton>
          </div>
        </ActionForm>
      </details>
    </div>
  );
}
