import { z } from "zod";
import { parseTypedDay } from "#app/_components/grid/day-text.ts";
import { checked, numberOrNull, oneInOr, orNull, text, texts } from "#app/fields.ts";
import { PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { OPEN_DAYS, type OpenDays, type OpenHours } from "#lib/domain/facts/open-hours.ts";
import { parseTime } from "#lib/domain/time/time-of-day.ts";

/** The fields of an address, as a form has them. */
export const ADDRESS_FIELDS = { street: text, unit: text, city: text, state: text, zip: text };

const day = orNull(
  parseTypedDay,
  (typed) => `Not saved: “${typed}” is not a date. Enter it as 6/30/2027.`,
);

/** A time as typed; what is none is left for the shape to refuse. */
const time = text.transform((typed) => parseTime(typed) ?? typed);

const days = oneInOr(OPEN_DAYS, null);

/** The office's facts as typed. */
export const OFFICE_FIELDS = {
  name: text,
  license: text,
  licenseExpiresOn: day,
  bond: text,
  bondExpiresOn: day,
  insurance: text,
  insuranceExpiresOn: day,
  compensation: text,
  compensationExpiresOn: day,
  businessLicense: text,
  businessLicenseExpiresOn: day,
  ...ADDRESS_FIELDS,
  phone: text,
  "hours.days": days,
  "hours.from": time,
  "hours.to": time,
  onCallPhone: text,
  "onCallHours.days": days,
  "onCallHours.from": time,
  "onCallHours.to": time,
  payee: text,
  payMethods: texts,
  payDays: numberOrNull,
  depositPercent: numberOrNull,
  bothLanguages: checked,
  email: text,
  zone: text,
};

const officeTyped = z.object(OFFICE_FIELDS);

/** The office out of what was typed. */
export function officeOf(typed: z.output<typeof officeTyped>): Office {
  const { street, unit, city, state, zip, payMethods, ...rest } = typed;
  return {
    name: rest.name,
    license: rest.license,
    licenseExpiresOn: rest.licenseExpiresOn,
    bond: rest.bond,
    bondExpiresOn: rest.bondExpiresOn,
    insurance: rest.insurance,
    insuranceExpiresOn: rest.insuranceExpiresOn,
    compensation: rest.compensation,
    compensationExpiresOn: rest.compensationExpiresOn,
    businessLicense: rest.businessLicense,
    businessLicenseExpiresOn: rest.businessLicenseExpiresOn,
    address: { street, unit, city, state, zip },
    phone: rest.phone,
    hours: hoursOf(rest["hours.days"], rest["hours.from"], rest["hours.to"]),
    onCallPhone: rest.onCallPhone,
    onCallHours: hoursOf(
      rest["onCallHours.days"],
      rest["onCallHours.from"],
      rest["onCallHours.to"],
    ),
    payee: rest.payee,
    payMethods: PAYMENT_METHODS.filter((method) => payMethods.includes(method)),
    payDays: rest.payDays,
    depositPercent: rest.depositPercent,
    bothLanguages: rest.bothLanguages,
    email: rest.email,
    zone: rest.zone,
  };
}

/** The days and two times; null where no days were chosen. */
function hoursOf(days: OpenDays | null, from: string, to: string): OpenHours | null {
  return days === null ? null : { days, from, to };
}

/** The form's name for a field of the office: `address.street` is typed as `street`. */
export function officeField(path: string): string {
  return path.replace(/^(office\.)?(address\.)?/, "");
}
