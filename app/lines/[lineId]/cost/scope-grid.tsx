import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { LineGrid } from "../line-grid.tsx";
import { SCOPE_BLANK, scopeColumns } from "./scope-columns.ts";

/** Every priced piece of work, for typing and pasting. */
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
      rows={file.scope.map((item) => ({ ...item }))}
      columns={scopeColumns(file, report)}
      blank={SCOPE_BLANK}
      addWord="item"
      label="Priced work"
      emptyWords="Nothing is priced yet. Type the first item, or paste rows from your estimate."
    />
  );
}
