import type { Db } from "#db/open.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getRevisions } from "#db/queries/revision.ts";
import { versionOf } from "#db/queries/summary.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Day } from "#lib/domain/time/day.ts";

/** A line's file as it stood at one moment. */
interface ReadFile {
  readonly file: LineFile;
  readonly version: number;
  /** How often each of its tables was saved: what goes back with rows that are typed. */
  readonly revisions: Record<RowTable, number>;
}

/** A line's file with everything that follows from it, as it stood at a version. */
export interface LineReport extends ReadFile {
  readonly report: Report;
}

interface Kept extends LineReport {
  readonly day: Day;
  /** Rows of the file: what it takes of the memory. */
  readonly weight: number;
}

/** Reports are kept while their files have together so many rows. */
const MOST_ROWS = 60_000;

/** Of each open database, the last used last. */
const kept = new WeakMap<Db, Map<string, Kept>>();

/**
 * A line's file and the report on it for a day; null where there is no such line. Both are kept in
 * memory and given again as long as the database says that nothing of the line, its authority or
 * the office changed, whoever wrote it. Rows that are saved change the version, so that what is kept
 * has the revisions of its own rows.
 */
export function lineReport(db: Db, lineId: string, today: Day): LineReport | null {
  const reports = kept.get(db) ?? new Map<string, Kept>();
  kept.set(db, reports);
  const found = reports.get(lineId);
  reports.delete(lineId);
  if (found !== undefined && found.day === today && found.version === versionOf(db, lineId)) {
    reports.set(lineId, found);
    return found;
  }
  const read = readFile(db, lineId);
  if (read === null) return null;
  const made: Kept = {
    ...read,
    report: reportOn(read.file, today),
    day: today,
    weight: weightOf(read.file),
  };
  reports.set(lineId, made);
  lighten(reports);
  return made;
}

/**
 * A line's file with the revisions of its tables, of one moment; null where there is no such line. Read
 * one after the other, another process may save in between: its rows would be taken for ones that the
 * reader saw and took out.
 */
export function readFile(db: Db, lineId: string): ReadFile | null {
  return db.transaction((one) => {
    const file = getLineFile(one, lineId);
    const version = versionOf(one, lineId);
    if (file === null || version === null) return null;
    return { file, version, revisions: getRevisions(one, lineId) };
  });
}

/**
 * A line's file inside of a transaction on `held`: the one kept in memory where the database says that
 * it is of this very version, else read anew; null where there is no such line.
 */
export function standingFile(held: Db, one: Db, lineId: string): LineFile | null {
  const found = kept.get(held)?.get(lineId);
  if (found !== undefined && found.version === versionOf(one, lineId)) return found.file;
  return getLineFile(one, lineId);
}

function weightOf(file: LineFile): number {
  return Object.values(file)
    .map((list) => (Array.isArray(list) ? list.length : 1))
    .reduce((sum, length) => sum + length, 0);
}

/** Lets go of what was used longest ago, but for the last one. */
function lighten(reports: Map<string, Kept>): void {
  let sum = 0;
  for (const { weight } of reports.values()) sum += weight;
  for (const [lineId, { weight }] of reports) {
    if (sum <= MOST_ROWS || reports.size === 1) return;
    reports.delete(lineId);
    sum -= weight;
  }
}
