import { z } from "zod";
import { PAYMENT_METHODS } from "#lib/domain/facts/ledger-entry.ts";
import type { Office } from "#lib/domain/facts/line-file.ts";
import { OPEN_DAYS, type OpenHours } from "#lib/domain/facts/open-hours.ts";
import { ADDRESS } from "#lib/domain/facts/party.ts";
import { withStateWritten } from "#lib/domain/party/address.ts";
import { addressProblems } from "#lib/domain/party/address-check.ts";
import { phoneProblem } from "#lib/domain/party/phone.ts";
import { fieldsFor } from "#lib/exchange/field.ts";
import { fieldsShape } from "#lib/exchange/shape.ts";

const f = fieldsFor("memory");

const openHours = z.object({
  days: f.oneOf(OPEN_DAYS),
  from: f.timeOfDay.default(""),
  to: f.timeOfDay.default(""),
});

/** The facts of the office, each in its shape; an on-call number says when it is answered. */
export const OfficeShape: z.ZodType<Office> = z
  .object({
    name: f.name("the office's name"),
    license: f.text.default(""),
    licenseExpiresOn: f.day.nullable().default(null),
    bond: f.text.default(""),
    bondExpiresOn: f.day.nullable().default(null),
    insurance: f.text.default(""),
    insuranceExpiresOn: f.day.nullable().default(null),
    compensation: f.text.default(""),
    compensationExpiresOn: f.day.nullable().default(null),
    businessLicense: f.text.default(""),
    businessLicenseExpiresOn: f.day.nullable().default(null),
    address: fieldsShape(ADDRESS, "memory").transform(withStateWritten),
    phone: f.text.default(""),
    hours: openHours.nullable().default(null),
    onCallPhone: f.text.default(""),
    onCallHours: openHours.nullable().default(null),
    email: f.text.default(""),
    payee: f.text.default(""),
    payMethods: f.oneOf(PAYMENT_METHODS).array().default([]),
    payDays: f.whole(365).nullable().default(null),
    depositPercent: f.whole(100).nullable().default(null),
    bothLanguages: f.yesNo.default(false),
    zone: z.string().refine(isZone, "Choose a time zone, as America/Los_Angeles"),
  })
  .superRefine(({ onCallPhone, onCallHours, phone, hours, address }, context) => {
    const wants: readonly [boolean, string, string][] = [
      [
        onCallPhone !== "" && onCallHours === null,
        "onCallHours.days",
        "Say when the on-call number is answered, or leave the number empty",
      ],
      [
        onCallPhone === "" && onCallHours !== null,
        "onCallPhone",
        "Enter the number that is answered then, or say no hours",
      ],
      ...halfOpen("hours", hours),
      ...halfOpen("onCallHours", onCallHours),
      ...badPhone("phone", phone),
      ...badPhone("onCallPhone", onCallPhone),
      ...addressProblems(address).map(({ field, message }): [boolean, string, string] => [
        true,
        `address.${field}`,
        message,
      ]),
    ];
    for (const [wrong, path, message] of wants)
      if (wrong) context.addIssue({ code: "custom", path: path.split("."), message });
  });

function halfOpen(name: string, hours: OpenHours | null): [boolean, string, string][] {
  if (hours === null) return [];
  const half = (hours.from === "") !== (hours.to === "");
  return [[half, `${name}.${hours.from === "" ? "from" : "to"}`, "Enter both times, or neither"]];
}

function badPhone(name: string, typed: string): [boolean, string, string][] {
  const problem = phoneProblem(typed);
  return problem === null ? [] : [[true, name, problem]];
}

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}
