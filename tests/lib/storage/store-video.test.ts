import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { expect, test, vi } from "vitest";
import { readStored, storedPath } from "#lib/storage/store.ts";
import { sniffVideo, storePiece, storeVideo } from "#lib/storage/store-video.ts";
import { streamStored } from "#lib/storage/stream-stored.ts";
import { aFolder } from "../../support/office.ts";
import { aRecording, chunksOf } from "../../support/recording.ts";

const LIMIT = 1_000_000;
const bytes = aRecording();
const sha256 = createHash("sha256").update(bytes).digest("hex");
const stored = { type: "video/webm", bytes: bytes.length, sha256 };

/** The first box of an MP4 or QuickTime file (ISO/IEC 14496-12, from memory). */
function ftyp(brand: string): Buffer {
  const box = Buffer.alloc(24);
  box.writeUInt32BE(24, 0);
  box.write(`ftyp${brand}`, 4, "latin1");
  box.write(brand, 16, "latin1");
  return Buffer.concat([box, Buffer.alloc(200)]);
}

test.each(["isom", "mp42", "avc1", "M4V "])(
  "sniffVideo() takes MP4 with the brand %s",
  async (brand) => {
    expect(await sniffVideo(ftyp(brand))).toEqual({ ok: true, value: "video/mp4" });
  },
);

test("sniffVideo() says what to do with an iPhone's recording, a Matroska and a paper", async () => {
  expect(await sniffVideo(ftyp("qt  "))).toMatchObject({ error: expect.stringContaining(".mov") });
  const mkv = Buffer.from(bytes);
  mkv.write("mkv\0", mkv.indexOf("webm"), "latin1");
  expect((await sniffVideo(mkv)).ok).toBe(false);
  expect(await sniffVideo(Buffer.from("%PDF-1.7\n"))).toMatchObject({
    error: expect.stringContaining("not an MP4 or WebM"),
  });
});

test("storeVideo() stores a recording under its hash", async () => {
  const folder = aFolder();
  const taken = await storeVideo(folder, chunksOf(bytes), { declared: bytes.length, limit: LIMIT });
  expect(taken).toEqual({ ok: true, value: stored });
  expect(readStored(folder, sha256)).toEqual(bytes);
});

function piece(from: number, total = bytes.length) {
  return { key: "one sending", from, total, limit: LIMIT };
}

test("storePiece() puts a recording together from its pieces, and goes on after a break", async () => {
  const folder = aFolder();
  const half = 60_000;
  async function* broken(): AsyncGenerator<Uint8Array> {
    yield bytes.subarray(half, half + 5_000);
    throw new Error("aborted");
  }
  expect(await storePiece(folder, chunksOf(bytes.subarray(0, half)), piece(0))).toEqual({
    ok: true,
    value: { have: half, stored: null },
  });
  const after = { ok: true, value: { have: half + 5_000, stored: null } };
  expect(await storePiece(folder, broken(), piece(half))).toEqual(after);
  // Sent again from where the sender thinks it is: left unread, and the answer says where to go on.
  expect(await storePiece(folder, chunksOf(bytes.subarray(half)), piece(half))).toEqual(after);
  expect(await storePiece(folder, chunksOf(Buffer.alloc(0)), piece(0))).toEqual(after);
  const rest = chunksOf(bytes.subarray(half + 5_000));
  expect(await storePiece(folder, rest, piece(half + 5_000))).toEqual({
    ok: true,
    value: { have: bytes.length, stored },
  });
  expect(readStored(folder, sha256)).toEqual(bytes);
  expect(fs.readdirSync(path.join(folder, "files", "incoming"))).toEqual([]);
});

test("storePiece() judges the kind by the first piece, and takes no more than was said", async () => {
  const folder = aFolder();
  const mov = chunksOf(ftyp("qt  "));
  expect(await storePiece(folder, mov, piece(0, 900_000))).toMatchObject({
    error: { reason: "wrong-type" },
  });
  expect(await storePiece(folder, chunksOf(bytes), piece(0, 50_000))).toMatchObject({
    error: { reason: "incomplete" },
  });
  expect(await storePiece(folder, chunksOf(bytes), piece(0, LIMIT + 1))).toMatchObject({
    error: { reason: "too-large", detail: "at most 1 MB are taken" },
  });
  expect(fs.readdirSync(path.join(folder, "files", "incoming"))).toEqual([]);
});

test("storePiece() refuses a second piece of the same sending while the first one comes in", async () => {
  const folder = aFolder();
  let begin = () => {};
  const begun = new Promise<void>((resolve) => {
    begin = resolve;
  });
  let go = () => {};
  const waiting = new Promise<void>((resolve) => {
    go = resolve;
  });
  async function* slow(): AsyncGenerator<Uint8Array> {
    begin();
    await waiting;
    yield bytes;
  }
  const first = storePiece(folder, slow(), piece(0));
  await begun;
  const second = await storePiece(folder, chunksOf(bytes), piece(0));
  go();
  expect(second).toMatchObject({ error: { reason: "incomplete" } });
  expect(await first).toMatchObject({ value: { stored } });
});

test("streamStored() gives the very bytes of a range, and lets go when its reader leaves", async () => {
  const folder = aFolder();
  await storeVideo(folder, chunksOf(bytes), { declared: null, limit: LIMIT });
  const place = storedPath(folder, sha256);
  const part = await new Response(streamStored(place, { from: 1_000, to: 100_999 })).bytes();
  expect(Buffer.compare(part, bytes.subarray(1_000, 101_000))).toBe(0);
  const open = () => fs.readdirSync("/proc/self/fd").filter((fd) => linkOf(fd) === place);
  const reader = streamStored(place, { from: 0, to: bytes.length - 1 }).getReader();
  await reader.read();
  await reader.cancel();
  await vi.waitFor(() => expect(open()).toEqual([]), { timeout: 60_000 });
});

function linkOf(fd: string): string {
  try {
    return fs.readlinkSync(`/proc/self/fd/${fd}`);
  } catch {
    return "";
  }
}

test("streamStored() ends in an error, not short, where the file is cut off", async () => {
  const folder = aFolder();
  const file = path.join(folder, "cut");
  fs.writeFileSync(file, "only this");
  await expect(new Response(streamStored(file, { from: 0, to: 99 })).bytes()).rejects.toThrow(
    "ended at byte 9",
  );
});
