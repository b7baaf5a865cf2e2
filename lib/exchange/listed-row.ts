import type { z } from "zod";
import { PARTY_ROLES, STAKES } from "#lib/domain/facts/party.ts";
import type { ListedFields } from "#lib/domain/party/listed-row.ts";
import { NAME_ORDERS } from "#lib/domain/party/owner-names.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { fieldsFor } from "./field.ts";

const f = fieldsFor("memory");

/** The shape of one row of a list of owners as a browser sends it. */
export const LISTED_ROW: z.ZodType<ListedFields> = f.row({
  parcel: f.words,
  siteNumber: f.words,
  site: f.words,
  siteUnit: f.words,
  siteCity: f.words,
  siteState: f.words,
  siteZip: f.words,
  siteLast: f.words,
  stake: f.oneOf(STAKES).default("candidate"),
  owner: f.words,
  owner2: f.words,
  order: f.oneOf(NAME_ORDERS).default("first-last"),
  role: f.oneOf(PARTY_ROLES).optional(),
  unit: f.words,
  careOf: f.words,
  mail: f.words,
  mail2: f.words,
  mailUnit: f.words,
  mailCity: f.words,
  mailState: f.words,
  mailZip: f.words,
  mailLast: f.words,
  phone: f.words,
  email: f.words,
  language: f.oneOf(LANGUAGES).optional(),
  needs: f.words,
  note: f.words,
  sameAs0: f.words,
  sameAs1: f.words,
  sameAs2: f.words,
});
