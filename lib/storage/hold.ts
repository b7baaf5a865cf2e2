import { randomUUID } from "node:crypto";
import { open, readFile, rename, rm, stat, utimes } from "node:fs/promises";

/** How often a holder says that it is still there. */
const BEAT_MS = 5_000;

/** A hold of which nothing was heard for so long was left behind, whoever has its process's number by now. */
const FORGOTTEN_MS = 60_000;

const mine = new Set<string>();

/**
 * Holds what `file` names for this process, against the others that serve the same folder: the file
 * is made, with the process's number in it, and touched as long as it is held. Returns what lets go of
 * it again; null where it is held already, here or in a process that lives. What a process that died
 * or a computer that went off left behind holds nothing. The folder has to be there.
 */
export async function hold(file: string): Promise<(() => Promise<void>) | null> {
  if (mine.has(file)) return null;
  mine.add(file);
  const mark = `${process.pid} ${randomUUID()}`;
  let isMine = false;
  try {
    isMine = (await made(file, mark)) || ((await tookAway(file)) && (await made(file, mark)));
  } finally {
    // Where the disk is full or the folder is gone, too.
    if (!isMine) mine.delete(file);
  }
  if (!isMine) return null;
  const beat = setInterval(() => void touch(file), BEAT_MS);
  beat.unref();
  return async () => {
    clearInterval(beat);
    if ((await markIn(file)) === mark) await rm(file, { force: true });
    mine.delete(file);
  };
}

async function made(file: string, mark: string): Promise<boolean> {
  const handle = await open(file, "wx", 0o600).catch((error: NodeJS.ErrnoException) => {
    if (error.code === "EEXIST") return null;
    throw error;
  });
  if (handle === null) return false;
  try {
    await handle.writeFile(mark);
    return true;
  } catch (error) {
    // What nobody is named in would keep others waiting.
    await rm(file, { force: true });
    throw error;
  } finally {
    await handle.close();
  }
}

/**
 * Takes a hold away that was left behind. Of several that find it at once one does: whoever took a
 * newer one instead puts it back.
 */
async function tookAway(file: string): Promise<boolean> {
  const left = await markIn(file);
  if (!(await isLeft(file, left))) return false;
  const away = `${file}-${randomUUID()}`;
  try {
    await rename(file, away);
  } catch {
    return false;
  }
  if ((await markIn(away)) !== left) {
    await rename(away, file);
    return false;
  }
  await rm(away, { force: true });
  return true;
}

/** Whether a hold was left behind: its process is gone, or was this one, or it fell silent. */
async function isLeft(file: string, mark: string): Promise<boolean> {
  const found = await stat(file).catch(() => null);
  if (found === null || Date.now() - found.mtimeMs > FORGOTTEN_MS) return true;
  // Between making the file and writing into it nobody is named yet.
  if (mark === "") return false;
  const pid = Number(mark.split(" ")[0]);
  return pid === process.pid || !isAlive(pid);
}

function markIn(file: string): Promise<string> {
  return readFile(file, "utf8").catch(() => "");
}

async function touch(file: string): Promise<void> {
  const now = new Date();
  await utimes(file, now, now).catch(() => undefined);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
