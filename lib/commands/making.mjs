// Installing, filling, building and beginning to serve, by one at a time. Plain JavaScript on Node alone: it runs before
// anything is installed.
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { isAlive, ROOT, say, stop } from "./house.mjs";

const LOOK_AGAIN_MS = 200;
/** How exactly a machine knows when it was started. */
const ABOUT_MS = 120_000;

/**
 * Runs `make` while nobody else makes anything in the program's folder. Where another start of the same
 * data folder does, stops in words; for another's it waits, and says so.
 */
export async function making({ dataFolder, root = ROOT }, make) {
  const file = path.join(root, ".wyebook-making");
  let isTold = false;
  for (let other = claim(file, dataFolder); other !== null; other = claim(file, dataFolder)) {
    const who = `process ${other.pid}`;
    if (other.dataFolder === dataFolder)
      stop(
        `Wyebook is already being started for ${dataFolder} (${who} is installing, building or about to serve, which can take minutes), so it was not started again. Use that one, or stop it first (Ctrl+C where it runs).`,
      );
    if (!isTold)
      say(
        `Another Wyebook (${who}) is installing or building in the same program folder. Waiting until it is done … If none is running, delete ${file}.`,
      );
    isTold = true;
    await wait(LOOK_AGAIN_MS);
  }
  const release = () => fs.rmSync(file, { force: true });
  process.once("exit", release);
  try {
    return await make();
  } finally {
    process.removeListener("exit", release);
    release();
  }
}

/** Who makes something there; null: it is ours now. What a killed one left is taken away. */
function claim(file, dataFolder) {
  const own = `${file}-${process.pid}`;
  const note = { pid: process.pid, bootedAt: Date.now() - os.uptime() * 1000, dataFolder };
  try {
    fs.writeFileSync(own, JSON.stringify(note));
    // Whole at once, and only where none is.
    fs.linkSync(own, file);
    return null;
  } catch (error) {
    // Where nothing can be written nothing is built either; what is there already can be served.
    if (error.code !== "EEXIST") return null;
    const other = noted(file);
    if (other !== null && isMaking(other)) return other;
    takeAway(file, own);
    return claim(file, dataFolder);
  } finally {
    fs.rmSync(own, { force: true });
  }
}

/** Another one that starts may have taken it away meanwhile, and be making something: it is put back. */
function takeAway(file, own) {
  try {
    fs.renameSync(file, own);
  } catch (error) {
    if (error.code === "ENOENT") return;
    throw error;
  }
  const taken = noted(own);
  if (taken !== null && isMaking(taken) && !fs.existsSync(file)) fs.linkSync(own, file);
}

function noted(file) {
  try {
    return JSON.parse(fs.readFileSync(file, "utf8"));
  } catch {
    return null;
  }
}

/** After the machine was started again its number may be another program's. */
function isMaking({ pid, bootedAt }) {
  const here = Date.now() - os.uptime() * 1000;
  return Math.abs(here - bootedAt) < ABOUT_MS && isAlive(pid);
}
