import type { LineFile } from "../facts/line-file.ts";
import type { MeetingWish, MeetingWord } from "../facts/meeting.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import type { Recipient } from "./addressed.ts";
import { recipientsOf } from "./recipients.ts";

/** The letter that answers each wish. */
const WISH_LETTERS: Record<MeetingWish, LetterKind> = {
  findings: "finding",
  "own-figure": "proposed-split",
  "test-here": "test-visit",
  "let-in": "entry-consent",
  "sign-agreement": "joint-agreement",
};

/** Why a letter that was asked for cannot be written yet; the file has nobody for its kind there. */
const NOT_YET: Record<MeetingWish, string> = {
  findings: "they own nothing on the line",
  "own-figure": "no split with a share of theirs is chosen yet",
  "test-here": "no test day has a stop there yet",
  "let-in": "no work on their lot is entered yet",
  "sign-agreement": "they are neither connected nor crossed",
};

/** Letters of one kind that people asked for at a meeting. */
interface AskedLetters {
  readonly kind: LetterKind;
  readonly recipients: readonly Recipient[];
}

export interface MeetingLetters {
  readonly letters: readonly AskedLetters[];
  /** What was asked for and cannot be written yet. */
  readonly waiting: readonly {
    readonly word: MeetingWord;
    readonly wish: MeetingWish;
    readonly because: string;
  }[];
}

/** The latest word of each person at each property. */
export function wordsOfMeeting(
  { meetingWords }: Pick<LineFile, "meetingWords">,
  meetingId: string,
): MeetingWord[] {
  const latest = new Map<string, MeetingWord>();
  for (const word of meetingWords)
    if (word.meetingId === meetingId) latest.set(`${word.partyId} ${word.propertyId}`, word);
  return [...latest.values()];
}

/**
 * The letters that follow from what was marked at a meeting: each kind to those who asked for it and
 * may get it, unless they have one that was drafted on that day or later.
 */
export function lettersOfMeeting(
  file: LineFile,
  report: Report,
  meeting: { readonly id: string; readonly on: string },
): MeetingLetters {
  const asked = wordsOfMeeting(file, meeting.id).flatMap((word) =>
    word.wishes.map(({ wish }) => ({ word, wish })),
  );
  const found = asked.map(({ word, wish }) => ({
    word,
    wish,
    kind: WISH_LETTERS[wish],
    recipients: recipientsOf(file, report, WISH_LETTERS[wish]).filter(
      ({ partyId, propertyId }) => partyId === word.partyId && propertyId === word.propertyId,
    ),
  }));
  const kinds = [...new Set(found.map(({ kind }) => kind))];
  const isWritten = (kind: LetterKind, { partyId, propertyId, tieInId }: Recipient) =>
    file.notices.some(
      (notice) =>
        notice.kind === kind &&
        notice.partyId === partyId &&
        notice.propertyId === propertyId &&
        notice.tieInId === tieInId &&
        notice.createdOn >= meeting.on,
    );
  return {
    letters: kinds
      .map((kind) => ({
        kind,
        recipients: found
          .filter((each) => each.kind === kind)
          .flatMap(({ recipients }) => recipients)
          .filter((recipient) => !isWritten(kind, recipient)),
      }))
      .filter(({ recipients }) => recipients.length > 0),
    waiting: found
      .filter(({ recipients }) => recipients.length === 0)
      .map(({ word, wish }) => ({ word, wish, because: NOT_YET[wish] })),
  };
}
