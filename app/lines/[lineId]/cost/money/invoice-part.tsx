import Link from "next/link";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Field } from "#app/_components/field.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import {
  BILLINGS,
  type Billing,
  type Proposal,
  type Proposed,
  proposalsKey,
  proposedEntries,
} from "#lib/domain/ledger/propose.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { signersFor } from "#lib/domain/party/signers.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { isStale } from "#lib/domain/split/stale.ts";
import { addDays } from "#lib/domain/time/days.ts";
import { partyName, propertyName, tieInName } from "../../names.ts";
import { invoiceSplitAction } from "./actions.ts";
import styles from "./money.module.css";

/** What the page's address says: who is to be billed, whose payment is recorded. */
export interface MoneyQuery {
  readonly billing?: string | string[];
  readonly account?: string | string[];
}

interface PartProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly work: boolean;
  readonly query: MoneyQuery;
}

/** Days that an invoice gives unless the office says otherwise. */
const USUAL_DAYS = 30;

/** What the split in force still leaves to invoice, as it would be posted. */
export function InvoicePart({ lineId, file, report, work, query }: PartProps) {
  const billing = BILLINGS.find((each) => each === query.billing) ?? "one-invoice";
  const version = latestSplit(file);
  const proposed = proposedEntries(file, report, billing);
  if (version === null || proposed === null) return null;
  const why = whyNotYet(report, isStale(report, version));
  const isDone = proposed.proposals.length + proposed.blocked.length === 0;
  return (
    <Section
      title="Create invoices"
      id="invoice"
      note={`Split version ${version.number}, less what has been invoiced and not credited. After a new version, only the difference.`}
      {...(isDone ? { folded: "nothing left to invoice" } : {})}
    >
      {why === null ? null : <p className="muted">{why}</p>}
      {proposed.proposals.length === 0 ? (
        <p>Everything that can be invoiced has been; nothing is to be credited.</p>
      ) : (
        <>
          <BillingChoice lineId={lineId} file={file} billing={billing} />
          <ActionForm
            className="stack"
            action={invoiceSplitAction.bind(null, lineId)}
            label="Create invoices"
          >
            <input type="hidden" name="billing" value={billing} />
            <input type="hidden" name="seen" value={proposalsKey(proposed.proposals)} />
            <Preview file={file} proposals={proposed.proposals} ticks={work && why === null} />
            {work && why === null ? (
              <>
                <Field
                  label="Due date"
                  name="dueOn"
                  type="date"
                  required
                  min={report.today}
                  defaultValue={addDays(report.today, USUAL_DAYS)}
                />
                <div>
                  <SubmitButton pendingWord="Saving…">Post and print invoices</SubmitButton>
                </div>
              </>
            ) : null}
          </ActionForm>
        </>
      )}
      <NotAsked lineId={lineId} file={file} proposed={proposed} />
    </Section>
  );
}

function whyNotYet({ holds }: Report, stale: boolean): string | null {
  const held = holds.some(({ waiver, stops }) => waiver === null && stops.includes("final-split"));
  if (held) return "They can be posted once the holds above are cleared or waived.";
  return stale ? "The split is out of date: update it first, then invoice." : null;
}

function BillingChoice({
  lineId,
  file,
  billing,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly billing: Billing;
}) {
  const several = file.properties.some(({ id }) => signersFor(file, id).length > 1);
  if (!several) return null;
  const address = `/lines/${lineId}/cost/money`;
  return (
    <p className="screen-only">
      {billing === "one-invoice" ? (
        <>
          A property with several owners gets one invoice to all of them jointly.{" "}
          <Link href={`${address}?billing=each-owner#invoice`}>Invoice each owner separately</Link>
        </>
      ) : (
        <>
          Each owner of a property gets an invoice for an equal part.{" "}
          <Link href={`${address}#invoice`}>One invoice to all owners jointly</Link>
        </>
      )}
    </p>
  );
}

const KIND_WORDS: Record<Proposal["kind"], string> = { invoice: "invoice", credit: "credit" };

function Preview({
  file,
  proposals,
  ticks,
}: {
  readonly file: LineFile;
  readonly proposals: readonly Proposal[];
  readonly ticks: boolean;
}) {
  const places = [...new Set(proposals.map(({ propertyId }) => propertyId))];
  const net = proposals.reduce(
    (sum, { kind, amount }) => (kind === "invoice" ? sum + amount : sum - amount),
    0,
  );
  return (
    <Scroll>
      <table className={`plain ${styles["preview"]}`}>
        <Heads of={["Property", "To", { num: "Amount" }]} />
        <tbody>
          {places.flatMap((propertyId) =>
            proposals
              .filter((proposal) => proposal.propertyId === propertyId)
              .map((proposal, at) => (
                <tr key={`${propertyId} ${proposal.partyId}`}>
                  <th scope="row">
                    <PlaceCell
                      name={propertyName(file, propertyId)}
                      propertyId={propertyId}
                      tick={ticks && at === 0}
                    />
                  </th>
                  <td>{partyName(file, proposal.partyId)}</td>
                  <td className="num">
                    {KIND_WORDS[proposal.kind]} {formatCents(proposal.amount)}
                  </td>
                </tr>
              )),
          )}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">{net < 0 ? "Reduces balance" : "Increases balance"}</th>
            <td />
            <td className="num">{formatCents(Math.abs(net))}</td>
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}

function PlaceCell({
  name,
  propertyId,
  tick,
}: {
  readonly name: string;
  readonly propertyId: string;
  readonly tick: boolean;
}) {
  if (!tick) return name;
  return (
    <label className="check">
      <input type="checkbox" name="property" value={propertyId} defaultChecked />
      <span>{name}</span>
    </label>
  );
}

function NotAsked({
  lineId,
  file,
  proposed,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly proposed: Proposed;
}) {
  const { blocked, heldApart } = proposed;
  if (blocked.length + heldApart.length === 0) return null;
  return (
    <NoticeBox kind="caution" title="Not billed yet">
      <ul>
        {blocked.map(({ propertyId, amount, why }) => (
          <li key={propertyId}>
            {propertyName(file, propertyId)}, {formatCents(amount)}:{" "}
            {why === "no-owner" ? (
              <>
                no owner is known. <Link href={`/lines/${lineId}/who`}>Enter the owner</Link>
              </>
            ) : (
              <>
                not enough evidence that it is on the line.{" "}
                <Link href={`/lines/${lineId}/reconcile/undocumented`}>
                  Test its tie-in or record the owner’s written acceptance
                </Link>
              </>
            )}
          </li>
        ))}
        {heldApart.map(({ tieInId, amount }) => (
          <li key={tieInId}>
            {tieInId === null ? "A tie-in" : tieInName(file, tieInId)}, {formatCents(amount)}: set
            aside until its owner is known.
          </li>
        ))}
      </ul>
    </NoticeBox>
  );
}
