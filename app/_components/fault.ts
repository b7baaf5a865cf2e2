/** What the office's machine could not do, in words for whoever sees the page. */
export interface Fault {
  readonly title: string;
  readonly text: string;
}

const SAFE = "Everything already saved is safe.";

const UNREADABLE: Fault = {
  title: "The office’s records can’t be read",
  text: "The database in the data folder is damaged, missing or empty, although an office was set up here. Nothing was changed. Your administrator should stop Wyebook, move the data folder aside and restore the last backup: npm run restore -- FOLDER. The window in which Wyebook runs says what is wrong, with the exact commands.",
};

/** By the digest that the server gives: SQLite's own code, or what is wrong with the data folder. */
const FAULTS: Readonly<Record<string, Fault>> = {
  OFFICE_LOST: UNREADABLE,
  OFFICE_DAMAGED: UNREADABLE,
  SQLITE_CORRUPT: UNREADABLE,
  SQLITE_NOTADB: UNREADABLE,
  OFFICE_FOREIGN: {
    title: "This is not the office’s database",
    text: "The data folder holds a database of another program. Nothing was changed. Your administrator should stop Wyebook and name the office’s own data folder with WYEBOOK_DATA.",
  },
  OFFICE_BUSY: busy(),
  SQLITE_BUSY: busy(),
  SQLITE_LOCKED: busy(),
  SQLITE_FULL: full(),
  // The file that SQLite shares among the processes of an office could not be made as large as it is.
  SQLITE_IOERR_SHMSIZE: full(),
  SQLITE_READONLY: shut(),
  SQLITE_CANTOPEN: shut(),
  SQLITE_IOERR: {
    title: "The disk of the office’s computer does not respond",
    text: `Nothing was saved just now. ${SAFE} Try again; if it happens again, see that there is room on the disk, have it checked, and back up to another one.`,
  },
};

/** The words for an error of the server, by its digest; null for what nobody foresaw. */
export function faultOf(error: unknown): Fault | null {
  const digest = digestOf(error);
  return FAULTS[digest] ?? FAULTS[digest.split("_").slice(0, 2).join("_")] ?? null;
}

/** The mark that the server gave an error; empty where it gave none. */
export function digestOf(error: unknown): string {
  return error instanceof Error && "digest" in error ? String(error.digest) : "";
}

function full(): Fault {
  return {
    title: "The disk of the office’s computer is full",
    text: `Nothing was saved just now. ${SAFE} Make room on the disk, then try again.`,
  };
}

function busy(): Fault {
  return {
    title: "Another program is using the office’s database",
    text: `Nothing was saved just now. ${SAFE} Close the other program on the office’s computer, or wait a minute, then try again.`,
  };
}

function shut(): Fault {
  return {
    title: "The data folder can’t be written to",
    text: `Nothing was saved just now. ${SAFE} Your administrator should check the folder’s permissions, and whether its disk is read-only.`,
  };
}
