import fs from "node:fs";
import { Readable } from "node:stream";
import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { listFormVersions } from "#db/queries/form.ts";
import { readEnv } from "#lib/env.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { storedPath } from "#lib/storage/store.ts";

/** The authority's blank form, to be shown in the browser; `?version=` for an earlier one. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ authorityId: string; formId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { authorityId, formId } = await params;
  const asked = new URL(request.url).searchParams.get("version");
  const form = listFormVersions(db(), formId).find(
    ({ version }) => asked === null || String(version) === asked,
  );
  if (form === undefined || form.authorityId !== authorityId)
    return refusedRequest(404, "This authority has no such form.");
  const kept = { ETag: `"${form.sha256}"`, "Cache-Control": "private, no-cache" };
  if (request.headers.get("if-none-match") === kept.ETag)
    return new Response(null, { status: 304, headers: kept });
  const place = storedPath(readEnv().dataFolder, form.sha256);
  if (!fs.existsSync(place))
    return refusedRequest(410, "The form's PDF is gone from the data folder; restore a backup.");
  return new Response(Readable.toWeb(fs.createReadStream(place)) as BodyInit, {
    headers: {
      ...kept,
      "Content-Type": "application/pdf",
      "Content-Length": String(form.bytes),
      "Content-Disposition": contentDisposition("inline", form.fileName),
      "X-Content-Type-Options": "nosniff",
    },
  });
}
