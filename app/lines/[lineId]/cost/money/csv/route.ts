import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { ledgerCsv } from "#lib/exchange/ledger-csv.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";

/** The line's ledger as a CSV file for the bookkeeper. */
export async function GET(
  _request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const file = getLineFile(db(), lineId);
  if (file === null) return refusedRequest(404, "There is no such line.");
  return new Response(ledgerCsv(file), {
    headers: {
      "Content-Type": "text/csv; charset=utf-8",
      "Content-Disposition": contentDisposition(
        "attachment",
        `Ledger ${today()} ${file.line.name}.csv`,
      ),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
