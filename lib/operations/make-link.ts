import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { askForPaper, newLink, putLink, wrongDays } from "./link-rows.ts";

interface LinkOrder {
  readonly lineId: string;
  readonly noticeId: string;
  /** Days that it is good for. */
  readonly days: number;
  /** 32 random bytes as base64url; shown to who asked, once, and never stored. */
  readonly secret: string;
}

/**
 * Makes a private link for the reader of a letter that was sent. One that they had is called back:
 * a letter has at most one good link.
 */
export function makeLink(
  act: Act,
  { lineId, noticeId, days, secret }: LinkOrder,
): Result<{ linkId: string; expiresAt: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "make-link" } as const;
  return changeLine(act, deal, (file) => {
    const found = find(file.notices, noticeId, { path: "noticeId", what: "the letter" });
    if (!found.ok) return found;
    const notice = found.value;
    if (notice.state === "draft")
      return refuse("not-in-this-state", "noticeId", "The letter is a draft; send it first");
    const wrong = wrongDays(days);
    if (wrong !== null) return wrong;
    const link = newLink(act, { lineId, notice, days, secret });
    return ok({
      value: { linkId: link.id, expiresAt: link.expiresAt },
      sentence: `Made a private link to the ${nameRow(file, "notices", noticeId)}, good for ${days} days.`,
      detail: { linkId: link.id, expiresAt: link.expiresAt },
      write: (db) => {
        putLink(db, act, link);
        askForPaper(db, act, { lineId, notice });
      },
    });
  });
}
