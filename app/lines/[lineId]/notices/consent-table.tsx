import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { onPage, Pages, pageFrom } from "#app/_components/pages.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { consentStanding } from "#lib/domain/consent/standing.ts";
import { consentTable } from "#lib/domain/consent/table.ts";
import { CONSENT_KINDS, type Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_STATE_WORDS, CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../beneath.tsx";
import { partyName, stakeAt } from "../names.ts";
import { type SignerCell, type SignerRow, signerRows } from "./consent-cells.ts";

interface ConsentTableProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}

/** So many signers stand on a page. */
const AT_ONCE = 40;

/** Signers down, the six consents across; each cell leads to where it is recorded. */
export function ConsentTable({
  lineId,
  file,
  report,
  asked,
}: ConsentTableProps & { readonly asked: string | string[] | undefined }) {
  const from = pageFrom(asked, AT_ONCE);
  const rows = signerRows(file, consentTable(file, report));
  if (rows.length === 0) {
    return (
      <Empty title="No signers yet.">
        <p>
          Enter the owners first, under <Link href={`/lines/${lineId}/who`}>Who is on it?</Link>
        </p>
      </Empty>
    );
  }
  return (
    <>
      <Scroll>
        <table className={`plain ${stacks["stacks"]} ${stacks["paired"]}`}>
          <Heads of={["Signer", ...CONSENT_KINDS.map((kind) => CONSENT_WORDS[kind])]} />
          <tbody>
            {onPage(rows, from, AT_ONCE).map((row) => (
              <tr key={`${row.partyId} ${row.propertyId}`}>
                <th scope="row">
                  {partyName(file, row.partyId)}
                  <Beneath>{stakeAt(file, row.partyId, row.propertyId)}</Beneath>
                </th>
                {row.cells.map((cell) => (
                  <td key={cell.kind} data-label={CONSENT_WORDS[cell.kind]}>
                    <Cell lineId={lineId} file={file} report={report} row={row} cell={cell} />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </Scroll>
      <Pages
        from={from}
        most={AT_ONCE}
        of={rows.length}
        what="signers"
        href={(page) => `/lines/${lineId}/notices/consents?page=${page}`}
      />
    </>
  );
}

function Cell({
  lineId,
  file,
  report,
  row,
  cell,
}: ConsentTableProps & { readonly row: SignerRow; readonly cell: SignerCell }) {
  const { consent, kind, open } = cell;
  const query = new URLSearchParams({ party: row.partyId, property: row.propertyId, kind });
  const href = `/lines/${lineId}/notices/consents?${query}#record`;
  if (consent === null) {
    return (
      <Link href={href} className={open ? undefined : "muted nowrap"}>
        {unsaidWords(cell, report.today)}
      </Link>
    );
  }
  return (
    <>
      <Link href={href}>{CONSENT_STATE_WORDS[consent.state]}</Link>{" "}
      {formatDay(consent.stateOn, report.today)}
      {consent.amount === null ? null : `, ${formatCents(consent.amount)}`}
      <Superseded file={file} report={report} consent={consent} />
    </>
  );
}

function unsaidWords({ askedOn, open }: SignerCell, today: string): string {
  if (askedOn !== null) return `requested ${formatDay(askedOn, today)}, no answer`;
  return open ? "needed, not requested" : "not requested";
}

/** Said beside a signature that is on an amount which is out of date. */
export function Superseded({
  file,
  report,
  consent,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly consent: Consent;
}) {
  if (consentStanding(file, consent, report) !== "superseded-amount") return null;
  return (
    <>
      {" "}
      <span className="tag">signed for an earlier amount</span>
    </>
  );
}
