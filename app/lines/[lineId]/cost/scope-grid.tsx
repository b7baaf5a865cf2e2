import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { LineGrid } from "../line-grid.tsx";
import { SCOPE_BLANK, scopeColumns } from "./scope-columns.ts";

/** Every priced work item, for typing and pasting. */
export function ScopeGrid({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  return (
    <LineGrid
      lineId={lineId}
      table="scope"
      columns={scopeColumns(file, report)}
      blank={SCOPE_BLANK}
      addWord="item"
      label="Priced work"
      emptyWords="No work items yet. Enter the first one or paste rows from your estimate."
    />
  );
}
