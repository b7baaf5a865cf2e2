"use client";

import { saveRowsAction } from "#app/lines/[lineId]/rows-action.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { GridBox, type GridProps } from "./grid/grid-box.client.tsx";
import { changedRows, idOf } from "./grid/merge.ts";

export interface RowsGridProps extends GridProps {
  readonly lineId: string;
  readonly table: RowTable;
}

/** One table of a line, to type in. `base` comes from `getRevisions`. */
export function RowsGrid({ lineId, table, ...props }: RowsGridProps) {
  const scope = Object.values(props.where ?? {}).join(",");
  return (
    <GridBox
      {...props}
      draftName={`wyebook:rows:${lineId}:${table}:${scope}`}
      saveRows={(base, rows, known) =>
        saveRowsAction(lineId, table, base, changedRows(known, rows), rows.map(idOf))
      }
    />
  );
}
