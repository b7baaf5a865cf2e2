import fs from "node:fs";
import path from "node:path";

// What is called kept has to be on the disk itself, and under its name, when the power fails.

/** Waits until a file's or folder's own bytes are on the disk. */
export function syncToDisk(place: string): void {
  const handle = fs.openSync(place, "r");
  try {
    fs.fsyncSync(handle);
  } finally {
    fs.closeSync(handle);
  }
}

/** Makes a folder and those above it, each kept under its name. */
export function makeFolder(folder: string): void {
  const made = fs.mkdirSync(folder, { recursive: true, mode: 0o700 });
  if (made === undefined) return;
  for (let at = folder; at.length >= made.length; at = path.dirname(at))
    syncToDisk(path.dirname(at));
}

/** Writes a file that is there whole or not at all. */
export function writeWhole(file: string, bytes: Uint8Array | string): void {
  const part = `${file}.part`;
  fs.writeFileSync(part, bytes, { mode: 0o600, flush: true });
  putUnder(part, file);
}

/** Copies a file to a place that nobody reads yet. */
export function copyToDisk(from: string, to: string): void {
  fs.copyFileSync(from, to);
  syncToDisk(to);
}

/** Gives a file or folder its last name, in one step. */
export function putUnder(part: string, name: string): void {
  fs.renameSync(part, name);
  syncToDisk(path.dirname(name));
}
