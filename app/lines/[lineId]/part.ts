import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import type { Report } from "#lib/domain/findings/report.ts";

/** What every part of a page of one line needs. */
export interface LinePart {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly revisions: Record<RowTable, number>;
  readonly mayRecord: boolean;
  readonly mayFile: boolean;
}
