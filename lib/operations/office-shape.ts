import { z } from "zod";
import type { Office } from "#lib/domain/file/line-file.ts";
import { fieldsFor } from "#lib/exchange/field.ts";
import { addressShape } from "#lib/exchange/shape.ts";

const f = fieldsFor("memory");

/** The facts of the office, each in its shape. */
export const OfficeShape: z.ZodType<Office> = z.object({
  name: f.name("the office's name"),
  licence: f.words,
  licenceExpiresOn: f.day.nullable().default(null),
  bond: f.words,
  bondExpiresOn: f.day.nullable().default(null),
  insurance: f.words,
  insuranceExpiresOn: f.day.nullable().default(null),
  address: addressShape(f),
  phone: f.words,
  email: f.words,
  zone: z.string().refine(isZone, "Choose a time zone, as America/Los_Angeles"),
});

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat("en-US", { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}
