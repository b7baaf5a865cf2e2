import { createHash } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import sharp from "sharp";
import { expect, test } from "vitest";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { readStored, storedPath, storeFile } from "#lib/storage/store.ts";
import { aFolder } from "../../support/office.ts";

const LIMIT = 1_000_000;

async function* chunks(bytes: Uint8Array, size = 1_000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.byteLength; at += size) yield bytes.subarray(at, at + size);
}

function aPdf(size = 5_000): Buffer {
  return Buffer.concat([Buffer.from("%PDF-1.7\n"), Buffer.alloc(size, "x"), Buffer.from("%%EOF")]);
}

function filesIn(folder: string): string[] {
  return fs
    .readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name));
}

test("storeFile() stores bytes under their hash, outside of any name that was given", async () => {
  const folder = aFolder();
  const bytes = aPdf();
  const sha256 = createHash("sha256").update(bytes).digest("hex");
  const stored = await storeFile(folder, chunks(bytes), { declared: bytes.length, limit: LIMIT });
  expect(stored).toEqual({
    ok: true,
    value: { type: "application/pdf", bytes: bytes.length, sha256 },
  });
  expect(filesIn(folder)).toEqual([storedPath(folder, sha256)]);
  expect(readStored(folder, sha256)).toEqual(bytes);
});

test("storeFile() tells PNG and JPEG by their bytes", async () => {
  const folder = aFolder();
  const blank = sharp({
    create: { width: 8, height: 8, channels: 3, background: { r: 9, g: 9, b: 9 } },
  });
  const png = await blank.clone().png().toBuffer();
  const jpeg = await blank.clone().jpeg().toBuffer();
  const options = { declared: null, limit: LIMIT };
  expect(await storeFile(folder, chunks(png), options)).toMatchObject({
    value: { type: "image/png" },
  });
  expect(await storeFile(folder, chunks(jpeg), options)).toMatchObject({
    value: { type: "image/jpeg" },
  });
});

test.each([
  ["a web page", Buffer.from("<!doctype html><script>alert(1)</script>")],
  ["a drawing that can hold scripts", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>')],
  ["a zip", Buffer.from("504b0304140000000800", "hex")],
  ["plain text", Buffer.from("just words")],
])("storeFile() refuses %s in words and keeps nothing", async (_what, bytes) => {
  const folder = aFolder();
  const stored = await storeFile(folder, chunks(bytes), { declared: null, limit: LIMIT });
  expect(stored).toEqual({
    ok: false,
    error: {
      reason: "wrong-type",
      detail: "this is not an accepted file type",
    },
  });
  expect(filesIn(folder)).toEqual([]);
});

test("storeFile() refuses a file whose end did not arrive", async () => {
  const folder = aFolder();
  const bytes = aPdf();
  const cut = chunks(bytes.subarray(0, 3_000));
  expect(await storeFile(folder, cut, { declared: bytes.length, limit: LIMIT })).toEqual({
    ok: false,
    error: { reason: "incomplete", detail: "3000 of 5014 bytes arrived; send it again" },
  });
  expect(filesIn(folder)).toEqual([]);
});

test("storeFile() refuses when the sender goes away in the middle", async () => {
  const folder = aFolder();
  async function* broken(): AsyncGenerator<Uint8Array> {
    yield aPdf().subarray(0, 100);
    throw new Error("aborted");
  }
  const stored = await storeFile(folder, broken(), { declared: null, limit: LIMIT });
  expect(stored).toMatchObject({ error: { reason: "incomplete" } });
  expect(filesIn(folder)).toEqual([]);
});

test("storeFile() stops at the limit, whether or not a size was declared", async () => {
  const folder = aFolder();
  let taken = 0;
  async function* endless(): AsyncGenerator<Uint8Array> {
    for (;;) {
      taken += 100_000;
      yield Buffer.concat([Buffer.from("%PDF-1.7\n"), Buffer.alloc(99_991)]);
    }
  }
  const refusal = {
    ok: false,
    error: { reason: "too-large", detail: "at most 1 MB are taken" },
  };
  expect(await storeFile(folder, endless(), { declared: null, limit: LIMIT })).toEqual(refusal);
  expect(taken).toBeLessThan(LIMIT + 200_000);
  expect(await storeFile(folder, chunks(aPdf()), { declared: LIMIT + 1, limit: LIMIT })).toEqual(
    refusal,
  );
  expect(filesIn(folder)).toEqual([]);
});

test("storeFile() refuses an empty file", async () => {
  const folder = aFolder();
  const stored = await storeFile(folder, chunks(Buffer.alloc(0)), { declared: 0, limit: LIMIT });
  expect(stored).toMatchObject({ error: { reason: "empty" } });
});

test("storedPath() takes nothing but a hash", () => {
  expect(() => storedPath("/data", "../../etc/passwd")).toThrow("Not a hash");
});

// RFC 6266 and RFC 8187, from memory.
test("contentDisposition() names a file for old and new readers, and breaks out of no header", () => {
  expect(contentDisposition("inline", 'Peña "Łódź" (1).pdf')).toBe(
    `inline; filename="Pena __odz_ (1).pdf"; filename*=UTF-8''Pe%C3%B1a%20%22%C5%81%C3%B3d%C5%BA%22%20%281%29.pdf`,
  );
  expect(contentDisposition("attachment", "a\r\nSet-Cookie: x\ud800.pdf")).not.toMatch(/[\r\n]/);
});
