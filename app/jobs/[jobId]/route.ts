import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { getJob } from "#db/queries/job.ts";

/** How a job stands, for a page that waits for it. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ jobId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const job = getJob(db(), (await params).jobId);
  if (job === null) return refusedRequest(404, "There is no such job.");
  const { state, uploadId, problem: message } = job;
  return Response.json({ state, uploadId, message }, { headers: { "Cache-Control": "no-store" } });
}
