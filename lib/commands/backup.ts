// npm run backup -- FOLDER: the database and the stored files, whole, into a new folder.
import path from "node:path";
import { readEnv } from "#lib/env.ts";
import { makeBackup } from "#lib/operations/make-backup.ts";
import { backupsOf } from "#lib/storage/data-folder.ts";
import { inWords, sentence } from "./in-words.ts";

// What is written into the data folder is the owner's alone.
process.umask(0o077);

const [folder] = process.argv.slice(2);
const { dataFolder } = readEnv();
const now = new Date().toISOString();
const fallback = path.join(backupsOf(dataFolder), now.replace(/[:.]/g, "-"));
const made = inWords(() => makeBackup({ dataFolder, folder: folder ?? fallback, now }));
if (made.ok) {
  const { folder: where, files, bytes, absent } = made.value;
  const lacking =
    absent === 0 ? "" : ` ${absent} recordings listed in the files were not in storage.`;
  console.log(
    `Backed up ${dataFolder} to ${where}: the database and ${files} stored files, ${bytes} bytes total.${lacking} Copy it off this machine.`,
  );
} else {
  console.error(`No backup was made: ${sentence(made.error.detail)}`);
  process.exitCode = 1;
}
