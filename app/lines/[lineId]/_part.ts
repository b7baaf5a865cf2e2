import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { Report } from "#lib/domain/file/report.ts";
import type { RowTable } from "#lib/domain/file/row-table.ts";

/** What every part of a page of one line needs. */
export interface LinePart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly revisions: Record<RowTable, number>;
  readonly mayRecord: boolean;
  readonly mayFile: boolean;
}
