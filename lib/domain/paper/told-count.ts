import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { arrivalOf } from "../notices/arrival.ts";
import { cellOf } from "../notices/told.ts";
import { recipientsOf } from "./recipients.ts";

/** How far one kind of letter has got, recipient by recipient. */
export interface ToldCount {
  /** Everybody whom it is due to as the file stands, once for each property and tie-in. */
  readonly of: number;
  readonly written: number;
  /** Something shows that they have it. */
  readonly reached: number;
  readonly answered: number;
  /** Those to whom none went yet. */
  readonly missing: readonly { readonly partyId: string; readonly propertyId: string | null }[];
}

/** Counts who was told, reached and answered of those to whom a kind of letter is due. */
export function toldCount(file: LineFile, report: Report, kind: LetterKind): ToldCount {
  const rows = recipientsOf(file, report, kind).map(({ partyId, propertyId, tieInId, paperId }) => {
    const letters = file.notices.filter(
      (notice) =>
        notice.kind === kind &&
        notice.state === "sent" &&
        notice.partyId === partyId &&
        notice.propertyId === propertyId &&
        (tieInId === null || notice.tieInId === tieInId) &&
        (paperId === undefined || notice.paperId === paperId),
    );
    return { partyId, propertyId, letters };
  });
  const count = (is: (row: (typeof rows)[number]) => boolean) => rows.filter(is).length;
  return {
    of: rows.length,
    written: count(({ letters }) => letters.length > 0),
    reached: count(({ letters }) => letters.some((one) => arrivalOf(file, one).on !== null)),
    answered: count(({ letters }) =>
      letters.some((one) => ["waits", "in"].includes(cellOf(file, one).answer)),
    ),
    missing: rows.flatMap(({ partyId, propertyId, letters }) =>
      letters.length === 0 ? [{ partyId, propertyId }] : [],
    ),
  };
}
