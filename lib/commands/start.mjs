// npm start: serves the office's own data; walks a new office through its first set-up.
import path from "node:path";
import { build, install, ROOT, requireFolder, requireNode, requirePort, say } from "./house.mjs";
import { serve } from "./serve.mjs";

requireNode();
const dataFolder = path.resolve(ROOT, process.env.WYEBOOK_DATA ?? "data/office");
const port = await requirePort("npm start");
await requireFolder(dataFolder);
install();
build();
serve({
  port,
  dataFolder,
  ready: () => {
    say(`\nWyebook is at http://localhost:${port}`);
    say(`Data folder: ${dataFolder}`);
    say("Stop it with Ctrl+C.\n");
  },
});
