import type { z } from "zod";
import { PARTY_KINDS, PARTY_LANGUAGES, PARTY_ROLES } from "#lib/domain/facts/party.ts";
import type { PersonRow } from "#lib/domain/party/people.ts";
import { fieldsFor } from "./field.ts";

const f = fieldsFor("memory");

/** The shape of one line of the list of people. */
export const PERSON_ROW: z.ZodType<PersonRow> = f.row({
  id: f.id,
  name: f.words,
  kind: f.oneOf(PARTY_KINDS).default("person"),
  role: f.oneOf(PARTY_ROLES).nullable().default(null),
  propertyId: f.ref("property").nullable().default(null),
  unit: f.words,
  capacity: f.words,
  heldWith: f.words,
  careOf: f.words,
  street: f.words,
  mailUnit: f.words,
  city: f.words,
  state: f.words,
  zip: f.words,
  email: f.words,
  phone: f.words,
  language: f.oneOf(PARTY_LANGUAGES).default("unknown"),
  needs: f.words,
  note: f.words,
});
