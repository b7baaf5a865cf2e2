// npm run restore -- FOLDER: puts a backup into an empty data folder.
import { readEnv } from "#lib/env.ts";
import { restoreBackup } from "#lib/operations/restore-backup.ts";

// What is written into the data folder is the owner's alone.
process.umask(0o077);

const [folder] = process.argv.slice(2);
const { dataFolder } = readEnv();
if (folder === undefined) {
  console.error("Say which backup: npm run restore -- FOLDER");
  process.exitCode = 1;
} else {
  const restored = restoreBackup({ dataFolder, folder });
  if (restored.ok)
    console.log(
      `Restored ${folder} to ${dataFolder}: the database and ${restored.value.files} stored files.`,
    );
  else {
    console.error(`Nothing was restored: ${restored.error.detail}.`);
    process.exitCode = 1;
  }
}
