import { open, readFile, rm, stat } from "node:fs/promises";

/** A hold this old was left behind, whoever has its process's number by now. */
const FORGOTTEN_MS = 60 * 60 * 1000;

const mine = new Set<string>();

/**
 * Holds what `file` names for this process, against the others that serve the same folder: the file
 * is made, with the process's number in it. Returns what lets go of it again; null where it is held
 * already, here or in a process that lives. What a process that died or a computer that went off
 * left behind holds nothing. The folder has to be there.
 */
export async function hold(file: string): Promise<(() => Promise<void>) | null> {
  if (mine.has(file)) return null;
  mine.add(file);
  if ((await made(file)) || ((await isLeft(file)) && (await madeAnew(file))))
    return async () => {
      await rm(file, { force: true });
      mine.delete(file);
    };
  mine.delete(file);
  return null;
}

async function made(file: string): Promise<boolean> {
  try {
    const handle = await open(file, "wx", 0o600);
    await handle.writeFile(String(process.pid));
    await handle.close();
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  }
}

async function madeAnew(file: string): Promise<boolean> {
  await rm(file, { force: true });
  return made(file);
}

/** Whether a hold was left behind: its process is gone, or was this one, or it is too old. */
async function isLeft(file: string): Promise<boolean> {
  const [holder, found] = await Promise.all([
    readFile(file, "utf8").catch(() => ""),
    stat(file).catch(() => null),
  ]);
  if (found === null || Date.now() - found.mtimeMs > FORGOTTEN_MS) return true;
  const pid = Number(holder);
  // Between making the file and writing into it nobody is named yet.
  if (holder === "") return false;
  return pid === process.pid || !isAlive(pid);
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
}
