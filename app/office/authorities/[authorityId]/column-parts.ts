import type { GridChoice, GridColumn } from "#app/_components/grid/column.ts";
import type { PermitKind } from "#lib/domain/facts/permit.ts";

// What the tables of an authority have in common.

export const PERMITS: Record<PermitKind, string> = {
  "side-sewer": "side sewer permit",
  "street-use": "street use permit",
  connection: "connection permit",
  other: "other permit",
};

/** Where it is written, and when that was last looked at. */
export const SOURCE: readonly GridColumn[] = [
  {
    key: "citation",
    title: "Citation",
    kind: "text",
    width: 26,
    hint: "Code, section or handbook, so someone else can find it",
    pasteHeadings: ["written where", "source"],
  },
  {
    key: "asOf",
    title: "Last checked",
    kind: "day",
    required: true,
    hint: "Date last verified in the source",
    pasteHeadings: ["as of", "date", "looked at"],
  },
];

/** A choice of each word. */
export function options(words: Readonly<Record<string, string>>): GridChoice[] {
  return Object.entries(words).map(([value, label]) => ({ value, label }));
}

/** Rows that hold for one kind of permit, or for each. */
export const FOR_PERMIT: GridColumn = {
  key: "permitKind",
  title: "Permit",
  kind: "choice",
  width: 16,
  choices: [{ value: "", label: "any permit" }, ...options(PERMITS)],
};
