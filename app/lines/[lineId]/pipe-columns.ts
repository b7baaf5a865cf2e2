import type { GridColumn } from "#app/_components/grid/column.ts";
import { FITTING_WORDS } from "#lib/domain/facts/line-words.ts";
import { materialChoices } from "./field-terms.ts";
import { FITTING_SYNONYMS } from "./synonyms.ts";
import { optionsOf } from "./terms.ts";

/** What a branch is made of, as a record and a camera run both tell it. */
export function pipeColumns({ example }: { readonly example?: string } = {}): GridColumn[] {
  return [
    {
      key: "diameter",
      title: "Size",
      kind: "inches",
      width: 6,
      ...(example === undefined ? {} : { example }),
      pasteHeadings: ["diameter", "pipe size"],
    },
    {
      key: "material",
      title: "Material",
      kind: "choice",
      choices: materialChoices(),
      width: 16,
      pasteHeadings: ["pipe material"],
    },
    {
      key: "fitting",
      title: "Fitting",
      kind: "choice",
      choices: optionsOf(FITTING_WORDS, FITTING_SYNONYMS),
      width: 9,
    },
  ];
}

/** How far off what stands in another column of the row may be. */
export function uncertaintyColumn(hint: string): GridColumn {
  return {
    key: "uncertainty",
    title: "Uncertainty ±",
    kind: "feet",
    width: 9,
    hint,
    pasteHeadings: [
      "give or take",
      "plus or minus",
      "plus minus",
      "off by",
      "accuracy",
      "tolerance",
      "uncertainty",
    ],
  };
}
