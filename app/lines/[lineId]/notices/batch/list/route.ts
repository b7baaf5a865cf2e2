import { db } from "#app/db.ts";
import { refusedRequest, signedOut } from "#app/refused-request.ts";
import { getUser } from "#app/session.ts";
import { today } from "#app/today.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { LETTER_KINDS } from "#lib/domain/facts/notice.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import { mailingListCsv, mailingListXlsx } from "#lib/exchange/mailing-list.ts";
import { contentDisposition } from "#lib/storage/content-disposition.ts";

const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** The mailing list of one kind of letter, as CSV or, with `as=xlsx`, for a spreadsheet. */
export async function GET(
  request: Request,
  { params }: { params: Promise<{ lineId: string }> },
): Promise<Response> {
  if ((await getUser()) === null) return signedOut();
  const { lineId } = await params;
  const file = getLineFile(db(), lineId);
  if (file === null) return refusedRequest(404, "There is no such line.");
  const asked = new URL(request.url).searchParams;
  const kind = LETTER_KINDS.find((each) => each === asked.get("kind"));
  if (kind === undefined) return refusedRequest(400, "Choose a letter first.");
  const notices = file.notices.filter((notice) => notice.kind === kind);
  const isXlsx = asked.get("as") === "xlsx";
  const bytes = isXlsx ? await mailingListXlsx(file, notices) : mailingListCsv(file, notices);
  const name = `Mailing list ${LETTER_SAID[kind]} ${today()} ${file.line.name}`;
  return new Response(bytes as BodyInit, {
    headers: {
      "Content-Type": isXlsx ? XLSX : "text/csv; charset=utf-8",
      "Content-Disposition": contentDisposition("attachment", `${name}.${isXlsx ? "xlsx" : "csv"}`),
      "X-Content-Type-Options": "nosniff",
      "Cache-Control": "no-store",
    },
  });
}
