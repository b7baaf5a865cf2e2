import { getOffice } from "#db/queries/office.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { batchOf } from "#lib/domain/mailing/batch.ts";
import type { Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { refuse } from "./change.ts";
import { draftNotices } from "./draft-notices.ts";
import { lineReport } from "./line-report.ts";

interface BatchDrafting {
  readonly lineId: string;
  readonly kind: LetterKind;
  readonly replyBy: string | null;
}

/** Drafts a kind of letter to everyone whom the file proposes for it and who has none of it yet. */
export function draftBatch(
  act: Act,
  { lineId, kind, replyBy }: BatchDrafting,
): Result<{ noticeIds: string[] }, Refusal> {
  const found = lineReport(act.db, lineId, act.today);
  const office = getOffice(act.db);
  if (found === null || office === null) return refuse("not-found", "", "the line");
  const rows = batchOf({ ...found, office }, kind);
  const recipients = rows
    .filter(({ standing }) => standing === "none")
    .map(({ recipient }) => recipient);
  if (recipients.length === 0)
    return refuse("not-in-this-state", "", "Everyone the file proposes has this letter already");
  return draftNotices(act, { lineId, kind, replyBy, recipients });
}
