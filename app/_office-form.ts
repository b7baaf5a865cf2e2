import { parseTypedDay } from "#app/_components/grid/day-text.ts";
import { textOf, textOrNull } from "#app/_form.ts";
import type { Office } from "#lib/domain/file/line-file.ts";
import { err, ok, type Result } from "#lib/result.ts";

const DAYS = ["licenceExpiresOn", "bondExpiresOn", "insuranceExpiresOn"] as const;

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
        message: `Nothing was saved: “${typed}” is not a date. Write it as 6/30/2027.`,
      });
    }
    days[name] = day;
  }
  return ok({
    name: textOf(form, "name"),
    licence: textOf(form, "licence"),
    licenceExpiresOn: days["licenceExpiresOn"] ?? null,
    bond: textOf(form, "bond"),
    bondExpiresOn: days["bondExpiresOn"] ?? null,
    insurance: textOf(form, "insurance"),
    insuranceExpiresOn: days["insuranceExpiresOn"] ?? null,
    address: addressFrom(form),
    phone: textOf(form, "phone"),
    email: textOf(form, "email"),
    zone: textOf(form, "zone"),
  });
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
