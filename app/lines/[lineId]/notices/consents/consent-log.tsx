import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_STATE_WORDS, CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { partyName, propertyName } from "../../names.ts";
import { Superseded } from "../consent-table.tsx";
import { PaperLink } from "../paper-link.tsx";

/** Every consent ever recorded, the newest first; nothing is written over. */
export function ConsentLog({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  if (file.consents.length === 0) {
    return (
      <Empty
        title="No consents recorded yet."
        example="Entry, given by an owner, with a photo of the signed slip"
      >
        <p>Ask for entry and digging first: tests and locating depend on them.</p>
      </Empty>
    );
  }
  const newestFirst = file.consents.toSorted((one, other) =>
    other.stateOn.localeCompare(one.stateOn),
  );
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]}`}>
        <Heads of={["Date", "Signer", "Consent", "For what", "How"]} />
        <tbody>
          {newestFirst.map((consent) => (
            <tr key={consent.id}>
              <td className="nowrap">{formatDay(consent.stateOn, report.today)}</td>
              <th scope="row">
                {partyName(file, consent.partyId)}
                <span className="muted">, {propertyName(file, consent.propertyId)}</span>
              </th>
              <td data-label="Consent">
                {CONSENT_WORDS[consent.kind]}: {CONSENT_STATE_WORDS[consent.state]}
              </td>
              <td data-label="For what">
                {consent.amount === null ? "" : formatCents(consent.amount)}
                {versionWords(file, consent)}
                <Superseded file={file} report={report} consent={consent} />
                {consent.recordingNumber === "" ? "" : ` recorded as ${consent.recordingNumber}`}
                {consent.note === "" ? null : <span className="muted"> {consent.note}</span>}
              </td>
              <td data-label="How">
                <How lineId={lineId} file={file} consent={consent} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

function versionWords(file: LineFile, { splitId }: Consent): string {
  const version = file.splits.find(({ id }) => id === splitId);
  return version === undefined ? "" : `, version ${version.number}`;
}

/** On screen with its certificate, or on the document that is stored, or by word alone. */
function How({
  lineId,
  file,
  consent,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly consent: Consent;
}) {
  const signed = consent.restsOnId ?? consent.id;
  const signature = file.signatures.find(({ consentId }) => consentId === signed);
  if (signature !== undefined) {
    return (
      <>
        on screen as “{signature.signedName}”
        {consent.restsOnId === null ? "" : `, name checked by ${consent.enteredBy}`},{" "}
        <Link href={`/lines/${lineId}/notices/consents/signature/${signature.id}`}>
          certificate
        </Link>
      </>
    );
  }
  return <PaperLink lineId={lineId} file={file} uploadId={consent.uploadId} words="on paper" />;
}
