// npm start: serves the office's own data; walks a new office through its first set-up.
import path from "node:path";
import { build, install, ROOT, requireNode, requirePort, say, serve } from "./house.mjs";

requireNode();
const port = await requirePort("npm start");
install();
build();
const dataFolder = path.resolve(ROOT, process.env.WYEBOOK_DATA ?? "data/office");
serve({
  port,
  dataFolder,
  ready: () => {
    say(`\nWyebook is at http://localhost:${port}`);
    say(`Data folder: ${dataFolder}`);
    say("Stop it with Ctrl+C.\n");
  },
});
