import fs from "node:fs";

/** A real WebM of 24 s, 320 × 240, with the counter burnt in: 10.0 ft at its start, a foot a second. */
export function aRecording(): Buffer {
  return fs.readFileSync(new URL("./run.webm", import.meta.url));
}

export async function* chunksOf(bytes: Uint8Array, size = 10_000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.byteLength; at += size) yield bytes.subarray(at, at + size);
}
