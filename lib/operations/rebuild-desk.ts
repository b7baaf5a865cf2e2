import { openDb } from "#db/open.ts";
import { databaseState } from "#db/queries/database-state.ts";
import { forgetSummaries, getTallies, rebuildSearch } from "#db/queries/summary.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { ok, type Result } from "#lib/result.ts";
import { databaseOf } from "#lib/storage/data-folder.ts";
import type { Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { officeDay } from "./office-day.ts";
import { renewSummaries } from "./renew-summaries.ts";

/**
 * Makes anew what is kept beside the facts: the summaries that the desk and the lists show, and the
 * words that search goes through. Nothing of the facts changes. Refuses a folder without an office.
 */
export function rebuildDesk({
  dataFolder,
  now,
}: {
  readonly dataFolder: string;
  readonly now: Instant;
}): Result<{ readonly lines: number }, Refusal> {
  const file = databaseOf(dataFolder);
  const state = databaseState(file);
  if (state !== "ours") return refuse("not-found", "", `the database in ${dataFolder} is ${state}`);
  const db = openDb(file);
  try {
    db.transaction(
      (one) => {
        forgetSummaries(one);
        rebuildSearch(one);
      },
      { behavior: "immediate" },
    );
    const today = officeDay(db, now);
    while (renewSummaries(db, today, AT_A_TIME) === AT_A_TIME);
    const { open, closed } = getTallies(db);
    return ok({ lines: open + closed });
  } finally {
    db.$client.close();
  }
}

const AT_A_TIME = 100;
