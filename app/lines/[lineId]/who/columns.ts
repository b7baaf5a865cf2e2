import { distinct } from "#app/_components/grid/choices.ts";
import type { GridChoice, GridColumn } from "#app/_components/grid/column.ts";
import { usualValues } from "#lib/domain/facts/field.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { ADDRESS, ROLE_WORDS } from "#lib/domain/facts/party.ts";
import { usualPlace } from "#lib/domain/party/usual-place.ts";
import {
  EASEMENT_WORDS,
  LAND_WORDS,
  LANGUAGE_WORDS,
  PARTY_KIND_WORDS,
  STAKE_WORDS,
  USE_WORDS,
} from "../field-terms.ts";
import { propertyName } from "../names.ts";
import { LANGUAGE_SYNONYMS, STAKE_SYNONYMS } from "../synonyms.ts";
import { optionsOf } from "../terms.ts";

/** The properties of a line as choices of a cell. */
export function propertyChoices(file: Pick<LineFile, "properties">): GridChoice[] {
  return distinct(file.properties.map(({ id }) => ({ value: id, label: propertyName(file, id) })));
}

export const PROPERTY_COLUMNS: readonly GridColumn[] = [
  {
    key: "address.street",
    title: "Street address",
    kind: "text",
    width: 22,
    required: true,
    example: "12 Fennel Row",
    pasteHeadings: ["address", "street", "situs", "site address"],
  },
  { key: "address.unit", title: "Unit", kind: "text", width: 8 },
  {
    key: "address.city",
    title: "City",
    kind: "text",
    width: 14,
    example: "Quillhaven",
    pasteHeadings: ["town"],
  },
  { key: "address.state", title: "State", kind: "text", width: 5, example: "WA" },
  {
    key: "address.zip",
    title: "ZIP",
    kind: "text",
    width: 10,
    example: "98000",
    pasteHeadings: ["zip code", "postal code"],
  },
  {
    key: "stake",
    title: "Connection",
    kind: "choice",
    choices: optionsOf(STAKE_WORDS, STAKE_SYNONYMS),
    width: 16,
    hint: "Your current understanding. Calculations use the tie-ins",
    pasteHeadings: ["stake"],
  },
  {
    key: "parcel",
    title: "Parcel",
    kind: "text",
    width: 12,
    example: "QH-0412",
    pasteHeadings: ["apn", "parcel number", "tax lot"],
  },
  {
    key: "weight",
    title: "Weight",
    kind: "whole",
    width: 8,
    hint: "Fixture units, floor area or another agreed basis, for the split by weights",
    pasteHeadings: ["fixture units", "floor area", "measure"],
  },
  {
    key: "legalDescription",
    title: "Legal description",
    kind: "text",
    width: 26,
    pasteHeadings: ["legal"],
  },
  {
    key: "bothLanguages",
    title: "Both languages",
    kind: "yesno",
    width: 10,
    hint: "Every letter about this address in English and Spanish, in one envelope",
  },
  { key: "note", title: "Note", kind: "text", width: 24 },
];

/** A new property lies where the last one does, until somebody says otherwise. */
export function propertyBlank(file: Pick<LineFile, "properties" | "line">) {
  return { address: { ...usualValues(ADDRESS), ...usualPlace(file) } };
}

export function unitColumns(file: Pick<LineFile, "properties">): GridColumn[] {
  return [
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      choices: propertyChoices(file),
      width: 22,
      required: true,
    },
    { key: "name", title: "Unit", kind: "text", width: 14, example: "Unit A" },
    { key: "use", title: "Use", kind: "choice", choices: optionsOf(USE_WORDS), width: 10 },
    { key: "note", title: "Note", kind: "text", width: 30 },
  ];
}

/** Somebody without any role may stand in an old file; new rows say what and of which property. */
export function peopleColumns(
  file: Pick<LineFile, "properties" | "parties" | "roles">,
): GridColumn[] {
  const placed = file.parties.every(({ id }) => file.roles.some((role) => role.partyId === id));
  const mayBeNone = <T extends GridChoice>(choices: readonly T[]) =>
    placed ? choices : [{ value: "", label: "" }, ...choices];
  return [
    {
      key: "name",
      title: "Name",
      kind: "text",
      width: 22,
      required: true,
      example: "Ottilie Brandvold",
      pasteHeadings: ["owner", "owner name", "party"],
    },
    {
      key: "role",
      title: "Role",
      kind: "choice",
      choices: mayBeNone(optionsOf(ROLE_WORDS)),
      required: placed,
      width: 18,
      pasteHeadings: ["is"],
    },
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      choices: mayBeNone(propertyChoices(file)),
      width: 18,
      required: placed,
      pasteHeadings: ["of", "site address"],
    },
    {
      key: "unit",
      title: "Unit",
      kind: "text",
      width: 9,
      example: "Unit A",
      hint: "New units are added automatically",
    },
    ...MAIL_COLUMNS,
    ...REACH_COLUMNS,
  ];
}

