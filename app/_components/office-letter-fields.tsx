import { PAYMENT_METHODS, type PaymentMethod } from "#lib/domain/facts/ledger-entry.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { OPEN_DAYS, type OpenDays, type OpenHours } from "#lib/domain/facts/open-hours.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";
import { Choice, Tick } from "./choice.tsx";
import { Field } from "./field.tsx";

export const OPEN_DAY_WORDS: Readonly<Record<OpenDays, string>> = {
  "every-day": "every day",
  "monday-to-friday": "Monday to Friday",
  "monday-to-saturday": "Monday to Saturday",
};

export const PAY_WORDS: Readonly<Record<PaymentMethod, string>> = {
  check: "check",
  card: "card",
  "bank-transfer": "bank transfer",
  cash: "cash",
  other: "other",
};

/** What letters say of how the office is reached and paid; each only where it is filled in. */
export function OfficeLetterFields({ office }: { readonly office: Office | null }) {
  return (
    <>
      <h3>Phone hours</h3>
      <HoursFields label="Phone is answered" name="hours" hours={office?.hours ?? null} />
      <div className="form-grid">
        <Field
          label="On-call phone"
          name="onCallPhone"
          type="tel"
          defaultValue={office?.onCallPhone}
          example="(360) 555-0109"
          hint="Printed only in letters with an after-hours contact"
        />
      </div>
      <HoursFields
        label="On-call phone is answered"
        name="onCallHours"
        hours={office?.onCallHours ?? null}
        hint="Every day without times means day and night"
      />
      <h3>Payment</h3>
      <div className="form-grid">
        <Field
          label="Payee"
          name="payee"
          defaultValue={office?.payee}
          example="Harrow & Teal Drain and Sewer"
        />
        <Field
          label="Invoices due in"
          name="payDays"
          defaultValue={office?.payDays ?? ""}
          inputMode="numeric"
          unit="days"
          width={4}
        />
        <Field
          label="Deposit before work"
          name="depositPercent"
          defaultValue={office?.depositPercent ?? ""}
          inputMode="numeric"
          unit="%"
          width={4}
          hint="0 for none"
        />
      </div>
      <fieldset className="stack-tight">
        <legend>Language of letters</legend>
        <Tick
          label="English and Spanish in one envelope for everyone whose language is not known"
          name="bothLanguages"
          defaultChecked={office?.bothLanguages ?? false}
        />
      </fieldset>
      <fieldset className="cluster">
        <legend>Payment methods</legend>
        {PAYMENT_METHODS.map((method) => (
          <Tick
            key={method}
            label={PAY_WORDS[method]}
            name="payMethods"
            value={method}
            defaultChecked={office?.payMethods.includes(method) ?? false}
          />
        ))}
      </fieldset>
    </>
  );
}

function HoursFields({
  label,
  name,
  hours,
  hint,
}: {
  readonly label: string;
  readonly name: string;
  readonly hours: OpenHours | null;
  readonly hint?: string;
}) {
  const days = OPEN_DAYS.map((value) => ({ value, label: OPEN_DAY_WORDS[value] }));
  return (
    <div className="form-grid">
      <Choice
        label={label}
        name={`${name}.days`}
        options={[{ value: "", label: "not entered" }, ...days]}
        defaultValue={hours?.days ?? ""}
        hint={hint}
      />
      <Field
        label="From"
        name={`${name}.from`}
        defaultValue={hours === null ? "" : formatTime(hours.from)}
        example="7:30 AM"
        width={8}
      />
      <Field
        label="To"
        name={`${name}.to`}
        defaultValue={hours === null ? "" : formatTime(hours.to)}
        example="4:30 PM"
        width={8}
      />
    </div>
  );
}
