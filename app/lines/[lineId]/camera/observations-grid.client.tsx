"use client";

import { useMemo } from "react";
import type { GridColumn, GridRow } from "#app/_components/grid/column.ts";
import { RowsGrid } from "#app/_components/rows-grid.client.tsx";
import type { Anchor, Observation, Run } from "#lib/domain/run/run.ts";
import { OBSERVATION_BLANK, OBSERVATION_COLUMNS } from "./_columns.ts";
import { stationWords } from "./_station-words.ts";

/** What one run saw, with the station of each reading worked out while it is typed. */
export function ObservationsGrid({
  lineId,
  run,
  anchors,
  base,
  rows,
  readOnly,
}: {
  readonly lineId: string;
  readonly run: Run;
  /** Those of this run. */
  readonly anchors: readonly Anchor[];
  readonly base: number;
  /** The whole table. */
  readonly rows: readonly Observation[];
  readonly readOnly: boolean;
}) {
  const columns = useMemo(() => withStation(run, anchors), [run, anchors]);
  return (
    <RowsGrid
      lineId={lineId}
      table="observations"
      where={{ runId: run.id }}
      base={base}
      rows={rows}
      columns={columns}
      blank={OBSERVATION_BLANK}
      addWord="observation"
      emptyWords="Nothing entered from this run. Type the first reading, or paste the log from a spreadsheet."
      readOnly={readOnly}
    />
  );
}

function withStation(run: Run, anchors: readonly Anchor[]): GridColumn[] {
  const [counter, kind, clock, ...rest] = OBSERVATION_COLUMNS;
  const station: GridColumn = {
    key: "station-words",
    title: "On the line",
    kind: "text",
    width: 19,
    readOnly: true,
    hint: "Feet from the main, how sure, and the side looking upstream",
    computed: (row: GridRow) => stationWords(row, { run, anchors }),
  };
  const first = [counter, kind, clock].filter((column) => column !== undefined);
  return [...first, station, ...rest];
}
