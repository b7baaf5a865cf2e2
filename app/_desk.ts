import "server-only";
import { db } from "#app/_db.ts";
import { today } from "#app/_today.ts";
import { listLines } from "#db/queries/line.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice } from "#db/queries/office.ts";
import { linesWithReplies } from "#db/queries/reply.ts";
import type { QuestionAnswer } from "#lib/domain/desk/answer.ts";
import { answersOn } from "#lib/domain/desk/answers.ts";
import { type DeskLine, deskLine, inDeskOrder } from "#lib/domain/desk/desk-line.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";

export interface DeskEntry extends DeskLine {
  readonly town: string;
  readonly closedOn: string | null;
  /** The questions that are still open, the most pressing first. */
  readonly open: readonly QuestionAnswer[];
}

/**
 * The office's lines with what presses on each, the most pressing first: those that are open or on
 * which a reply waits, or all of them.
 */
export function deskEntries(which: "waiting" | "all"): DeskEntry[] {
  const day = today();
  const office = getOffice(db()) ?? undefined;
  const replied = new Set(linesWithReplies(db()));
  const wanted = listLines(db()).filter(
    ({ id, closedOn }) => which === "all" || closedOn === null || replied.has(id),
  );
  const entries = wanted.flatMap((line) => {
    const file = getLineFile(db(), line.id);
    if (file === null) return [];
    const report = reportOn(file, day);
    const open = answersOn(file, report, office)
      .filter((answer) => answer.pressing > 0)
      .toSorted((one, other) => other.pressing - one.pressing);
    const { town, closedOn } = file.line;
    return [{ ...deskLine(file, report, office), town, closedOn, open }];
  });
  const order = inDeskOrder(entries).map((entry) => entry.lineId);
  return entries.toSorted((one, other) => order.indexOf(one.lineId) - order.indexOf(other.lineId));
}

/** How many lines are open, and how many closed. */
export function lineCounts(): { readonly open: number; readonly closed: number } {
  const lines = listLines(db());
  const open = lines.filter(({ closedOn }) => closedOn === null).length;
  return { open, closed: lines.length - open };
}
