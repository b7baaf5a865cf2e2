import { codeOf } from "#db/queries/database-state.ts";
import type { Refusal } from "#lib/operations/act.ts";
import { err, type Result } from "#lib/result.ts";

const FULL = "the disk is full; free some space and try again";

/** What a machine refuses, in words; anything else is a mistake of ours and shows as such. */
const WORDS: Readonly<Record<string, string>> = {
  ENOSPC: FULL,
  EDQUOT: FULL,
  EROFS: "the disk can't be written to",
  EACCES: "the folder can't be written to by this user",
  EPERM: "the folder can't be written to by this user",
  SQLITE_FULL: FULL,
  // The file that SQLite shares among processes could not be made as large as it is.
  SQLITE_IOERR_SHMSIZE: FULL,
  SQLITE_IOERR: "the disk can't be read or written",
  SQLITE_CANTOPEN: "the database can't be opened by this user",
  SQLITE_READONLY: "the database can't be written to by this user",
  SQLITE_BUSY: "another program is using the database; close it and try again",
  SQLITE_CORRUPT: "the database is damaged",
  SQLITE_NOTADB: "the database is damaged",
};

/** Runs it; what disk and database refuse comes back as words. */
export function inWords<T>(work: () => Result<T, Refusal>): Result<T, Refusal> {
  try {
    return work();
  } catch (error) {
    const code = codeOf(error) || ((error as NodeJS.ErrnoException).code ?? "");
    const words = WORDS[code] ?? WORDS[code.split("_").slice(0, 2).join("_")];
    if (words === undefined) throw error;
    // Of a copy: where it goes.
    const { dest, path: at } = error as NodeJS.ErrnoException & { readonly dest?: string };
    const place = dest ?? at;
    const detail = place === undefined ? words : `${words} (${place})`;
    return err({ reason: "bad-value", path: "", detail });
  }
}

/** Ends a sentence that may be ended already. */
export function sentence(words: string): string {
  return words.endsWith(".") ? words : `${words}.`;
}
