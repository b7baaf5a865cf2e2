import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Contract } from "#lib/domain/facts/statutory-paper.ts";
import { partyName } from "../../names.ts";
import { optionsOf } from "../../terms.ts";
import { propertyChoices } from "../../who/columns.ts";

const PLACE_WORDS: Readonly<Record<Contract["place"], string>> = {
  unknown: "not known",
  away: "away from our office",
  office: "at our office",
};

export function contractColumns(
  file: Pick<LineFile, "properties" | "parties">,
): readonly GridColumn[] {
  return [
    {
      key: "propertyId",
      title: "Property",
      kind: "choice",
      width: 20,
      required: true,
      choices: propertyChoices(file),
    },
    {
      key: "partyId",
      title: "Signed by",
      kind: "choice",
      width: 22,
      required: true,
      choices: file.parties.map(({ id }) => ({ value: id, label: partyName(file, id) })),
    },
    {
      key: "signedOn",
      title: "Signed on",
      kind: "day",
      width: 14,
      hint: "What the law counts starts on this day",
    },
    {
      key: "place",
      title: "Where",
      kind: "choice",
      width: 20,
      choices: optionsOf(PLACE_WORDS),
      hint: "Not known counts as away from the office",
    },
    { key: "amount", title: "Amount", kind: "cents", width: 12, example: "4,800.00" },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}

export const BLANK_CONTRACT = { signedOn: null, place: "unknown", amount: null, note: "" };
