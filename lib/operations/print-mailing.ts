import { insertJob } from "#db/queries/job.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { sayCount } from "#lib/domain/say/count.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { wrongDays } from "./link-rows.ts";
import { type CodeWish, putCode } from "./printed-codes.ts";
import { deadLinks } from "./send-notices.ts";
import { waitingJob } from "./waiting-job.ts";

interface Printing {
  readonly lineId: string;
  readonly noticeIds: readonly string[];
  /** Private pages: each letter gets a new code, and the one that it had stops working. */
  readonly codes?: CodeWish;
}

/**
 * Has letters that were sent printed once more, in mailing order. No code is kept, so what is printed
 * again gets a new one; the code on the paper that is out stops working. Refuses drafts.
 */
export function printMailing(act: Act, printing: Printing): Result<{ jobId: string }, Refusal> {
  const { lineId, noticeIds, codes } = printing;
  const deal = { lineId, deed: "work-the-file", action: "print-mailing" } as const;
  return changeLine(act, deal, (file) => {
    if (noticeIds.length === 0) return refuse("missing-value", "noticeIds", "Choose a letter");
    const wrong = codes === undefined ? null : (wrongDays(codes.days) ?? deadLinks(codes.address));
    if (wrong !== null) return wrong;
    const found = sentOf(file, noticeIds);
    if (!found.ok) return found;
    const notices = found.value;
    const job = waitingJob(act, { lineId, kind: "mailing", subjectIds: noticeIds });
    const again = codes === undefined ? "without codes" : "with new codes";
    return ok({
      value: { jobId: job.id },
      sentence: `Requested a print of ${sayCount(notices.length, "letter")} ${again}.`,
      detail: { jobId: job.id, noticeIds },
      write: (db) => {
        if (codes !== undefined)
          for (const notice of notices) putCode(db, act, { lineId, notice, wish: codes });
        insertJob(db, job);
      },
    });
  });
}

function sentOf(file: LineFile, noticeIds: readonly string[]): Result<Notice[], Refusal> {
  const notices: Notice[] = [];
  for (const id of noticeIds) {
    const found = find(file.notices, id, { path: "noticeIds", what: "the letter" });
    if (!found.ok) return found;
    if (found.value.state === "draft")
      return refuse(
        "not-in-this-state",
        "noticeIds",
        `The ${nameRow(file, "notices", id)} is a draft; record it as sent first`,
      );
    notices.push(found.value);
  }
  return ok(notices);
}
