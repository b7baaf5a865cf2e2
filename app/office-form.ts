import { parseTypedDay } from "#app/_components/grid/day-text.ts";
import { oneOf, textOf, textOrNull, textsOf } from "#app/form.ts";
import { PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { OPEN_DAYS, type OpenHours } from "#lib/domain/facts/open-hours.ts";
import { parseTime } from "#lib/domain/time/time-of-day.ts";
import { err, ok, type Result } from "#lib/result.ts";

const DAYS = ["licenseExpiresOn", "bondExpiresOn", "insuranceExpiresOn"] as const;

/** The office's facts as typed, or the day that is none. */
export function officeFrom(
  form: FormData,
): Result<Office, { readonly path: string; readonly message: string }> {
  const days: Record<string, string | null> = {};
  for (const name of DAYS) {
    const typed = textOrNull(form, name);
    const day = typed === null ? null : parseTypedDay(typed);
    if (typed !== null && day === null) {
      return err({
        path: name,
        message: `Not saved: “${typed}” is not a date. Enter it as 6/30/2027.`,
      });
    }
    days[name] = day;
  }
  return ok({
    name: textOf(form, "name"),
    license: textOf(form, "license"),
    licenseExpiresOn: days["licenseExpiresOn"] ?? null,
    bond: textOf(form, "bond"),
    bondExpiresOn: days["bondExpiresOn"] ?? null,
    insurance: textOf(form, "insurance"),
    insuranceExpiresOn: days["insuranceExpiresOn"] ?? null,
    address: addressFrom(form),
    phone: textOf(form, "phone"),
    hours: hoursFrom(form, "hours"),
    onCallPhone: textOf(form, "onCallPhone"),
    onCallHours: hoursFrom(form, "onCallHours"),
    payee: textOf(form, "payee"),
    payMethods: PAYMENT_METHODS.filter((method) => textsOf(form, "payMethods").includes(method)),
    payDays: wholeOrNull(form, "payDays"),
    depositPercent: wholeOrNull(form, "depositPercent"),
    email: textOf(form, "email"),
    zone: textOf(form, "zone"),
  });
}

/** Hours as typed: the days, and two times; null where no days were chosen. */
function hoursFrom(form: FormData, name: string): OpenHours | null {
  const days = oneOf(OPEN_DAYS, textOf(form, `${name}.days`));
  if (days === null) return null;
  const time = (field: string) => {
    const typed = textOf(form, `${name}.${field}`);
    return typed === "" ? "" : (parseTime(typed) ?? typed);
  };
  return { days, from: time("from"), to: time("to") };
}

/** A number as typed; what is none is left for the shape to refuse. */
function wholeOrNull(form: FormData, name: string): number | null {
  const typed = textOrNull(form, name);
  return typed === null ? null : Number(typed);
}

export function addressFrom(form: FormData): Office["address"] {
  return {
    street: textOf(form, "street"),
    unit: textOf(form, "unit"),
    city: textOf(form, "city"),
    state: textOf(form, "state"),
    zip: textOf(form, "zip"),
  };
}

/** The form's name for a field of the office: `address.street` is typed as `street`. */
export function officeField(path: string): string {
  return path.replace(/^(office\.)?(address\.)?/, "");
}
