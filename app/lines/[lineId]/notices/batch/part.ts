import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import type { BatchRow } from "#lib/domain/mailing/batch.ts";

/** What every part of a batch's page knows. */
export interface BatchPart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly kind: LetterKind;
  readonly rows: readonly BatchRow[];
}
