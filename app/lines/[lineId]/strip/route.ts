import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { STRIP_TOPICS } from "#lib/domain/strip/drawing.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { stripAnswer } from "../strips.ts";

/** The whole strip of a long line, or what it says of one thing: sent when somebody looks closer. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const asked = new URL(request.url).searchParams;
  const topic = STRIP_TOPICS.find((each) => each === asked.get("topic"));
  if (topic === undefined) return refusedRequest(400, "There is no such drawing.");
  const found = lineReport(db(), lineId, today());
  if (found === null) return refusedRequest(404, "There is no such line.");
  const answer = stripAnswer(found.file, found.report, { topic, one: asked.get("one") });
  return Response.json(answer, {
    headers: { "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff" },
  });
}
