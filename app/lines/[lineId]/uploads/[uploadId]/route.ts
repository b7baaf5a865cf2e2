import fs from "node:fs";
import { Readable } from "node:stream";
import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { getUpload } from "#db/queries/upload.ts";
import { readEnv } from "#lib/env.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { storedPath } from "#lib/storage/store.ts";

/**
 * A stored file of the line, to be shown in the browser under its own name. The browser may keep it and
 * has to ask each time, so that it shows nothing after signing out.
 */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string; uploadId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId, uploadId } = await params;
  const upload = getUpload(db(), uploadId);
  if (upload === null || upload.lineId !== lineId)
    return refusedRequest(404, "There is no such file on this line.");
  const kept = { ETag: `"${upload.sha256}"`, "Cache-Control": "private, no-cache" };
  if (request.headers.get("if-none-match") === kept.ETag)
    return new Response(null, { status: 304, headers: kept });
  const place = storedPath(readEnv().dataFolder, upload.sha256);
  if (!fs.existsSync(place))
    return refusedRequest(410, "The file's bytes are gone from the data folder; restore a backup.");
  return new Response(Readable.toWeb(fs.createReadStream(place)) as BodyInit, {
    headers: {
      ...kept,
      "Content-Type": upload.type,
      "Content-Length": String(upload.bytes),
      "Content-Disposition": contentDisposition("inline", upload.name),
      "X-Content-Type-Options": "nosniff",
    },
  });
}
