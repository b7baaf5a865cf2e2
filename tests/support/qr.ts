import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import jsQR from "jsqr";
import sharp from "sharp";

/** A page of a PDF as a phone's camera sees it: drawn by poppler, at so many dots an inch. */
async function pictureOf(bytes: Uint8Array, page: number, dpi: number) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-qr-"));
  const file = path.join(folder, "document.pdf");
  fs.writeFileSync(file, bytes);
  const out = path.join(folder, "page");
  const one = ["-f", String(page), "-l", String(page), "-singlefile"];
  execFileSync("pdftoppm", ["-png", "-r", String(dpi), ...one, file, out]);
  const image = sharp(`${out}.png`).ensureAlpha().raw();
  const { data, info } = await image.toBuffer({ resolveWithObject: true });
  return { pixels: new Uint8ClampedArray(data), width: info.width, height: info.height };
}

/** What the QR code on a page says, read by a reader that is not ours; null where there is none. */
export async function readQr(bytes: Uint8Array, page = 1, dpi = 200): Promise<string | null> {
  const { pixels, width, height } = await pictureOf(bytes, page, dpi);
  return jsQR(pixels, width, height)?.data ?? null;
}
