import type { GridColumn } from "#app/_components/grid/column.ts";
import { ROLE_WORDS } from "#lib/domain/facts/party.ts";
import type { ListedFields } from "#lib/domain/party/listed-row.ts";
import type { NameOrder } from "#lib/domain/party/owner-names.ts";
import { LANGUAGE_WORDS, STAKE_WORDS } from "../field-terms.ts";
import { LANGUAGE_SYNONYMS, STAKE_SYNONYMS } from "../synonyms.ts";
import { optionsOf } from "../terms.ts";

type ListedColumn = GridColumn & { readonly key: keyof ListedFields };

const ORDER_WORDS: Record<NameOrder, string> = {
  "last-first": "last name first, as in BRANDVOLD OTTILIE",
  "first-last": "first name first, as in Ottilie Brandvold",
};

/** The columns of lists of owners, as assessors and offices name them. */
export const LISTED_COLUMNS: readonly ListedColumn[] = [
  column("parcel", "Parcel", 14, [
    ...["apn", "pin", "parcel id", "parcel number", "tax parcel", "account number", "tax id"],
  ]),
  column("owner", "Owner", 26, [
    ...["owner name", "owner 1", "owner name 1", "owner1", "name", "taxpayer", "taxpayer name"],
    ...["primary owner", "grantee"],
  ]),
  column("owner2", "Second owner", 22, [
    ...["owner 2", "owner name 2", "owner2", "co owner", "coowner", "secondary owner"],
  ]),
  {
    key: "order",
    title: "Order of names",
    kind: "choice",
    required: true,
    width: 20,
    choices: optionsOf(ORDER_WORDS),
  },
  column("careOf", "Care of", 18, ["c/o", "in care of", "attention", "attn", "mail name"]),
  column("siteNumber", "Site house number", 8, [
    ...["house number", "situs number", "street number", "site number", "situs house number"],
  ]),
  column("site", "Site address", 22, [
    ...["situs", "situs address", "property address", "location", "situs street", "site street"],
    ...["address", "street", "situs street name", "street name", "site addr", "location address"],
  ]),
  column("siteUnit", "Site unit", 8, ["situs unit", "unit number", "apt"]),
  column("siteCity", "Site city", 13, ["situs city", "property city", "city"]),
  column("siteState", "Site state", 5, ["situs state", "property state", "state"]),
  column("siteZip", "Site ZIP", 10, ["situs zip", "property zip", "zip", "zip code"]),
  column("siteLast", "Site city, state, ZIP", 22, [
    ...["situs city state zip", "site city state zip", "situs csz"],
  ]),
  column("legal", "Legal description", 22, [
    ...["legal", "legal desc", "legal description 1", "short legal", "abbreviated legal"],
  ]),
  column("mail", "Mailing address", 22, [
    ...["mailaddress", "mailing street", "mailaddress1", "mailing address 1", "owner address"],
    ...["mail addr 1", "taxpayer address", "mailing address line 1", "mail street", "mailaddr"],
  ]),
  column("mail2", "Mailing address, second line", 18, [
    ...["mailaddress2", "mailing address 2", "mail addr 2", "mailing address line 2"],
  ]),
  column("mailUnit", "Mailing unit", 8, ["mail unit"]),
  column("mailCity", "Mailing city", 13, ["mail city", "owner city", "taxpayer city"]),
  column("mailState", "Mailing state", 5, ["mail state", "owner state", "taxpayer state"]),
  column("mailZip", "Mailing ZIP", 10, ["mail zip", "mail zip code", "owner zip", "taxpayer zip"]),
  column("mailLast", "Mailing city, state, ZIP", 22, [
    ...["mail city state zip", "mailing city state zip", "mail csz", "city state zip"],
  ]),
  {
    key: "stake",
    title: "Connection",
    kind: "choice",
    choices: optionsOf(STAKE_WORDS, STAKE_SYNONYMS),
    hint: "New properties are “possibly connected” unless the list says otherwise",
  },
  { key: "role", title: "Role", kind: "choice", choices: optionsOf(ROLE_WORDS), width: 16 },
  column("unit", "Unit", 9, []),
  column("phone", "Phone", 14, ["owner phone"]),
  column("email", "Email", 22, ["owner email", "e-mail"]),
  {
    key: "language",
    title: "Language",
    kind: "choice",
    choices: optionsOf(LANGUAGE_WORDS, LANGUAGE_SYNONYMS),
  },
  column("needs", "Water-service needs", 22, []),
  column("note", "Note", 22, []),
];

function column(
  key: keyof ListedFields,
  title: string,
  width: number,
  pasteHeadings: readonly string[],
): ListedColumn {
  return { key, title, kind: "text", width, pasteHeadings };
}
