import { sentDayOf } from "../calendar/happenings.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind, Notice } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { replyByFor } from "../notices/reply-by.ts";
import { chaseList } from "../notices/told.ts";
import type { Language } from "../say/language.ts";
import { latestSplit } from "../split/latest-split.ts";
import type { Day } from "../time/day.ts";
import { addDays, daysBetween } from "../time/days.ts";
import { LETTER_WORDS } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import { recipientsOf } from "./recipients.ts";

/** A second letter of the same kind to someone whose reply is past due. */
export interface Reminder {
  /** The letter that was not answered. */
  readonly noticeId: string;
  readonly kind: LetterKind;
  readonly partyId: string;
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly splitId: string | null;
  /** By when it asks for an answer. */
  readonly replyBy: Day;
  /** Stands above the letter, in its reader's language. */
  readonly note: string;
}

/**
 * A reminder for each letter whose reply is past due and of which nothing came back: the same kind of
 * letter as the file stands today, with a note above it that names the first one's days. None for
 * who replied, for a letter that came back, for one that is drafted anew already, for an amount that
 * is asked of them no longer, and for an inquiry or a demand that is not due to them any more.
 * The new day comes from the authority's clock on such letters; where it has none, the reader gets
 * as many days again as the first letter gave.
 */
export function remindersDue(file: LineFile, report: Report): Reminder[] {
  return chaseList(file, report.today)
    .filter(({ reason }) => reason === "reply-late")
    .flatMap(({ noticeId }) => {
      const notice = file.notices.find(({ id }) => id === noticeId);
      const reminder = notice === undefined ? null : reminderOf(file, report, notice);
      return reminder === null ? [] : [reminder];
    });
}

function reminderOf(file: LineFile, report: Report, notice: Notice): Reminder | null {
  const { kind, partyId, propertyId, tieInId, replyBy, language } = notice;
  const sentOn = sentDayOf(file, notice);
  if (replyBy === null || sentOn === null || isDrafted(file, notice)) return null;
  const splitId = splitFor(file, report, notice);
  if (splitId === undefined) return null;
  return {
    ...{ noticeId: notice.id, kind, partyId, propertyId, tieInId, splitId },
    replyBy: nextDay(file, report.today, { kind, sentOn, replyBy }),
    note: NOTES[language](LETTER_WORDS[language].day(sentOn), LETTER_WORDS[language].day(replyBy)),
  };
}

function isDrafted(
  file: LineFile,
  { kind, partyId, propertyId, tieInId, paperId }: Notice,
): boolean {
  return file.notices.some(
    (each) =>
      each.state === "draft" &&
      each.kind === kind &&
      each.partyId === partyId &&
      each.propertyId === propertyId &&
      each.tieInId === tieInId &&
      each.paperId === paperId,
  );
}

/** The version that the reminder is on; undefined where the letter is not due to them any more. */
function splitFor(file: LineFile, report: Report, notice: Notice): string | null | undefined {
  const due = recipientsOf(file, report, notice.kind).find(
    ({ partyId, propertyId, tieInId }) =>
      partyId === notice.partyId && propertyId === notice.propertyId && tieInId === notice.tieInId,
  );
  if (due !== undefined) return due.splitId;
  if (LETTER_PLANS[notice.kind].named !== undefined) return undefined;
  const isNewest = notice.splitId === null || notice.splitId === latestSplit(file)?.id;
  return isNewest ? notice.splitId : undefined;
}

function nextDay(
  file: LineFile,
  today: Day,
  { kind, sentOn, replyBy }: { kind: LetterKind; sentOn: Day; replyBy: Day },
): Day {
  const byRule = replyByFor(file, kind, today);
  return byRule?.on ?? addDays(today, Math.max(1, daysBetween(sentOn, replyBy)));
}

const NOTES: Record<Language, (sentOn: string, replyBy: string) => string> = {
  en: (sentOn, replyBy) =>
    `Second notice. We wrote to you on ${sentOn} and asked for a reply by ${replyBy}. We have no reply from you on file. If you have already replied, thank you; please call us so that we can find it.`,
  es: (sentOn, replyBy) =>
    `Segundo aviso. Le escribimos el ${sentOn} y le pedimos que respondiera a más tardar el ${replyBy}. No tenemos ninguna respuesta suya en el expediente. Si ya respondió, gracias; llámenos para que podamos encontrarla.`,
};
