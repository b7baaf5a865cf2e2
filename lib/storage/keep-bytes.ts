import { randomUUID } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { makeFolder, putUnder } from "./durable.ts";
import { storedPath } from "./store.ts";

/** Puts bytes whose hash is known already to be right where a stored file lies; there already: stays. */
export function keepBytes(dataFolder: string, sha256: string, bytes: Uint8Array): void {
  const place = storedPath(dataFolder, sha256);
  if (fs.existsSync(place)) return;
  makeFolder(path.dirname(place));
  const part = `${place}.${randomUUID()}`;
  fs.writeFileSync(part, bytes, { mode: 0o600, flush: true });
  putUnder(part, place);
}
