import { createHash } from "node:crypto";
import fs from "node:fs";
import { open, readdir, rm, stat, statfs } from "node:fs/promises";
import path from "node:path";
import { fileTypeFromBuffer } from "file-type";
import type { VideoType } from "#lib/domain/facts/video.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { hold } from "./hold.ts";
import {
  BrokenOff,
  HEAD,
  type Incoming,
  incomingFolder,
  putInPlace,
  type StoredFile,
  type StoreRefusal,
  storeAs,
  tooLarge,
  unstorableWords,
  untilBroken,
} from "./store.ts";

/** What plays in a browser, by the names that its own bytes give it. */
const TAKEN: Readonly<Record<string, VideoType>> = {
  "video/mp4": "video/mp4",
  "video/x-m4v": "video/mp4",
  "video/webm": "video/webm",
};

const REFUSED: Readonly<Record<string, string>> = {
  "video/quicktime":
    "This is a QuickTime video (.mov), as iPhones make. Save a copy of it as MP4 with the phone’s or computer’s own video program, and add that",
  "video/matroska":
    "This is a Matroska video (.mkv). Save a copy of it as MP4 with the program that made it, and add that",
};

const OTHER =
  "This is not an MP4 or WebM video. Save a copy of it as MP4 with the program that made it, and add that";

/** MP4 or WebM by the file's beginning; else in words what to do. */
export async function sniffVideo(head: Uint8Array): Promise<Result<VideoType, string>> {
  const mime = (await fileTypeFromBuffer(head))?.mime ?? "";
  const type = TAKEN[mime];
  return type === undefined ? err(REFUSED[mime] ?? OTHER) : ok(type);
}

/** Stores a recording that comes in one go; as `storeFile`, for MP4 and WebM. */
export function storeVideo(
  dataFolder: string,
  bytes: AsyncIterable<Uint8Array>,
  incoming: Incoming,
): Promise<Result<StoredFile<VideoType>, StoreRefusal>> {
  return storeAs(dataFolder, bytes, { ...incoming, sniff: sniffVideo });
}

/** A piece of a recording that is sent one piece after the other. */
export interface Piece {
  /** Names the sending, so that it can go on after a break: the same for all its pieces. */
  readonly key: string;
  /** Where the piece begins. */
  readonly from: number;
  /** Bytes of the whole recording. */
  readonly total: number;
  readonly limit: number;
}

/** How far a recording has come in; `stored` with the last piece. */
export interface Progress {
  readonly have: number;
  readonly stored: StoredFile<VideoType> | null;
}

const HALF_SENT_DAYS = 7;
/** Left for the database and the papers, in bytes. */
const SPARE = 200_000_000;

/**
 * Takes one piece of a recording. A piece that does not begin where the last one ended is left
 * unread, and the answer says how much is there, so that a broken sending goes on from there; an
 * empty piece only asks. The kind is judged as soon as the beginning is there. Refused: nothing of
 * the whole sending stays, except where only the connection broke.
 */
export async function storePiece(
  dataFolder: string,
  bytes: AsyncIterable<Uint8Array>,
  piece: Piece,
): Promise<Result<Progress, StoreRefusal>> {
  if (piece.total > piece.limit) return tooLarge(piece.limit);
  const folder = path.join(dataFolder, "files", "incoming");
  const part = path.join(folder, `video-${sha256Of(piece.key)}`);
  let letGo: (() => Promise<void>) | null = null;
  try {
    await incomingFolder(dataFolder);
    letGo = await hold(`${part}-sending`);
    if (letGo === null) return stillSending();
    await dropForgotten(folder);
    const full = await fullWords(folder, piece);
    if (full !== null) return err({ reason: "too-large", detail: full });
    return await takePiece(dataFolder, part, { bytes, piece });
  } catch (error) {
    const detail = unstorableWords(error);
    if (detail === null) throw error;
    return err({ reason: "incomplete", detail });
  } finally {
    await letGo?.();
  }
}

function stillSending(): Result<Progress, StoreRefusal> {
  const detail = "This video is already being uploaded; wait a moment";
  return err({ reason: "incomplete", detail });
}

async function takePiece(
  dataFolder: string,
  part: string,
  { bytes, piece }: { bytes: AsyncIterable<Uint8Array>; piece: Piece },
): Promise<Result<Progress, StoreRefusal>> {
  const there = await sizeOf(part);
  const have = there === piece.from ? await append(part, bytes, piece) : there;
  const type = have === 0 ? null : await sniffVideo(await headOf(part));
  if (have > piece.total || type?.ok === false) {
    await rm(part, { force: true });
    if (type?.ok === false) return err({ reason: "wrong-type", detail: type.error });
    return err({ reason: "incomplete", detail: "More arrived than was said; send it again" });
  }
  if (have < piece.total || type === null) return ok({ have, stored: null });
  const sha256 = await hashOf(part);
  await putInPlace(dataFolder, part, sha256);
  return ok({ have, stored: { type: type.value, bytes: have, sha256 } });
}

/** What arrived before a break stays: it is in order, and the next piece goes on from there. */
async function append(
  part: string,
  bytes: AsyncIterable<Uint8Array>,
  { from, total }: Piece,
): Promise<number> {
  const handle = await open(part, "a", 0o600);
  let have = from;
  try {
    for await (const chunk of untilBroken(bytes)) {
      have += chunk.byteLength;
      if (have > total) break;
      await handle.writeFile(chunk);
    }
  } catch (error) {
    if (!(error instanceof BrokenOff)) throw error;
  } finally {
    await handle.sync();
    await handle.close();
  }
  return have;
}

/** Why the disk cannot hold the rest of it; null where it can, with a little to spare. */
async function fullWords(folder: string, { from, total }: Piece): Promise<string | null> {
  const { bavail, bsize } = await statfs(folder);
  const free = bavail * bsize - SPARE;
  if (total - from <= free) return null;
  return `the office’s disk has room for ${Math.max(0, Math.floor(free / 1_000_000))} MB more; make room on it first`;
}

async function sizeOf(file: string): Promise<number> {
  const found = await stat(file).catch(() => null);
  return found?.size ?? 0;
}

async function headOf(file: string): Promise<Uint8Array> {
  const handle = await open(file, "r");
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(HEAD), 0, HEAD, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

async function hashOf(file: string): Promise<string> {
  const hash = createHash("sha256");
  for await (const chunk of fs.createReadStream(file, { highWaterMark: 1 << 20 }))
    hash.update(chunk as Uint8Array);
  return hash.digest("hex");
}

function sha256Of(key: string): string {
  return createHash("sha256").update(key).digest("hex");
}

/** Recordings that nobody went on sending for a week. */
async function dropForgotten(folder: string): Promise<void> {
  const oldest = Date.now() - HALF_SENT_DAYS * 24 * 60 * 60 * 1000;
  for (const name of await readdir(folder)) {
    const file = path.join(folder, name);
    const found = await stat(file).catch(() => null);
    if (found !== null && found.mtimeMs < oldest) await rm(file, { force: true });
  }
}
