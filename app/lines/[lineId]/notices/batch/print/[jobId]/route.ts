import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { getJob } from "#db/queries/job.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { readEnv } from "#lib/env.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";
import { readMailing } from "#lib/storage/mailings.ts";

/** A mailing's PDF, for those who may send letters: the codes on it open private pages. Kept nowhere. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ lineId: string; jobId: string }> },
): Promise<Response> {
  const user = await getUser();
  if (user === null) return signedOut();
  if (!mayDo(user.role, "work-the-file"))
    return refusedRequest(403, "Only the office prints letters.");
  const { lineId, jobId } = await params;
  const job = getJob(db(), jobId);
  if (job === null || job.lineId !== lineId || job.kind !== "mailing")
    return refusedRequest(404, "There is no such print on this line.");
  const bytes = readMailing(readEnv().dataFolder, jobId);
  if (bytes === null)
    return refusedRequest(410, "This print was removed. Print the letters again.");
  return new Response(bytes as BodyInit, {
    headers: {
      "Content-Type": "application/pdf",
      "Content-Disposition": contentDisposition("inline", "Mailing.pdf"),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
