import type { GridRow } from "./column.ts";

/** What is wrong in one cell; `row` counts the rows that were sent, from 0. */
export interface CellProblem {
  readonly row: number;
  readonly column: string;
  readonly message: string;
}

/** What saving a table came to. */
export type RowsAnswer =
  | {
      readonly status: "saved";
      readonly revision: number;
      readonly at: string;
      /** Rows that are kept otherwise than they were sent, as they are now. */
      readonly rows?: readonly GridRow[];
    }
  | {
      readonly status: "refused";
      readonly message: string;
      readonly cells: readonly CellProblem[];
    }
  | {
      readonly status: "changed-meanwhile";
      readonly by: string;
      readonly at: string;
      readonly revision: number;
      /** The table as it is now. */
      readonly rows: readonly GridRow[];
    };
