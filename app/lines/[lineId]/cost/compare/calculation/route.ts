import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { lineReport } from "#lib/operations/line-report.ts";
import { calculationOf } from "../../calculation.ts";
import { particularsOf, unknownSharesOf } from "../../particulars.ts";

/** How one amount of the comparison is calculated: sent when a person opens it, never before. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const asked = Object.fromEntries(new URL(request.url).searchParams);
  const rule = SPLIT_RULES.find((each) => each === asked["rule"]);
  if (rule === undefined) return refusedRequest(400, "There is no such rule.");
  const found = lineReport(db(), lineId, today());
  if (found === null) return refusedRequest(404, "There is no such line.");
  const { file, report } = found;
  const outcome = splitOutcome(file, report, {
    rule,
    ...particularsOf(file, report, asked),
    unknownShares: unknownSharesOf(file, asked),
  });
  return Response.json(calculationOf(outcome, asked["of"] ?? ""), {
    headers: { "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff" },
  });
}
