import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Refusal } from "./act.ts";
import { find, refuse } from "./change.ts";

/** The draft with this id; a letter that was sent is frozen. */
export function findDraft(file: LineFile, noticeId: string): Result<Notice, Refusal> {
  const notice = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
  if (!notice.ok) return notice;
  if (notice.value.state !== "draft") return refuse("frozen", "noticeId", "the letter was sent");
  return ok(notice.value);
}
