import { updateRow } from "#db/queries/row.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { LetterLanguages } from "#lib/domain/party/letter-languages.ts";
import { isOnlyCopied } from "#lib/domain/party/only-copied.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { findDraft } from "./draft.ts";
import { changedSince, seenOf } from "./seen.ts";

interface NoticeWords {
  readonly lineId: string;
  readonly noticeId: string;
  readonly ownWords: string;
  readonly replyBy: string | null;
  /** The first language and the one behind it; not given: as they are. */
  readonly languages?: LetterLanguages;
  /** `seenOf(wordsOf(draft))` as the form was filled in; not given: whatever stands there now. */
  readonly seen?: string;
}

/** What the form of a draft is filled in from. */
export function wordsOf({ ownWords, replyBy, language, alsoIn }: Words) {
  return { ownWords, replyBy, language, alsoIn };
}

type Words = Pick<Notice, "ownWords" | "replyBy" | "language" | "alsoIn">;

const MOST_WORDS = 20_000;

/**
 * Saves the office's own words on a draft, the day by which an answer is asked, and its languages. Refuses where
 * somebody saved other words since the form was filled in.
 */
export function saveNoticeWords(
  act: Act,
  { lineId, noticeId, ownWords, replyBy, languages, seen }: NoticeWords,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "save-notice-words" } as const;
  return changeLine(act, deal, (file) => {
    const draft = findDraft(file, noticeId);
    if (!draft.ok) return draft;
    if (ownWords.length > MOST_WORDS)
      return refuse("bad-value", "ownWords", `Enter at most ${MOST_WORDS} characters`);
    if (replyBy !== null && isOnlyCopied(file, draft.value))
      return refuse("bad-value", "replyBy", "A copy asks for no reply; leave the date blank");
    if (replyBy !== null && !isDay(replyBy))
      return refuse("bad-value", "replyBy", "Enter a date as 11/25/2026");
    const { value } = draft;
    const last = file.history.findLast(
      ({ action, detail }) => action === "save-notice-words" && detail.includes(`"${noticeId}"`),
    );
    const changed = changedSince(seen, { now: wordsOf(value), last });
    if (changed !== null) return changed;
    const before = wordsOf(value);
    const after = { ...before, ownWords, replyBy, ...languages };
    const same = seenOf(before) === seenOf(after);
    return ok({
      value: null,
      sentence: same ? null : `Changed the draft ${nameRow(file, "notices", noticeId)}.`,
      detail: {
        noticeId,
        before,
        after,
      },
      write: (db) => void updateRow(db, "notices", { lineId, row: { ...value, ...after } }),
    });
  });
}
