import type { Db } from "#db/open.ts";
import { getOffice } from "#db/queries/office.ts";
import { oldSummaries, putSummary } from "#db/queries/summary.ts";
import { summaryOf } from "#lib/domain/desk/summary.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { lineReport } from "./line-report.ts";

/**
 * Sums up anew at most so many of the lines that changed since, or that were summed up on another
 * day. Says how many it did: fewer than asked for means that all are of today.
 */
export function renewSummaries(db: Db, today: Day, most: number): number {
  const old = oldSummaries(db, today, most);
  for (const lineId of old) renewSummary(db, lineId, today);
  return old.length;
}

/**
 * The same for a reader in a hurry: nothing is summed up while another program holds the database, or
 * where the disk takes no more, and what is old says so.
 */
export function renewIfFree(db: Db, today: Day, most: number): void {
  try {
    renewSummaries(db, today, most);
  } catch (error) {
    if (!isUnwritable(error)) throw error;
  }
}

const UNWRITABLE = /^SQLITE_(BUSY|FULL|READONLY|IOERR_WRITE)/;

function isUnwritable(error: unknown): boolean {
  return error instanceof Error && UNWRITABLE.test(String(Reflect.get(error, "code")));
}

/** Sums up one line as its file stands. */
function renewSummary(db: Db, lineId: string, today: Day): void {
  const found = lineReport(db, lineId, today);
  if (found === null) return;
  const { file, report, version } = found;
  const summary = summaryOf(file, report, getOffice(db) ?? undefined);
  db.transaction((one) => putSummary(one, summary, { version, day: today, name: file.line.name }), {
    behavior: "immediate",
  });
}
