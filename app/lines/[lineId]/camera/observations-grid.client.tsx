"use client";

import { type Ref, useMemo } from "react";
import type { GridColumn, GridPicture, GridRow } from "#app/_components/grid/column.ts";
import type { GridRemote } from "#app/_components/grid/grid-box.client.tsx";
import { RowsBox } from "#app/_components/rows-grid.client.tsx";
import type { HearSaved } from "#app/_components/use-sent-rows.ts";
import type { Anchor, Observation, ObservationKind, Run } from "#lib/domain/facts/run.ts";
import { OBSERVATION_WORDS } from "#lib/domain/facts/run-words.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import { OBSERVATION_BLANK, OBSERVATION_COLUMNS } from "./observation-columns.ts";
import { stationWords } from "./station-words.ts";

/** What one run saw, with the station of each reading worked out while it is typed. */
export function ObservationsGrid({
  lineId,
  run,
  anchors,
  base,
  rows,
  unsent,
  whole,
  hear,
  readOnly,
  remote,
}: {
  readonly lineId: string;
  readonly run: Run;
  /** Those of this run. */
  readonly anchors: readonly Anchor[];
  readonly base: number;
  readonly rows: readonly Observation[];
  readonly unsent: number;
  /** `rows` are the whole table. */
  readonly whole: boolean;
  readonly hear: HearSaved;
  readonly readOnly: boolean;
  readonly remote?: Ref<GridRemote>;
}) {
  const pictured = rows.some((row) => row.runId === run.id && row.pictureId !== null);
  const columns = useMemo(() => {
    const stationed = withStation(run, anchors, rows);
    return pictured ? withPicture(stationed, { lineId, run }) : stationed;
  }, [run, anchors, rows, pictured, lineId]);
  return (
    <RowsBox
      lineId={lineId}
      table="observations"
      where={{ runId: run.id }}
      base={base}
      rows={rows}
      unsent={unsent}
      whole={whole}
      hear={hear}
      columns={columns}
      blank={OBSERVATION_BLANK}
      addWord="observation"
      emptyWords="No observations from this run yet. Type the first reading, or paste the log from a spreadsheet."
      readOnly={readOnly}
      {...(remote === undefined ? {} : { remote })}
    />
  );
}

function withStation(
  run: Run,
  anchors: readonly Anchor[],
  log: readonly Observation[],
): GridColumn[] {
  const [counter, kind, clock, ...rest] = OBSERVATION_COLUMNS;
  const station: GridColumn = {
    key: "station-words",
    title: "Station",
    kind: "text",
    width: 19,
    readOnly: true,
    hint: "Feet from the main, how sure, and the side looking upstream",
    computed: (row: GridRow) =>
      `${stationWords(row, { run, anchors, log })}${row["reading"] === "between" ? ", interpolated" : ""}`,
  };
  const first = [counter, kind, clock].filter((column) => column !== undefined);
  return [...first, station, ...rest];
}

/** The still of each row, beside where it is. */
function withPicture(
  columns: readonly GridColumn[],
  { lineId, run }: { readonly lineId: string; readonly run: Run },
): GridColumn[] {
  const picture: GridColumn = {
    key: "picture",
    title: "Photo",
    kind: "text",
    width: 6,
    readOnly: true,
    computed: () => "",
    picture: (row: GridRow) => pictureOf(row, { lineId, run }),
  };
  const after = columns.findIndex(({ key }) => key === "station-words") + 1;
  return columns.toSpliced(after, 0, picture);
}

function pictureOf(
  { pictureId, kind, counter }: GridRow,
  { lineId, run }: { readonly lineId: string; readonly run: Run },
): GridPicture | null {
  if (typeof pictureId !== "string") return null;
  const at = typeof counter === "number" ? ` at counter ${plainFeet(counter)} ft` : "";
  return {
    href: `/lines/${encodeURIComponent(lineId)}/uploads/${encodeURIComponent(pictureId)}`,
    words: `Photo of the ${OBSERVATION_WORDS[kind as ObservationKind]}${at}, ${run.name}`,
  };
}
