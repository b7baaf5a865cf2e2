import { Readable } from "node:stream";
import type { ReadableStream } from "node:stream/web";
import { readEnv } from "#lib/env.ts";
import { storeFile } from "#lib/storage/store.ts";

/** Stores the body of a request as it comes, up to a limit in bytes; null: it has none. */
export async function storedBody({ body, headers }: Request, limit: number) {
  if (body === null) return null;
  const length = headers.get("content-length");
  const declared = length !== null && /^\d+$/.test(length) ? Number(length) : null;
  const stream = Readable.fromWeb(body as ReadableStream);
  return await storeFile(readEnv().dataFolder, stream, { declared, limit });
}
