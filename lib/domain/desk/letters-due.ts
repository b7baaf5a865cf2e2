import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import type { Recipient } from "../paper/addressed.ts";
import { LETTER_PLANS } from "../paper/kinds/index.ts";
import { recipientsOf } from "../paper/recipients.ts";
import type { Day } from "../time/day.ts";

/** A kind of letter that the file calls for now. */
export interface LetterDue {
  readonly kind: LetterKind;
  /** What on file calls for it. */
  readonly because: string;
  /** Those whom it is due to and who have none yet, not even a draft. */
  readonly recipients: readonly Recipient[];
}

const IN_ORDER = Object.keys(LETTER_PLANS) as readonly LetterKind[];

/**
 * The letters that the file calls for now and that some of their recipients have not, the most
 * pressing first: what endangers people or has a day, then the order of the job. Nothing on a closed
 * file.
 */
export function lettersDue(file: LineFile, report: Report): LetterDue[] {
  if (file.line.closedOn !== null) return [];
  return IN_ORDER.flatMap((kind) => {
    const cause = LETTER_PLANS[kind].due?.(file, report) ?? null;
    if (cause === null) return [];
    const { because, since = "" } = cause;
    const recipients = recipientsOf(file, report, kind).filter(
      (recipient) => !hasLetter(file, { kind, recipient, since }),
    );
    return recipients.length === 0 ? [] : [{ kind, because, recipients }];
  });
}

/** Whether there is one of this kind, sent or drafted since a day; an amount wants its own version. */
function hasLetter(
  file: LineFile,
  { kind, recipient, since }: { kind: LetterKind; recipient: Recipient; since: Day },
): boolean {
  return file.notices.some(
    (notice) =>
      notice.kind === kind &&
      notice.partyId === recipient.partyId &&
      notice.propertyId === recipient.propertyId &&
      notice.tieInId === recipient.tieInId &&
      notice.paperId === (recipient.paperId ?? "") &&
      (LETTER_PLANS[kind].about !== "split" || notice.splitId === recipient.splitId) &&
      notice.createdOn >= since,
  );
}
