import fs from "node:fs";
import { Readable } from "node:stream";
import { refusedRequest } from "#app/refused-request.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import { readEnv } from "#lib/env.ts";
import { openLinkPaper } from "#lib/operations/open-link.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { isStoredWhole, storedPath } from "#lib/storage/store.ts";
import { doorOf, stopOf, stopWords } from "../door.ts";

/** The letter's PDF, what was signed (`?file=`), or a picture in the letter: the stored bytes. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ token: string }> },
): Promise<Response> {
  const { token } = await params;
  const wanted = new URL(request.url).searchParams.get("file");
  const opened = openLinkPaper(await doorOf(), token, wanted);
  if (!opened.ok) {
    const status = stopOf(opened.error) === "too-many" ? 429 : 404;
    return refusedRequest(status, stopWords(LINK_WORDS.en, opened.error));
  }
  const upload = opened.value;
  const place = storedPath(readEnv().dataFolder, upload.sha256);
  // What was signed is these very bytes: others are not handed out in their place.
  if (!isStoredWhole(readEnv().dataFolder, upload.sha256))
    return refusedRequest(410, LINK_WORDS.en.stops["letter-not-ready"]);
  return new Response(Readable.toWeb(fs.createReadStream(place)) as BodyInit, {
    headers: {
      "Content-Type": upload.type,
      "Content-Length": String(upload.bytes),
      "Content-Disposition": contentDisposition("inline", upload.name),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
      "Referrer-Policy": "no-referrer",
    },
  });
}
