import fs from "node:fs";
import path from "node:path";

// The secret of a private link that waits to go out by mail. It is kept out of the database, so that
// neither the outbox nor a backup holds what opens a neighbor's letter, and only until it is sent.

function folderOf(dataFolder: string): string {
  return path.join(dataFolder, "link-secrets");
}

function placeOf(dataFolder: string, messageId: string): string {
  return path.join(folderOf(dataFolder), encodeURIComponent(messageId));
}

/** Keeps the secret for one message of the outbox, on disk before this returns. */
export function keepLinkSecret(dataFolder: string, messageId: string, secret: string): void {
  fs.mkdirSync(folderOf(dataFolder), { recursive: true, mode: 0o700 });
  const file = fs.openSync(placeOf(dataFolder, messageId), "w", 0o600);
  try {
    fs.writeSync(file, secret);
    fs.fsyncSync(file);
  } finally {
    fs.closeSync(file);
  }
}

/** The secret for a message; null where it is not here, say after a backup was restored. */
export function readLinkSecret(dataFolder: string, messageId: string): string | null {
  const place = placeOf(dataFolder, messageId);
  return fs.existsSync(place) ? fs.readFileSync(place, "utf8") : null;
}

/** Forgets the secret of a message that went out, or never will. */
export function forgetLinkSecret(dataFolder: string, messageId: string): void {
  fs.rmSync(placeOf(dataFolder, messageId), { force: true });
}

/**
 * Forgets the secrets of messages that never came about: none of these, and kept before a moment,
 * because one that is being handed over just now has its secret first.
 */
export function sweepLinkSecrets(
  dataFolder: string,
  { but, before }: { but: readonly string[]; before: Date },
): void {
  const folder = folderOf(dataFolder);
  if (!fs.existsSync(folder)) return;
  const kept = new Set(but.map((id) => encodeURIComponent(id)));
  for (const name of fs.readdirSync(folder)) {
    const place = path.join(folder, name);
    if (!kept.has(name) && fs.statSync(place).mtime < before) fs.rmSync(place, { force: true });
  }
}
