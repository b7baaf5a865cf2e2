// npm run demo: installs, fills the demo once, builds, serves.
import fs from "node:fs";
import path from "node:path";
import {
  build,
  install,
  ROOT,
  requireFolder,
  requireNode,
  requirePort,
  run,
  say,
} from "./house.mjs";
import { making } from "./making.mjs";
import { serving } from "./serve.mjs";

requireNode();
const dataFolder = path.resolve(ROOT, process.env.WYEBOOK_DATA ?? "data/demo");
await requirePort("npm run demo");
await requireFolder(dataFolder);
await making({ dataFolder }, async () => {
  install();
  fill();
  build();
  // In the minutes that this takes, another may have begun to serve.
  await requireFolder(dataFolder);
  const port = await requirePort("npm run demo");
  await serving({ port, dataFolder });
  say(`\nWyebook's demo is at http://localhost:${port}`);
  say("Sign in as demo@example.com with the password demo-office-2026");
  say("Stop it with Ctrl+C; your changes are kept for the next time.\n");
});

function fill() {
  if (fs.existsSync(path.join(dataFolder, "wyebook.db"))) {
    say(`The data folder ${dataFolder} already exists; left unchanged.`);
    return;
  }
  say("Filling the demo …");
  run(process.execPath, ["--import", "tsx", "seed/index.ts"], {
    env: { WYEBOOK_DATA: dataFolder },
    words: "The demo could not be filled; see the message above. Nothing else was changed.",
  });
}
