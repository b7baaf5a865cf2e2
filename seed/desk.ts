import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Day } from "#lib/domain/time/day.ts";
import type { Act, Actor } from "#lib/operations/act.ts";
import { saveRows } from "#lib/operations/save-rows.ts";
import type { Result } from "#lib/result.ts";

/** Makes acts with fixed ids and days, so that the demo is the same wherever it is filled. */
export function deskAt(options: { db: Db; dataFolder: string; prefix: string }) {
  let made = 0;
  const newId = () => {
    made += 1;
    return `${options.prefix}-${String(made).padStart(4, "0")}`;
  };
  return (actor: Actor, day: Day, time = "17:00"): Act => ({
    db: options.db,
    dataFolder: options.dataFolder,
    actor,
    today: day,
    now: `${day}T${time}:00.000Z`,
    newId,
  });
}

/** The value, or a stop: a demo fact that an operation refuses is a mistake in the demo. */
export function must<T>(result: Result<T, unknown>): T {
  if (result.ok) return result.value;
  throw new Error(`The demo was refused: ${JSON.stringify(result.error)}`);
}

/** Saves rows at the end of what a table of the line holds already. */
export function addRows(
  act: Act,
  place: { lineId: string; table: RowTable },
  rows: readonly object[],
): void {
  const file = fileOf(act, place.lineId);
  const there = file[place.table] as readonly unknown[];
  const base = getRevisions(act.db, place.lineId)[place.table];
  must(saveRows(act, { ...place, base, rows: [...there, ...rows] }));
}

/** The line's file as it stands. */
export function fileOf(act: Act, lineId: string): LineFile {
  const file = getLineFile(act.db, lineId);
  if (!file) throw new Error(`There is no line ${lineId}`);
  return file;
}
