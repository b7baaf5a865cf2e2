import { type PackedRows, packRows } from "#app/_components/sent-rows.ts";
import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { isRowTable, type RowTable } from "#lib/domain/facts/row-table.ts";
import { personRows } from "#lib/domain/party/people.ts";
import { readFile } from "#lib/operations/line-report.ts";
import { peopleRevision } from "#lib/operations/save-people.ts";

/** All rows of one long table, of which its page carries only the first. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const of = new URL(request.url).searchParams.get("of");
  const read = readFile(db(), lineId);
  if (read === null) return refusedRequest(404, "There is no such line.");
  const pack = packed(of, read.file, read.revisions);
  if (pack === null) return refusedRequest(400, "There is no such table.");
  return Response.json(pack, {
    headers: { "Cache-Control": "no-store", "X-Content-Type-Options": "nosniff" },
  });
}

function packed(
  of: string | null,
  file: LineFile,
  revisions: Record<RowTable, number>,
): PackedRows | null {
  if (of === "people") return packRows(peopleRevision(revisions), personRows(file));
  return isRowTable(of) ? packRows(revisions[of], file[of]) : null;
}
