import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { OfficeFields } from "#app/_components/office-fields.tsx";
import { daysBetween } from "#lib/domain/calendar/days.ts";
import { formatDate } from "#lib/domain/calendar/format-day.ts";
import type { Office } from "#lib/domain/file/line-file.ts";
import { formatAddress } from "#lib/domain/party/address.ts";
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
          <dt>Phone and mail</dt>
          <dd>
            {[office.phone, office.email].filter((part) => part !== "").join(", ") || "unknown"}
          </dd>
          <dt>Licence</dt>
          <dd>
            <Standing words={office.licence} until={office.licenceExpiresOn} today={today} />
          </dd>
          <dt>Bond</dt>
          <dd>
            <Standing words={office.bond} until={office.bondExpiresOn} today={today} />
          </dd>
          <dt>Insurance</dt>
          <dd>
            <Standing words={office.insurance} until={office.insuranceExpiresOn} today={today} />
          </dd>
          <dt>Time zone</dt>
          <dd>{office.zone}</dd>
        </dl>
      )}
      {may ? (
        <details className="screen-only">
          <summary>Change these facts</summary>
          <ActionForm action={saveOfficeAction} label="Facts of the office">
            <OfficeFields office={office} />
            <div>
              <SubmitButton pendingWord="Saving …">Save</SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </div>
  );
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
  if (until === null) return <>{words}; when it runs out is unknown</>;
  const ahead = daysBetween(today, until);
  if (ahead < 0)
    return (
      <>
        {words} <strong>ran out {formatDate(until)}</strong>
      </>
    );
  const soon = ahead <= SOON;
  const end = `to ${formatDate(until)}`;
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
