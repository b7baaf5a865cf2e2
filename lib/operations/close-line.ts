import { updateLine } from "#db/queries/line.ts";
import { formatDate } from "#lib/domain/calendar/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/** Closes the file on a line, with the reason; it stays readable and can be opened again. */
export function closeLine(
  act: Act,
  { lineId, reason }: { readonly lineId: string; readonly reason: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "close-line", evenClosed: true } as const;
  return changeLine(act, deal, ({ line }) => {
    if (line.closedOn !== null)
      return refuse("not-in-this-state", "", `The file was closed on ${formatDate(line.closedOn)}`);
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why it is closed");
    return ok({
      value: null,
      sentence: `Closed the file: ${reason.trim()}`,
      detail: { closedOn: act.today, reason },
      write: (db) => updateLine(db, { ...line, closedOn: act.today }),
    });
  });
}

/** Opens a closed file again. */
export function reopenLine(
  act: Act,
  { lineId, reason }: { readonly lineId: string; readonly reason: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "reopen-line", evenClosed: true } as const;
  return changeLine(act, deal, ({ line }) => {
    if (line.closedOn === null) return refuse("not-in-this-state", "", "The file is open");
    if (reason.trim() === "")
      return refuse("missing-value", "reason", "Say why it is opened again");
    return ok({
      value: null,
      sentence: `Opened the file again: ${reason.trim()}`,
      detail: { reason, closedOn: line.closedOn },
      write: (db) => updateLine(db, { ...line, closedOn: null }),
    });
  });
}
