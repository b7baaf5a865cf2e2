import { createHash, randomUUID } from "node:crypto";
import fs from "node:fs";
import { mkdir, open, rm } from "node:fs/promises";
import path from "node:path";
import { fileTypeFromBuffer } from "file-type";
import { STORED_TYPES, type StoredType } from "#lib/domain/facts/stored-type.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { makeFolder, putUnder } from "./durable.ts";

/** A file as it was stored. */
export interface StoredFile<T extends string = StoredType> {
  readonly type: T;
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

export interface Incoming {
  /** Bytes that the sender said would come; null where nothing was said. */
  readonly declared: number | null;
  /** Most bytes that are taken. */
  readonly limit: number;
}

/** Tells by a file's beginning what it is, or in words why such a file is not taken. */
export type Sniff<T extends string> = (head: Uint8Array) => Promise<Result<T, string>>;

/** The kind of a file shows in its beginning. */
export const HEAD = 4_100;

/**
 * Writes a stream to the data folder, by the hash of its bytes, counting and hashing while it is
 * written. Refuses what is too large, is no PDF, PNG or JPEG by its own bytes (whatever it is called),
 * or ends before the declared count.
 */
export async function storeFile(
  dataFolder: string,
  bytes: AsyncIterable<Uint8Array>,
  incoming: Incoming,
): Promise<Result<StoredFile, StoreRefusal>> {
  return storeAs(dataFolder, bytes, { ...incoming, sniff: sniffPaper });
}

/** As `storeFile`, for the types that `sniff` knows. */
export async function storeAs<T extends string>(
  dataFolder: string,
  bytes: AsyncIterable<Uint8Array>,
  { declared, limit, sniff }: Incoming & { readonly sniff: Sniff<T> },
): Promise<Result<StoredFile<T>, StoreRefusal>> {
  if (declared !== null && declared > limit) return tooLarge(limit);
  let part = "";
  try {
    part = path.join(await incomingFolder(dataFolder), randomUUID());
    const written = await writeTo(part, bytes, limit);
    if (written === null) return tooLarge(limit);
    if (written.bytes === 0) return err({ reason: "empty", detail: "The file is empty" });
    if (declared !== null && declared !== written.bytes)
      return err({
        reason: "incomplete",
        detail: `${written.bytes} of ${declared} bytes arrived; send it again`,
      });
    const type = await sniff(written.head);
    if (!type.ok) return err({ reason: "wrong-type", detail: type.error });
    await putInPlace(dataFolder, part, written.sha256);
    return ok({ type: type.value, bytes: written.bytes, sha256: written.sha256 });
  } catch (error) {
    const detail = unstorableWords(error);
    if (detail === null) throw error;
    return err({ reason: "incomplete", detail });
  } finally {
    if (part !== "") await rm(part, { force: true });
  }
}

/** Where files lie while they come in; on the same disk as their place. */
export async function incomingFolder(dataFolder: string): Promise<string> {
  const folder = path.join(dataFolder, "files", "incoming");
  await mkdir(folder, { recursive: true });
  return folder;
}

/** Moves a file that came in whole to the place of its hash. */
export async function putInPlace(dataFolder: string, part: string, sha256: string): Promise<void> {
  const place = storedPath(dataFolder, sha256);
  makeFolder(path.dirname(place));
  putUnder(part, place);
}

export function tooLarge(limit: number): Result<never, StoreRefusal> {
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

/** Why a file could not be written, where that is nobody's mistake; null for anything else. */
export function unstorableWords(error: unknown): string | null {
  if (error instanceof BrokenOff) return "The connection broke; send the file again";
  switch ((error as NodeJS.ErrnoException).code) {
    case "ENOSPC":
    case "EDQUOT":
      return "The disk of the office’s machine is full; make room on it and send the file again";
    case "EROFS":
    case "EACCES":
      return "The data folder on the office’s machine can’t be written to; tell whoever runs it";
    default:
      return null;
  }
}

/** The sender went away in the middle. */
export class BrokenOff extends Error {}

/** The same bytes; where the sender goes away, throws `BrokenOff`. */
export async function* untilBroken(bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const source = bytes[Symbol.asyncIterator]();
  for (;;) {
    const next = await source.next().catch((cause: unknown) => {
      throw new BrokenOff("The sender went away", { cause });
    });
    if (next.done) return;
    yield next.value;
  }
}

async function sniffPaper(head: Uint8Array): Promise<Result<StoredType, string>> {
  const found = await fileTypeFromBuffer(head);
  const type = STORED_TYPES.find((each) => each === found?.mime);
  return type === undefined ? err("this is not an accepted file type") : ok(type);
}

/** Where the bytes with this hash lie. */
export function storedPath(dataFolder: string, sha256: string): string {
  if (!/^[0-9a-f]{64}$/.test(sha256)) throw new RangeError(`Not a hash: ${sha256}`);
  return path.join(dataFolder, "files", sha256.slice(0, 2), sha256);
}

/** Whether there are stored bytes of this hash, without reading them. */
export function isStored(dataFolder: string, sha256: string): boolean {
  return fs.existsSync(storedPath(dataFolder, sha256));
}

/** The stored bytes, or null where they are not there. */
export function readStored(dataFolder: string, sha256: string): Uint8Array | null {
  const place = storedPath(dataFolder, sha256);
  return fs.existsSync(place) ? fs.readFileSync(place) : null;
}

/** Whether the stored bytes are there and still those of their hash; read piece by piece. */
export function isStoredWhole(dataFolder: string, sha256: string): boolean {
  const place = storedPath(dataFolder, sha256);
  return fs.existsSync(place) && hashOf(place) === sha256;
}

function hashOf(file: string): string {
  const hash = createHash("sha256");
  const piece = Buffer.allocUnsafe(1 << 20);
  const handle = fs.openSync(file, "r");
  try {
    for (;;) {
      const read = fs.readSync(handle, piece, 0, piece.length, null);
      if (read === 0) return hash.digest("hex");
      hash.update(piece.subarray(0, read));
    }
  } finally {
    fs.closeSync(handle);
  }
}
