import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { readEnv } from "#lib/env.ts";
import { exportAuthority } from "#lib/operations/import-authority.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";

/** The authority as a file that another office can import, its forms' PDFs included. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ authorityId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const place = { db: db(), dataFolder: readEnv().dataFolder };
  const made = exportAuthority(place, (await params).authorityId);
  if (!made.ok) return refusedRequest(404, `Not found: ${made.error.detail}.`);
  return new Response(made.value.text, {
    headers: {
      "Content-Type": "application/json",
      "Content-Disposition": contentDisposition("attachment", `${made.value.name}.json`),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
