import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { OfficeFields, OfficePaperFields, zoneWords } from "#app/_components/office-fields.tsx";
import {
  OfficeLetterFields,
  OPEN_DAY_WORDS,
  PAY_WORDS,
} from "#app/_components/office-letter-fields.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { isRoundTheClock } from "#lib/domain/facts/open-hours.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { daysBetween } from "#lib/domain/time/days.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { companyOf } from "#lib/operations/save-office.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { saveOfficeAction } from "./actions.ts";

/** The office's own facts, and, for admins, the form to change them. */
export function OfficeFacts({
  office,
  may,
  today,
}: {
  readonly office: Office | null;
  readonly may: boolean;
  readonly today: string;
}) {
  return (
    <div className="stack">
      {office === null ? null : (
        <dl className="facts">
          <dt>Address</dt>
          <dd>{formatAddress(office.address) || "unknown"}</dd>
          <dt>Phone and email</dt>
          <dd>
            {[formatPhone(office.phone), office.email].filter((part) => part !== "").join(", ") ||
              "unknown"}
          </dd>
          <dt>On call</dt>
          <dd>{onCallWords(office)}</dd>
          <dt>Payment</dt>
          <dd>{paymentWords(office)}</dd>
          <dt>Letters</dt>
          <dd>
            {office.bothLanguages
              ? "in English and Spanish where a language is not known"
              : "in English where a language is not known"}
          </dd>
          <dt>License</dt>
          <dd>
            <Standing words={office.license} until={office.licenseExpiresOn} today={today} />
          </dd>
          <dt>Bond</dt>
          <dd>
            <Standing words={office.bond} until={office.bondExpiresOn} today={today} />
          </dd>
          <dt>Insurance</dt>
          <dd>
            <Standing words={office.insurance} until={office.insuranceExpiresOn} today={today} />
          </dd>
          {office.compensation === "" ? null : (
            <>
              <dt>Workers’ compensation</dt>
              <dd>
                <Standing
                  words={office.compensation}
                  until={office.compensationExpiresOn}
                  today={today}
                />
              </dd>
            </>
          )}
          {office.businessLicense === "" ? null : (
            <>
              <dt>Business license</dt>
              <dd>
                <Standing
                  words={office.businessLicense}
                  until={office.businessLicenseExpiresOn}
                  today={today}
                />
              </dd>
            </>
          )}
          <dt>Time zone</dt>
          <dd>{zoneWords(office.zone)}</dd>
        </dl>
      )}
      {may ? (
        <details className="screen-only">
          <summary>Edit</summary>
          <ActionForm action={saveOfficeAction} label="Company details">
            <SeenField value={seenOf(companyOf(office))} />
            <OfficeFields office={office} />
            <OfficePaperFields office={office} />
            <OfficeLetterFields office={office} />
            <div>
              <SubmitButton pendingWord="Saving …">Save</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </div>
  );
}

function onCallWords({ onCallPhone, onCallHours }: Office): string {
  if (onCallPhone === "" || onCallHours === null) return "no on-call phone";
  const { days, from, to } = onCallHours;
  const times = from === "" ? "" : `, ${formatTime(from)} to ${formatTime(to)}`;
  const hours = isRoundTheClock(onCallHours) ? "day and night" : `${OPEN_DAY_WORDS[days]}${times}`;
  return `${formatPhone(onCallPhone)}, ${hours}`;
}

function paymentWords({ payee, payMethods, payDays, depositPercent }: Office): string {
  const parts = [
    payee === "" ? "" : `to ${payee}`,
    payMethods.map((method) => PAY_WORDS[method]).join(", "),
    payDays === null ? "" : `due in ${payDays} days`,
    depositPercent === null || depositPercent === 0 ? "" : `${depositPercent}% deposit`,
  ];
  return parts.filter((part) => part !== "").join("; ") || "not entered";
}

const SOON = 60;

function Standing({
  words,
  until,
  today,
}: {
  readonly words: string;
  readonly until: string | null;
  readonly today: string;
}) {
  if (words === "") return <>unknown</>;
  if (until === null) return <>{words}; expiration unknown</>;
  const ahead = daysBetween(today, until);
  if (ahead < 0)
    return (
      <>
        {words} <strong>expired {formatDate(until)}</strong>
      </>
    );
  const soon = ahead <= SOON;
  const end = `valid through ${formatDate(until)}`;
  return (
    <>
      {words},{" "}
      {soon ? (
        <strong>
          {end}, in {ahead} days
        </strong>
      ) : (
        end
      )}
    </>
  );
}
