import type { z } from "zod";
import { PARTY_LANGUAGES, PARTY_ROLES, STAKES } from "#lib/domain/facts/party.ts";
import type { ListedFields } from "#lib/domain/party/listed-row.ts";
import { NAME_ORDERS } from "#lib/domain/party/owner-names.ts";
import { fieldsFor } from "./field.ts";

const f = fieldsFor("memory");

/** The shape of one row of a list of owners as a browser sends it. */
export const LISTED_ROW: z.ZodType<ListedFields> = f.row({
  parcel: f.text,
  siteNumber: f.text,
  site: f.text,
  siteUnit: f.text,
  siteCity: f.text,
  siteState: f.text,
  siteZip: f.text,
  siteLast: f.text,
  stake: f.oneOf(STAKES).default("candidate"),
  owner: f.text,
  owner2: f.text,
  order: f.oneOf(NAME_ORDERS).default("first-last"),
  role: f.oneOf(PARTY_ROLES).optional(),
  unit: f.text,
  careOf: f.text,
  mail: f.text,
  mail2: f.text,
  mailUnit: f.text,
  mailCity: f.text,
  mailState: f.text,
  mailZip: f.text,
  mailLast: f.text,
  phone: f.text,
  email: f.text,
  language: f.oneOf(PARTY_LANGUAGES).optional(),
  needs: f.text,
  note: f.text,
  sameAs0: f.text,
  sameAs1: f.text,
  sameAs2: f.text,
});
