/** A letter-size sheet of labels, in inches. Labels lie in rows from the top left. */
export interface LabelSheet {
  readonly id: string;
  readonly name: string;
  readonly columns: number;
  readonly rows: number;
  readonly width: number;
  readonly height: number;
  /** From the sheet's left edge to the first label, and from its top. */
  readonly left: number;
  readonly top: number;
  /** From one label's left edge to the next one's, and from one's top to the next one's. */
  readonly across: number;
  readonly down: number;
}

/**
 * The usual sheets of US offices: sizes and margins from memory; each lies in the middle of its sheet
 * (tests/lib/domain/mailing/label-sheets.test.ts). An office prints one on plain paper first and holds
 * it against its labels.
 */
export const LABEL_SHEETS: readonly LabelSheet[] = [
  {
    ...{ id: "30", name: "30 a sheet, 1 × 2-5/8 in", columns: 3, rows: 10 },
    ...{ width: 2.625, height: 1, left: 0.1875, top: 0.5, across: 2.75, down: 1 },
  },
  {
    ...{ id: "20", name: "20 a sheet, 1 × 4 in", columns: 2, rows: 10 },
    ...{ width: 4, height: 1, left: 0.15625, top: 0.5, across: 4.1875, down: 1 },
  },
  {
    ...{ id: "14", name: "14 a sheet, 1-1/3 × 4 in", columns: 2, rows: 7 },
    ...{ width: 4, height: 4 / 3, left: 0.15625, top: 5 / 6, across: 4.1875, down: 4 / 3 },
  },
  {
    ...{ id: "10", name: "10 a sheet, 2 × 4 in", columns: 2, rows: 5 },
    ...{ width: 4, height: 2, left: 0.15625, top: 0.5, across: 4.1875, down: 2 },
  },
];

/** A label sheet by its id; null where there is none such. */
export function labelSheet(id: string | undefined): LabelSheet | null {
  return LABEL_SHEETS.find((sheet) => sheet.id === id) ?? null;
}
