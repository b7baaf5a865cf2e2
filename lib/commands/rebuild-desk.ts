// npm run rebuild-desk: makes anew what the desk, the lists and search are shown from.
import { readEnv } from "#lib/env.ts";
import { rebuildDesk } from "#lib/operations/rebuild-desk.ts";
import { inWords, sentence } from "./in-words.ts";

process.umask(0o077);

const { dataFolder } = readEnv();
const rebuilt = inWords(() => rebuildDesk({ dataFolder, now: new Date().toISOString() }));
if (rebuilt.ok) {
  const { lines } = rebuilt.value;
  console.log(`${dataFolder}: ${lines} ${lines === 1 ? "line was" : "lines were"} rebuilt.`);
} else {
  console.error(`Nothing was changed: ${sentence(rebuilt.error.detail)}`);
  process.exitCode = 2;
}
