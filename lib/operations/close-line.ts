import { updateLine } from "#db/queries/line.ts";
import { insertRow } from "#db/queries/row.ts";
import { CLOSING_WORDS, type ClosingWord, closingOf } from "#lib/domain/closing/closing.ts";
import type { BuiltWork } from "#lib/domain/facts/built.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { heldWords } from "#lib/domain/stops/stopped-by.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface ClosingOrder {
  readonly lineId: string;
  readonly reason: string;
  /** A named person’s word where the file itself does not show that something is done. */
  readonly words?: Partial<Readonly<Record<ClosingWord, string>>>;
}

/**
 * Closes the file on a line, with the reason; it stays readable and can be opened again. Refuses while
 * a permit is not final, what was built is not recorded or money is open, unless a word says why; and
 * while a hold stands against what was done.
 */
export function closeLine(
  act: Act,
  { lineId, reason, words = {} }: ClosingOrder,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "close-line", evenClosed: true } as const;
  return changeLine(act, deal, (file) => {
    const { line } = file;
    if (line.closedOn !== null)
      return refuse("not-in-this-state", "", `The file was closed on ${formatDate(line.closedOn)}`);
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why it is closed");
    const { gaps, holds, deeds } = closingOf(file, reportOn(file, act.today));
    const open = CLOSING_WORDS.filter((each) => gaps[each] !== null);
    const [unsaid] = open.filter((each) => (words[each] ?? "").trim() === "");
    if (unsaid !== undefined)
      return refuse("missing-value", unsaid, `${gaps[unsaid]} ${ASKS[unsaid]}`);
    if (holds.length > 0) return refuse("held", "", heldWords(holds, deeds));
    const said = open.map((each) => `${gaps[each]} ${words[each]?.trim()}`);
    const built = gaps.built === null ? null : builtBy(act, words.built?.trim() ?? "");
    return ok({
      value: null,
      sentence: [`Closed the file: ${reason.trim()}`, ...said].join(" — "),
      detail: { closedOn: act.today, reason, words, built },
      write: (db) => {
        if (built !== null) insertRow(db, "built", { lineId, row: built });
        updateLine(db, { ...line, closedOn: act.today });
      },
    });
  });
}

const ASKS: Record<ClosingWord, string> = {
  permit: "Say why the file is closed anyway",
  built: "Record it with the permit, or say here what was built",
  branches: "Check each off with its time in the second video, or say here how it is known",
  money: "Settle it in the ledger, or say here why it stays",
};

/** The word of whoever closes stands for the as-built. */
function builtBy(act: Act, words: string): BuiltWork {
  return {
    id: act.newId(),
    itemId: null,
    on: act.today,
    by: act.actor.name,
    words,
    uploadId: null,
  };
}

/** Opens a closed file again. */
export function reopenLine(
  act: Act,
  { lineId, reason }: { readonly lineId: string; readonly reason: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "reopen-line", evenClosed: true } as const;
  return changeLine(act, deal, ({ line }) => {
    if (line.closedOn === null) return refuse("not-in-this-state", "", "The file is open");
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why it is reopened");
    return ok({
      value: null,
      sentence: `Reopened the file: ${reason.trim()}`,
      detail: { reason, closedOn: line.closedOn },
      write: (db) => updateLine(db, { ...line, closedOn: null }),
    });
  });
}
