// npm run restore -- FOLDER: puts a backup into an empty data folder, whole or not at all.
import { readEnv } from "#lib/env.ts";
import { restoreBackup } from "#lib/operations/restore-backup.ts";
import { inWords, sentence } from "./in-words.ts";

// What is written into the data folder is the owner's alone.
process.umask(0o077);

const [folder] = process.argv.slice(2);
const { dataFolder } = readEnv();
if (folder === undefined) {
  console.error("Usage: npm run restore -- FOLDER");
  process.exitCode = 1;
} else {
  const now = new Date().toISOString();
  const restored = inWords(() => restoreBackup({ dataFolder, folder, now }));
  if (restored.ok)
    console.log(
      `Restored ${folder} to ${dataFolder}: the database and ${restored.value.files} stored files.`,
    );
  else {
    console.error(`Nothing was restored: ${sentence(restored.error.detail)}`);
    process.exitCode = 1;
  }
}
