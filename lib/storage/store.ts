import { createHash, randomUUID } from "node:crypto";
import fs from "node:fs";
import { mkdir, open, rename, rm } from "node:fs/promises";
import path from "node:path";
import { fileTypeFromBuffer } from "file-type";
import { STORED_TYPES, type StoredType } from "#lib/domain/file/stored-type.ts";
import { err, ok, type Result } from "#lib/result.ts";

/** A file as it was stored. */
export interface StoredFile {
  readonly type: StoredType;
  readonly bytes: number;
  readonly sha256: string;
}

const STORE_PROBLEMS = ["too-large", "wrong-type", "incomplete", "empty"] as const;
export type StoreProblem = (typeof STORE_PROBLEMS)[number];

/** Why a file was not stored; nothing of it stays. */
export interface StoreRefusal {
  readonly reason: StoreProblem;
  /** In words, to complete the sentence. */
  readonly detail: string;
}

interface Incoming {
  /** Bytes that the sender said would come; null where nothing was said. */
  readonly declared: number | null;
  /** Most bytes that are taken. */
  readonly limit: number;
}

/** The kind of a file shows in its beginning. */
const HEAD = 4_100;

/**
 * Writes a stream to the data folder, by the hash of its bytes, counting and hashing while it is
 * written. Refuses what is too large, is no PDF, PNG or JPEG by its own bytes (whatever it is called),
 * or ends before the declared count.
 */
export async function storeFile(
  dataFolder: string,
  bytes: AsyncIterable<Uint8Array>,
  { declared, limit }: Incoming,
): Promise<Result<StoredFile, StoreRefusal>> {
  if (declared !== null && declared > limit) return tooLarge(limit);
  const folder = path.join(dataFolder, "files", "incoming");
  await mkdir(folder, { recursive: true });
  const part = path.join(folder, randomUUID());
  try {
    const written = await writeTo(part, bytes, limit);
    if (written === null) return tooLarge(limit);
    if (written.bytes === 0) return err({ reason: "empty", detail: "The file is empty" });
    if (declared !== null && declared !== written.bytes)
      return err({
        reason: "incomplete",
        detail: `${written.bytes} of ${declared} bytes arrived; send it again`,
      });
    const type = await typeOf(written.head);
    if (type === null)
      return err({
        reason: "wrong-type",
        detail: "by its own bytes this is none of the files that are taken",
      });
    const place = storedPath(dataFolder, written.sha256);
    await mkdir(path.dirname(place), { recursive: true });
    await rename(part, place);
    return ok({ type, bytes: written.bytes, sha256: written.sha256 });
  } catch (error) {
    if (!(error instanceof BrokenOff)) throw error;
    return err({ reason: "incomplete", detail: "The connection broke; send the file again" });
  } finally {
    await rm(part, { force: true });
  }
}

function tooLarge(limit: number): Result<never, StoreRefusal> {
  const detail = `at most ${(limit / 1_000_000).toFixed(0)} MB are taken`;
  return err({ reason: "too-large", detail });
}

interface Written {
  readonly bytes: number;
  readonly sha256: string;
  readonly head: Uint8Array;
}

/** Null as soon as there is more than the limit. */
async function writeTo(
  file: string,
  bytes: AsyncIterable<Uint8Array>,
  limit: number,
): Promise<Written | null> {
  const hash = createHash("sha256");
  const handle = await open(file, "wx", 0o600);
  let count = 0;
  let head = Buffer.alloc(0);
  try {
    for await (const chunk of untilBroken(bytes)) {
      count += chunk.byteLength;
      if (count > limit) return null;
      if (head.length < HEAD) head = Buffer.concat([head, chunk]).subarray(0, HEAD);
      hash.update(chunk);
      await handle.writeFile(chunk);
    }
    await handle.sync();
  } finally {
    await handle.close();
  }
  return { bytes: count, sha256: hash.digest("hex"), head };
}

/** The sender went away in the middle. */
class BrokenOff extends Error {}

async function* untilBroken(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const source = bytes[Symbol.asyncIterator]();
  for (;;) {
    const next = await source.next().catch((cause: unknown) => {
      throw new BrokenOff("The sender went away", { cause });
    });
    if (next.done) return;
    yield next.value;
  }
}

async function typeOf(head: Uint8Array): Promise<StoredType | null> {
  const found = await fileTypeFromBuffer(head);
  return STORED_TYPES.find((type) => type === found?.mime) ?? null;
}

/** Where the bytes with this hash lie. */
export function storedPath(dataFolder: string, sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new RangeError(`Not a hash: ${sha256}`);
  return path.join(dataFolder, "files", sha256.slice(0, 2), sha256);
}

/** The stored bytes, or null where they are not there. */
export function readStored(dataFolder: string, sha256: string): Uint8Array | null {
  const place = storedPath(dataFolder, sha256);
  return fs.existsSync(place) ? fs.readFileSync(place) : null;
}

/** Whether the stored bytes are there and still those of their hash. */
export function isStoredWhole(dataFolder: string, sha256: string): boolean {
  const bytes = readStored(dataFolder, sha256);
  return bytes !== null && createHash("sha256").update(bytes).digest("hex") === sha256;
}
