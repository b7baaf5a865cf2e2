// A process that serves an office's folder beside another one, for tests of what two do at the same
// moment: it is told what to do and answers what came of it. Usage: server-apart.ts FOLDER NAME
import path from "node:path";
import { openDb } from "#db/open.ts";
import { anAct } from "./office.ts";
import { DEEDS, type DeedName } from "./two-servers-deeds.ts";

process.chdir(path.resolve(import.meta.dirname, "../.."));
const [dataFolder = "", name = ""] = process.argv.slice(2);
const db = openDb(path.join(dataFolder, "wyebook.db"));
let made = 0;
const newId = () => {
  made += 1;
  return `${name}-${made}`;
};
const act = anAct(db, {
  dataFolder,
  actor: { id: name, name, role: "admin" },
  newId,
});

process.on("message", ({ deed, asked }: { deed: DeedName; asked: unknown }) => {
  answer(deed, asked);
});
process.once("disconnect", () => process.exit(0));
process.send?.("ready");

async function answer(deed: DeedName, asked: unknown): Promise<void> {
  try {
    process.send?.({ value: await DEEDS[deed](act, asked as never) });
  } catch (error) {
    process.send?.({ thrown: error instanceof Error ? (error.stack ?? "") : String(error) });
  }
}
