import fs from "node:fs";
import path from "node:path";
import { makeFolder, writeWhole } from "./durable.ts";

// Mailings that were made, by job. They have the codes of private pages on them, so they are no files
// of a line: no line file and no backup holds them, and after a week they are swept away (sweep.ts).

function placeOf(dataFolder: string, jobId: string): string {
  return path.join(dataFolder, "mailings", `${encodeURIComponent(jobId)}.pdf`);
}

/** Keeps a mailing's PDF, whole and on the disk before this returns. */
export function keepMailing(dataFolder: string, jobId: string, bytes: Uint8Array): void {
  const place = placeOf(dataFolder, jobId);
  makeFolder(path.dirname(place));
  writeWhole(place, bytes);
}

/** A mailing's PDF; null where it is not there any more, or never was. */
export function readMailing(dataFolder: string, jobId: string): Uint8Array | null {
  const place = placeOf(dataFolder, jobId);
  return fs.existsSync(place) ? fs.readFileSync(place) : null;
}

/** Whether a mailing can still be opened. */
export function hasMailing(dataFolder: string, jobId: string): boolean {
  return fs.existsSync(placeOf(dataFolder, jobId));
}
