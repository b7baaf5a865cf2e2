import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitChoice, SplitVersion } from "#lib/domain/facts/split.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { optionInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { changedSince } from "./seen.ts";

interface Choice {
  readonly lineId: string;
  readonly choice: SplitChoice;
  readonly reason: string;
  /** `seenOf` how many versions there were on the page; not given: however many there are now. */
  readonly seen?: string | undefined;
}

/**
 * Chooses a rule with its particulars: a new version of the split with its amounts as they are now.
 * Refuses where the rule can't be worked out yet, where somebody chose meanwhile, and without a reason.
 */
export function chooseSplit(
  act: Act,
  { lineId, choice, reason, seen }: Choice,
): Result<{ splitId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "choose-split" } as const;
  return changeLine(act, deal, (file) => {
    const last = file.splits.at(-1);
    const by = last === undefined ? null : { by: last.chosenBy };
    const changed = changedSince(seen, { now: file.splits.length, last: by });
    if (changed !== null) return changed;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why this rule");
    const { rule, faultStation, payerId, unknownShares } = choice;
    const asked: SplitChoice = { rule, faultStation, payerId, unknownShares };
    if (payerId !== null && !file.properties.some(({ id }) => id === payerId))
      return refuse("not-found", "payerId", "the property that pays");
    const outcome = splitOutcome(file, reportOn(file, act.today), asked);
    if (outcome.refusal !== null) return refuse("bad-value", "rule", outcome.refusal);
    const version: SplitVersion = {
      id: act.newId(),
      number: Math.max(0, ...file.splits.map(({ number }) => number)) + 1,
      ...asked,
      reason: reason.trim(),
      chosenBy: act.actor.name,
      chosenOn: act.today,
      total: outcome.total,
      shares: outcome.shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
        propertyId,
        tieInId,
        amount,
        recoverable,
      })),
      basis: outcome.basis,
      optionId: optionInForce(file),
      sentAt: null,
    };
    return ok({
      value: { splitId: version.id },
      sentence: `Chose split version ${version.number}, ${outcome.title}${optionWords(file, version)}, ${formatCents(version.total)} total: ${version.reason}`,
      detail: { after: version },
      write: (db) => insertRow(db, "splits", { lineId, row: version }),
    });
  });
}

/** Only where there is more than one way of doing the work. */
function optionWords({ options }: LineFile, { optionId }: SplitVersion): string {
  const option = options.find(({ id }) => id === optionId);
  return option === undefined || options.length < 2 ? "" : ` for “${option.title}”`;
}
