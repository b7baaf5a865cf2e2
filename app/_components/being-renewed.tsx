import type { SummedLine } from "#db/queries/summary.ts";

/** Says that some lines still say what they said before they, or the day, changed. */
export function BeingRenewed({ old }: { readonly old: number }) {
  if (old === 0) return null;
  const lines = old === 1 ? "1 line is" : `${old.toLocaleString("en-US")} lines are`;
  return (
    <p className="muted" role="status">
      {lines} being updated; what is shown here may be out of date. Reload the page in a moment.
    </p>
  );
}

/** Beside one of them. */
export function Old({ line }: { readonly line: Pick<SummedLine, "old"> }) {
  return line.old ? <p className="small muted">Being updated</p> : null;
}
