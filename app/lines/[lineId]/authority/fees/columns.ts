import { distinct } from "#app/_components/grid/choices.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { FEE_ENTRY_WORDS } from "#lib/domain/paper/fee-sheet.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import { optionsOf } from "../../terms.ts";

/** One amount a row, with the authority’s receipt. */
export function feeColumns({
  permits,
  authority,
}: Pick<LineFile, "permits" | "authority">): GridColumn[] {
  return [
    {
      key: "permitId",
      title: "Permit",
      kind: "choice",
      width: 22,
      required: true,
      choices: distinct(permits.map((permit) => ({ value: permit.id, label: permitName(permit) }))),
    },
    { key: "kind", title: "What", kind: "choice", width: 18, choices: optionsOf(FEE_ENTRY_WORDS) },
    { key: "amount", title: "Amount", kind: "cents", width: 12, required: true, example: "310.00" },
    { key: "on", title: "Date", kind: "day", width: 12, required: true },
    { key: "receipt", title: "Receipt or invoice", kind: "text", width: 16, example: "R-55-0102" },
    {
      key: "by",
      title: "Paid by",
      kind: "text",
      width: 20,
      example: "check 2214",
    },
    {
      key: "feeId",
      title: "For",
      kind: "choice",
      width: 20,
      choices: [
        { value: "", label: "all fees" },
        ...distinct((authority?.fees ?? []).map(({ id, title }) => ({ value: id, label: title }))),
      ],
    },
    { key: "note", title: "Note", kind: "text", width: 20 },
  ];
}
