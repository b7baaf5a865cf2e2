import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Delivery } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { isDeclarable } from "#lib/domain/paper/declaration.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface Filing {
  readonly lineId: string;
  readonly deliveryIds: readonly string[];
  /** The declaration, signed on paper and scanned. */
  readonly uploadId: string;
}

/**
 * Keeps a signed declaration with the deliveries that it is about: all of them or none. Refuses those
 * of several people, since each signs for what they did, an email that was not sent, and a delivery
 * that has its declaration already.
 */
export function fileDeclaration(act: Act, filing: Filing): Result<null, Refusal> {
  const { lineId, uploadId } = filing;
  const deal = {
    lineId,
    deed: "work-the-file",
    action: "file-declaration",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file) => {
    const upload = find(file.uploads, uploadId, { path: "uploadId", what: "the stored file" });
    if (!upload.ok) return upload;
    const found = declared(file, filing.deliveryIds);
    if (!found.ok) return found;
    const letters = found.value.map(({ noticeId }) => nameRow(file, "notices", noticeId));
    const rows = found.value.map((delivery) => ({ ...delivery, declaredUploadId: uploadId }));
    return ok({
      value: null,
      sentence: `Filed the declaration signed by ${found.value[0]?.by ?? ""} on ${letters.join(", ")}.`,
      detail: { uploadId, sha256: upload.value.sha256, deliveryIds: rows.map(({ id }) => id) },
      write: (db) => {
        for (const row of rows) updateRow(db, "deliveries", { lineId, row });
      },
    });
  });
}

function declared(file: LineFile, ids: readonly string[]): Result<Delivery[], Refusal> {
  const rows: Delivery[] = [];
  for (const id of new Set(ids)) {
    const row = find(file.deliveries, id, { path: "declared", what: "the delivery" });
    if (!row.ok) return row;
    const letter = nameRow(file, "notices", row.value.noticeId);
    if (!isDeclarable(row.value))
      return refuse("not-in-this-state", "declared", `The ${letter} was not sent`);
    if (row.value.declaredUploadId !== null)
      return refuse("not-in-this-state", "declared", `The ${letter} has its declaration already`);
    rows.push(row.value);
  }
  const signers = [...new Set(rows.map(({ by }) => by))];
  if (rows.length === 0)
    return refuse("missing-value", "declared", "Select the deliveries that it is about");
  if (signers.length > 1)
    return refuse(
      "bad-value",
      "declared",
      `Each person signs for their own deliveries; select those of one: ${signers.join(" or ")}`,
    );
  return ok(rows);
}
