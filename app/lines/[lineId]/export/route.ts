import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { getLine } from "#db/queries/line.ts";
import { readEnv } from "#lib/env.ts";
import { exportLine } from "#lib/operations/export-line.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";

/** The whole file on the line as a line file, to be kept or brought in elsewhere. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const text = exportLine({ db: db(), dataFolder: readEnv().dataFolder }, lineId);
  if (text === null) return refusedRequest(404, "There is no such line.");
  const name = getLine(db(), lineId)?.name ?? "line";
  return new Response(text, {
    headers: {
      "Content-Type": "application/json; charset=utf-8",
      "Content-Disposition": contentDisposition("attachment", `${name}.json`),
      "Cache-Control": "no-store",
    },
  });
}
