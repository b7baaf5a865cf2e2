// npm start: serves the office's own data; walks a new office through its first set-up.
import path from "node:path";
import { build, install, ROOT, requireFolder, requireNode, requirePort, say } from "./house.mjs";
import { making } from "./making.mjs";
import { serving } from "./serve.mjs";

requireNode();
const dataFolder = path.resolve(ROOT, process.env.WYEBOOK_DATA ?? "data/office");
await requirePort("npm start");
await requireFolder(dataFolder);
await making({ dataFolder }, async () => {
  install();
  build();
  // In the minutes that this takes, another may have begun to serve.
  await requireFolder(dataFolder);
  const port = await requirePort("npm start");
  await serving({ port, dataFolder });
  say(`\nWyebook is at http://localhost:${port}`);
  say(`Data folder: ${dataFolder}`);
  say("Stop it with Ctrl+C.\n");
});