const MAIL_COLUMNS: readonly GridColumn[] = [
  {
    key: "street",
    title: "Mailing street",
    kind: "text",
    width: 20,
    hint: "Blank = mail goes to the property",
    example: "PO BOX 118",
    pasteHeadings: ["mailing address", "mailing street", "mail to"],
  },
  {
    key: "careOf",
    title: "Care of",
    kind: "text",
    width: 16,
    hint: "Prints above the street: c/o a relative, a tax service",
    pasteHeadings: ["c/o", "attention", "attn", "in care of"],
  },
  {
    key: "mailUnit",
    title: "Mailing unit",
    kind: "text",
    width: 9,
    pasteHeadings: ["mailing unit"],
  },
  { key: "city", title: "Mailing city", kind: "text", width: 13, pasteHeadings: ["mailing city"] },
  {
    key: "state",
    title: "Mailing state",
    kind: "text",
    width: 5,
    pasteHeadings: ["mailing state"],
  },
  { key: "zip", title: "Mailing ZIP", kind: "text", width: 10, pasteHeadings: ["mailing zip"] },
];

const REACH_COLUMNS: readonly GridColumn[] = [
  { key: "phone", title: "Phone", kind: "text", width: 14, example: "555-0112" },
  { key: "email", title: "Email", kind: "text", width: 22, example: "ottilie@example.com" },
  {
    key: "language",
    title: "Language",
    kind: "choice",
    choices: optionsOf(LANGUAGE_WORDS, LANGUAGE_SYNONYMS),
    width: 10,
    hint: "Letters go out in this language; both: in one envelope",
  },
  {
    key: "needs",
    title: "Water-service needs",
    kind: "text",
    width: 24,
    hint: "Who would be affected by a drain shutdown (medical, child care, business)",
    example: "Home dialysis; call first",
  },
  {
    key: "kind",
    title: "Kind",
    kind: "choice",
    choices: optionsOf(PARTY_KIND_WORDS),
    width: 11,
  },
  {
    key: "capacity",
    title: "Signs as",
    kind: "text",
    width: 11,
    hint: "Capacity of the person signing for a company, trust or estate",
    example: "trustee",
  },
  {
    key: "heldWith",
    title: "Title also held by",
    kind: "text",
    width: 18,
    hint: "Owners whose names are not known yet, as in “et ux”; clear it once they are on the list",
    example: "wife, not named",
  },
  { key: "note", title: "Note", kind: "text", width: 24 },
  {
    key: "needsSaidBy",
    title: "Who said what they need",
    kind: "text",
    width: 22,
    hint: "Who told the office about the water-service needs, and when",
    example: "daughter, by phone 11/18",
  },
];

/** A new row: most often an owner; the property only where there is no other. */
export function personBlank({ properties }: Pick<LineFile, "properties">) {
  const [only, ...others] = properties;
  const propertyId = others.length === 0 ? (only?.id ?? null) : null;
  return { role: "owner", propertyId, kind: "person", language: "unknown" };
}

export function crossingColumns(file: Pick<LineFile, "properties">): GridColumn[] {
  return [
    {
      key: "propertyId",
      title: "Lot crossed",
      kind: "choice",
      choices: propertyChoices(file),
      width: 22,
      required: true,
    },
    { key: "from", title: "From", kind: "feet", width: 8, required: true, example: "76.0" },
    { key: "to", title: "To", kind: "feet", width: 8, required: true, example: "90.0" },
    {
      key: "easement",
      title: "Easement",
      kind: "choice",
      choices: optionsOf(EASEMENT_WORDS),
      width: 10,
    },
    {
      key: "recordingNumber",
      title: "Recording number",
      kind: "text",
      width: 16,
      example: "2026-0012345",
    },
    { key: "note", title: "Note", kind: "text", width: 28 },
  ];
}

/** Whose land lies over the pipe: what is dug there asks for that owner's consent or a street permit. */
export function landColumns(file: Pick<LineFile, "properties">): GridColumn[] {
  return [
    { key: "from", title: "From", kind: "feet", width: 8, required: true, example: "12.0" },
    { key: "to", title: "To", kind: "feet", width: 8, required: true, example: "46.0" },
    {
      key: "kind",
      title: "Whose land",
      kind: "choice",
      choices: optionsOf(LAND_WORDS),
      width: 18,
      required: true,
    },
    {
      key: "propertyId",
      title: "Which lot",
      kind: "choice",
      choices: [{ value: "", label: "–" }, ...propertyChoices(file)],
      width: 22,
      hint: "Of a lot or a common area: which property it is",
    },
    {
      key: "shownBy",
      title: "Shown by",
      kind: "text",
      width: 24,
      hint: "Without it, the section counts as not answered",
      example: "County parcel map",
    },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}
