import fs from "node:fs";
import path from "node:path";

const MINUTE = 60_000;
/** No request lasts longer: what was not written to for so long belongs to nobody. */
const PART = 30 * MINUTE;
/** A recording that is sent in pieces can go on for a week after a break. */
const HALF_SENT = 7 * 24 * 60 * MINUTE;

/** A mailing is kept for printing it once more, and no longer. */
const MAILING = 7 * 24 * 60 * MINUTE;

/**
 * Removes mailings that are a week old, and what was left half written when the program was ended in the middle: parts of uploads, of
 * stored files and of backups. What is whole stays. Says how many there were.
 */
export function sweepParts(dataFolder: string, now: number): number {
  const files = path.join(dataFolder, "files");
  const stores = namesIn(files).filter((name) => /^[0-9a-f]{2}$/.test(name));
  const parts = [
    ...partsIn(path.join(files, "incoming"), /^(?!video-)/, PART),
    ...partsIn(path.join(files, "incoming"), /^video-/, HALF_SENT),
    ...stores.flatMap((name) => partsIn(path.join(files, name), /^[0-9a-f]{64}\./, PART)),
    // Mailings have the codes of private pages on them.
    ...partsIn(path.join(dataFolder, "mailings"), /./, MAILING),
    ...partsIn(path.join(dataFolder, "backups"), /\.part$/, HALF_SENT),
  ].filter(({ place, age }) => now - changedAt(place) > age);
  for (const { place } of parts) fs.rmSync(place, { recursive: true, force: true });
  return parts.length;
}

function partsIn(folder: string, name: RegExp, age: number): { place: string; age: number }[] {
  const named = namesIn(folder).filter((each) => name.test(each));
  return named.map((each) => ({ place: path.join(folder, each), age }));
}

function namesIn(folder: string): string[] {
  return fs.existsSync(folder) ? fs.readdirSync(folder) : [];
}

/** What is gone meanwhile was changed just now. */
function changedAt(place: string): number {
  return fs.statSync(place, { throwIfNoEntry: false })?.mtimeMs ?? Number.POSITIVE_INFINITY;
}
