import type { z } from "zod";
import { PARTY_LANGUAGES, PARTY_ROLES, STAKES } from "#lib/domain/facts/party.ts";
import type { ListedFields } from "#lib/domain/party/listed-row.ts";
import { NAME_ORDERS } from "#lib/domain/party/owner-names.ts";
import { fieldsFor } from "./field.ts";

const f = fieldsFor("memory");

/** The shape of one row of a list of owners as a browser sends it. */
export const LISTED_ROW: z.ZodType<ListedFields> = f.row({
  parcel: f.text.default(""),
  siteNumber: f.text.default(""),
  site: f.text.default(""),
  siteUnit: f.text.default(""),
  siteCity: f.text.default(""),
  siteState: f.text.default(""),
  siteZip: f.text.default(""),
  siteLast: f.text.default(""),
  stake: f.oneOf(STAKES).default("candidate"),
  owner: f.text.default(""),
  owner2: f.text.default(""),
  order: f.oneOf(NAME_ORDERS).default("first-last"),
  role: f.oneOf(PARTY_ROLES).optional(),
  unit: f.text.default(""),
  careOf: f.text.default(""),
  mail: f.text.default(""),
  mail2: f.text.default(""),
  mailUnit: f.text.default(""),
  mailCity: f.text.default(""),
  mailState: f.text.default(""),
  mailZip: f.text.default(""),
  mailLast: f.text.default(""),
  phone: f.text.default(""),
  email: f.text.default(""),
  language: f.oneOf(PARTY_LANGUAGES).optional(),
  needs: f.text.default(""),
  note: f.text.default(""),
  sameAs0: f.text.default(""),
  sameAs1: f.text.default(""),
  sameAs2: f.text.default(""),
});
