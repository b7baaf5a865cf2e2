import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { correctionName, isResubmitted } from "#lib/domain/permit/corrections.ts";
import type { Day } from "#lib/domain/time/day.ts";

interface Save {
  readonly table: RowTable;
  readonly before: LineFile;
  readonly after: LineFile;
}

/** What went to the authority with a comment; only the day of its acceptance comes later. */
const WENT_OUT = [
  "stepId",
  "number",
  "sheet",
  "comment",
  "answeredBy",
  "answer",
  "changedPages",
  "notChanged",
] as const;

const STAYS =
  "This went to the authority with its answer and stays as it went; what is asked again goes into the next round";

/**
 * Cells that would change what was resubmitted, add to a round that has gone back, or accept a comment
 * on a day to come.
 */
export function correctionCells(
  { table, before, after }: Save,
  today: Day,
): { row: number; column: string; message: string }[] {
  if (table !== "corrections") return [];
  const old = new Map(before.corrections.map((each) => [each.id, each]));
  return after.corrections.flatMap((correction, row) => {
    const was = old.get(correction.id);
    const cells =
      correction.acceptedOn !== null && correction.acceptedOn > today
        ? [{ row, column: "acceptedOn", message: "This date is in the future" }]
        : [];
    const gone = was !== undefined && isResubmitted(before, was.stepId);
    if (gone)
      return [
        ...cells,
        ...WENT_OUT.filter((field) => was[field] !== correction[field]).map((column) => ({
          row,
          column,
          message: STAYS,
        })),
      ];
    return isResubmitted(before, correction.stepId)
      ? [
          ...cells,
          {
            row,
            column: "stepId",
            message: "This round went back to the authority already; enter it in the next one",
          },
        ]
      : cells;
  });
}

/** Why a comment may not be taken out, in words; null where it may. */
export function correctionRemoval({ table, before, after }: Save): string | null {
  if (table !== "corrections") return null;
  const left = new Set(after.corrections.map(({ id }) => id));
  const gone = before.corrections.find(
    ({ id, stepId }) => !left.has(id) && isResubmitted(before, stepId),
  );
  return gone === undefined
    ? null
    : `Comment ${correctionName(gone)} went to the authority with its answer and stays in the file. Put the row back`;
}
