import { type FileHandle, open } from "node:fs/promises";
import type { ByteRange } from "./byte-range.ts";

const PIECE = 256 * 1024;

/**
 * Bytes of a file as a stream that reads only as fast as it is read, one piece at a time, and closes
 * the file when the reader goes away.
 */
export function streamStored(file: string, { from, to }: ByteRange): ReadableStream<Uint8Array> {
  let at = from;
  let handle: FileHandle | null = null;
  let gone = false;
  const close = async () => {
    const open = handle;
    handle = null;
    await open?.close();
  };
  return new ReadableStream<Uint8Array>({
    async pull(controller) {
      handle ??= await open(file, "r");
      if (gone) return await close();
      const wanted = Math.min(PIECE, to - at + 1);
      const { buffer, bytesRead } = await handle.read(Buffer.allocUnsafe(wanted), 0, wanted, at);
      at += bytesRead;
      if (gone) return await close();
      if (bytesRead > 0) controller.enqueue(buffer.subarray(0, bytesRead));
      if (at <= to && bytesRead > 0) return;
      await close();
      if (at > to) controller.close();
      else controller.error(new Error(`The file ended at byte ${at}`));
    },
    async cancel() {
      gone = true;
      await close();
    },
  });
}
