import { updateLine } from "#db/queries/line.ts";
import type { WorkOption } from "#lib/domain/split/work-option.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface OptionChoice {
  readonly lineId: string;
  /** Null takes the choice back: the options stand side by side again. */
  readonly optionId: string | null;
  readonly reason: string;
}

/**
 * Says which of the priced ways of doing the work is done, with the reason. The split of the line is
 * then that option's; versions on another one go stale. Refuses without a reason.
 */
export function chooseOption(
  act: Act,
  { lineId, optionId, reason }: OptionChoice,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "choose-option" } as const;
  return changeLine(act, deal, ({ line, options }) => {
    const option = options.find(({ id }) => id === optionId) ?? null;
    if (optionId !== null && option === null)
      return refuse("not-found", "optionId", "the way of doing the work");
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why this one");
    return ok({
      value: null,
      sentence: line.optionId === optionId ? null : sentenceFor(option, reason.trim()),
      detail: { before: { optionId: line.optionId }, after: { optionId, reason: reason.trim() } },
      write: (db) => updateLine(db, { ...line, optionId }),
    });
  });
}

function sentenceFor(option: WorkOption | null, reason: string): string {
  return option === null
    ? `Took the choice of the work back: ${reason}`
    : `Chose “${option.title}” as the way to do the work: ${reason}`;
}
