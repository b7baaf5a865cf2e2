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
import { serve } from "./serve.mjs";

requireNode();
const dataFolder = path.resolve(ROOT, process.env.WYEBOOK_DATA ?? "data/demo");
const port = await requirePort("npm run demo");
await requireFolder(dataFolder);
install();
if (fs.existsSync(path.join(dataFolder, "wyebook.db"))) {
  say(`The data folder ${dataFolder} already exists; left unchanged.`);
} else {
  say("Filling the demo …");
  run(process.execPath, ["--import", "tsx", "seed/index.ts"], {
    env: { WYEBOOK_DATA: dataFolder },
    words: "The demo could not be filled; see the message above. Nothing else was changed.",
  });
}
build();
serve({
  port,
  dataFolder,
  ready: () => {
    say(`\nWyebook's demo is at http://localhost:${port}`);
    say("Sign in as demo@example.com with the password demo-office-2026");
    say("Stop it with Ctrl+C; your changes are kept for the next time.\n");
  },
});
