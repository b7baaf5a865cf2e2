import { updateLine } from "#db/queries/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { WorkOption } from "#lib/domain/facts/work-option.ts";
import { hasWorkBegun } from "#lib/domain/permit/steps.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scopeInForce, underOption } from "#lib/domain/sharing/scope-in-force.ts";
import { decidedDeeds, deedsOfAll } from "#lib/domain/split/work-deeds.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { refuseHeld } from "./held.ts";
import { changedOnLine } from "./seen.ts";

interface OptionChoice {
  readonly lineId: string;
  /** Null takes the choice back: the options stand side by side again. */
  readonly optionId: string | null;
  readonly reason: string;
  /** `seenOf(line.optionId)` as the form was filled in; not given: whatever is chosen now. */
  readonly seen?: string | undefined;
}

/**
 * Says which of the priced ways of doing the work is done, with the reason. The split of the line is
 * then that option's; versions on another one go stale. Refuses without a reason, where
 * somebody chose another since the form was filled in, and a way of
 * cutting, lining, bursting or capping that a hold stops where it would be done.
 */
export function chooseOption(
  act: Act,
  { lineId, optionId, reason, seen }: OptionChoice,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "choose-option" } as const;
  return changeLine(act, deal, (file) => {
    const { line, options } = file;
    const changed = changedOnLine(file, seen, { now: line.optionId, about: ["optionId"] });
    if (changed !== null) return changed;
    const option = options.find(({ id }) => id === optionId) ?? null;
    if (optionId !== null && option === null)
      return refuse("not-found", "optionId", "the repair option");
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why this option");
    const held = optionId === line.optionId ? null : heldOption(act, file, optionId);
    if (held !== null) return held;
    return ok({
      value: null,
      sentence: line.optionId === optionId ? null : sentenceFor(option, reason.trim()),
      detail: { before: { optionId: line.optionId }, after: { optionId, reason: reason.trim() } },
      write: (db) => updateLine(db, { ...line, optionId }),
    });
  });
}

/** What the option would bring into force, as far as a hold stops how it is done. */
function heldOption(act: Act, file: LineFile, optionId: string | null) {
  if (optionId === null) return null;
  const there = new Set(scopeInForce(file).map(({ id }) => id));
  const comes = scopeInForce(underOption(file, optionId)).filter(({ id }) => !there.has(id));
  const report = reportOn(file, act.today);
  const deeds = deedsOfAll(comes, { options: file.options, tieIns: report.tieIns });
  return refuseHeld(report, decidedDeeds(deeds, hasWorkBegun(file)), "optionId");
}

function sentenceFor(option: WorkOption | null, reason: string): string {
  return option === null
    ? `Cleared the selected option: ${reason}`
    : `Selected the repair option “${option.title}”: ${reason}`;
}
