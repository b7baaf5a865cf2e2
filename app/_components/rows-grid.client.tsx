"use client";

import { saveRowsAction } from "#app/lines/[lineId]/rows-action.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { GridBox, type GridProps } from "./grid/grid-box.client.tsx";
import { changedRows, idOf } from "./grid/merge.ts";
import { type HearSaved, useSentRows } from "./use-sent-rows.ts";

export interface RowsGridProps extends GridProps {
  readonly lineId: string;
  readonly table: RowTable;
}

/**
 * One table of a line, to type in. `base` is the revision of these very rows. Of a long table the page carries
 * the first rows (`sentRows`); it is typed in once the others are here.
 */
export function RowsGrid(props: RowsGridProps) {
  const sent = useSentRows({ of: props.table, ...props });
  return <RowsBox {...props} {...sent} />;
}

/** The same, with rows that somebody else asks for; `hear` is told what saving came to. */
export function RowsBox({
  lineId,
  table,
  hear,
  ...props
}: RowsGridProps & { readonly hear: HearSaved }) {
  const scope = Object.values(props.where ?? {}).join(",");
  return (
    <GridBox
      {...props}
      draftName={`wyebook:rows:${lineId}:${table}:${scope}`}
      saveRows={(base, rows, known) =>
        saveRowsAction(lineId, table, base, changedRows(known, rows), rows.map(idOf)).then(hear)
      }
    />
  );
}
