import path from "node:path";
import { type OpenDb, openDb } from "#db/open.ts";
import { type DatabaseState, databaseState } from "#db/queries/database-state.ts";
import { getOffice } from "#db/queries/office.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { err, ok, type Result } from "#lib/result.ts";
import {
  databaseOf,
  freeNameBeside,
  newestBackup,
  officeSince,
  stampOffice,
} from "#lib/storage/data-folder.ts";

/** Why an office's data can't be opened, and what to do, in sentences for whoever runs the program. */
export interface OfficeFault {
  readonly kind: "lost" | "damaged" | "foreign" | "busy";
  readonly words: string;
}

/** Another file lies under the name of the database that was opened: what is done there is lost. */
export const MOVED_AWAY: OfficeFault = {
  kind: "lost",
  words:
    "The office's database was moved, removed or emptied while the program ran. Stop the program; when it is started again, it says what to do.",
};

/**
 * Opens the office's database, or makes it in a folder that never was an office's. An emptied or
 * missing database beside what an office left there is lost, not new: nothing is made in its place,
 * so that nobody can set it up anew.
 */
export function openOffice(
  dataFolder: string,
  now: Instant,
  options: { readonly patience?: number } = {},
): Result<OpenDb, OfficeFault> {
  const since = officeSince(dataFolder);
  const state = databaseState(databaseOf(dataFolder));
  const fault = faultOf(state, { dataFolder, since });
  if (fault !== null) return err(fault);
  const db = openDb(databaseOf(dataFolder), options);
  if (getOffice(db) !== null) {
    stampOffice(dataFolder, now);
    return ok(db);
  }
  if (since === null) return ok(db);
  db.$client.close();
  return err(lost({ dataFolder, since }, "has no office in it"));
}

interface Place {
  readonly dataFolder: string;
  readonly since: string | null;
}

function faultOf(state: DatabaseState, place: Place): OfficeFault | null {
  const file = databaseOf(place.dataFolder);
  if (state === "damaged")
    return {
      kind: "damaged",
      words: `The office's database ${file} is damaged and can't be read. Nothing was changed. ${howToRestore(place.dataFolder)}`,
    };
  if (state === "foreign")
    return {
      kind: "foreign",
      words: `${file} is a database of another program. Nothing was changed. Name the office's own data folder with WYEBOOK_DATA=…`,
    };
  if (state === "busy")
    return {
      kind: "busy",
      words: `Another program holds the office's database ${file} shut. Close that program and try again.`,
    };
  if (place.since === null || state === "ours") return null;
  return lost(place, state === "absent" ? "is missing" : "is empty");
}

function lost({ dataFolder, since }: Place, how: string): OfficeFault {
  const when = since === null || since === "" ? "" : ` on ${since}`;
  return {
    kind: "lost",
    words: `The office's database ${databaseOf(dataFolder)} ${how}, although an office was set up in this folder${when}. Nothing was changed. ${howToRestore(dataFolder)}`,
  };
}

/** The steps from a broken folder to a working one, with the commands. */
function howToRestore(dataFolder: string): string {
  const aside = freeNameBeside(dataFolder);
  const newest = newestBackup(dataFolder);
  const backup = newest === null ? "FOLDER" : path.join(aside, path.relative(dataFolder, newest));
  const which = newest === null ? ", where FOLDER is your last backup" : "";
  return `Stop the program, move the folder aside (mv ${dataFolder} ${aside}) and put a backup back: WYEBOOK_DATA=${dataFolder} npm run restore -- ${backup}${which}. Then start the program again.`;
}
