import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { formatDay } from "#lib/domain/calendar/format-day.ts";
import { CONSENT_KINDS, type Consent, type ConsentKind } from "#lib/domain/consent/consent.ts";
import { consentStanding } from "#lib/domain/consent/standing.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { partyName, propertyName, ROLE_WORDS } from "../_names.ts";
import { CONSENT_STATE_WORDS, CONSENT_WORDS } from "../_terms.ts";
import { type ConsentRow, consentRows } from "./consent-cells.ts";

/** Signers down, the six consents across; each cell leads to where it is recorded. */
export function ConsentTable({
  lineId,
  file,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly today: string;
}) {
  const rows = consentRows(file);
  if (rows.length === 0) {
    return (
      <Empty title="Nobody who could sign is in the file yet.">
        <p>
          Enter the owners first, under <Link href={`/lines/${lineId}/who`}>Who is on it?</Link>
        </p>
      </Empty>
    );
  }
  return (
    <Scroll label="Consents">
      <table className="plain">
        <thead>
          <tr>
            <th scope="col">Signer</th>
            {CONSENT_KINDS.map((kind) => (
              <th key={kind} scope="col">
                {CONSENT_WORDS[kind]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={`${row.partyId} ${row.propertyId}`}>
              <th scope="row">
                {partyName(file, row.partyId)}
                <br />
                <span className="muted small">
                  {ROLE_WORDS[row.role]} of {propertyName(file, row.propertyId)}
                </span>
              </th>
              {CONSENT_KINDS.map((kind) => (
                <td key={kind}>
                  <Cell lineId={lineId} file={file} row={row} kind={kind} today={today} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function Cell({
  lineId,
  file,
  row,
  kind,
  today,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly row: ConsentRow;
  readonly kind: ConsentKind;
  readonly today: string;
}) {
  const consent = row.cells[kind];
  const query = new URLSearchParams({ party: row.partyId, property: row.propertyId, kind });
  const href = `/lines/${lineId}/told/consents?${query}#record`;
  if (consent === null) {
    return (
      <Link href={href} className="muted">
        not asked
      </Link>
    );
  }
  return (
    <>
      <Link href={href}>{CONSENT_STATE_WORDS[consent.state]}</Link>{" "}
      {formatDay(consent.stateOn, today)}
      {consent.amount === null ? null : `, ${formatCents(consent.amount)}`}
      <Superseded file={file} consent={consent} />
    </>
  );
}

/** Said beside a signature that is on an amount which no longer holds. */
export function Superseded({
  file,
  consent,
}: {
  readonly file: LineFile;
  readonly consent: Consent;
}) {
  if (consentStanding(file, consent) !== "superseded-amount") return null;
  return (
    <>
      {" "}
      <span className="tag">signed on a superseded amount</span>
    </>
  );
}
