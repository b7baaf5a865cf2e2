import type { LineFile } from "../facts/line-file.ts";
import type { FrozenShare, SplitVersion } from "../facts/split.ts";
import type { SplitOutcome } from "../findings/outcome.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { sayList } from "../say/say-list.ts";
import { optionInForce } from "../sharing/scope-in-force.ts";
import { propertyLabel, unknownLabel } from "../sharing/sharers.ts";
import { payerKey } from "./compare.ts";
import { splitOutcome } from "./outcomes.ts";

/** One payer's amount as frozen and as it would be now; null: has no share. */
interface ShareChange {
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly label: string;
  readonly was: Cents | null;
  readonly now: Cents | null;
}

export interface SplitStanding {
  readonly stale: boolean;
  /** What changed, by how much, for whom. */
  readonly sentence: string;
  readonly changes: readonly ShareChange[];
}

/**
 * Whether a version still stands on the facts that it was worked out from. It goes stale by any
 * change that its amounts depend on, even one that happens to leave them as they were.
 */
export function splitStanding(
  file: LineFile,
  report: Pick<Report, "tieIns" | "reaches" | "extent">,
  version: SplitVersion,
): SplitStanding {
  const { rule, faultStation, payerId, unknownShares } = version;
  const now = splitOutcome(file, report, { rule, faultStation, payerId, unknownShares });
  if (now.basis === version.basis) {
    return {
      stale: false,
      sentence: "Nothing the amounts depend on has changed.",
      changes: [],
    };
  }
  if (now.refusal !== null) {
    return {
      stale: true,
      sentence: `Out of date and can’t be recalculated yet. ${now.refusal}`,
      changes: [],
    };
  }
  const changes = changesOf(file, version, now);
  const sentence = `${sayOption(file, version)}${sayChanges(version, now, changes)}`;
  return { stale: true, sentence, changes };
}

/** `A different option is now selected: “Lining” instead of “Spot repair”. ` */
function sayOption(file: LineFile, version: SplitVersion): string {
  const now = optionInForce(file);
  if (now === version.optionId) return "";
  const name = (id: string | null) => {
    const title = file.options.find((option) => option.id === id)?.title;
    return title === undefined ? "none" : `“${title}”`;
  };
  return `A different option is now selected: ${name(now)}, not ${name(version.optionId)}. `;
}

function changesOf(file: LineFile, version: SplitVersion, now: SplitOutcome): ShareChange[] {
  const before = new Map(version.shares.map((share) => [payerKey(share), share]));
  const kept = now.shares.map((share) => {
    const { propertyId, tieInId, label, amount } = share;
    const was = before.get(payerKey(share))?.amount ?? null;
    return { propertyId, tieInId, label, was, now: amount };
  });
  const present = new Set(now.shares.map(payerKey));
  const gone = version.shares
    .filter((share) => !present.has(payerKey(share)))
    .map(({ propertyId, tieInId, amount }) => ({
      propertyId,
      tieInId,
      label: frozenLabel(file, { propertyId, tieInId }),
      was: amount,
      now: null,
    }));
  return [...kept, ...gone].filter((change) => change.was !== change.now);
}

function frozenLabel(
  file: Pick<LineFile, "properties" | "tieIns">,
  { propertyId, tieInId }: Pick<FrozenShare, "propertyId" | "tieInId">,
): string {
  const property = file.properties.find((each) => each.id === propertyId);
  if (property !== undefined) return propertyLabel(property);
  const tieIn = file.tieIns.find((each) => each.id === tieInId);
  return unknownLabel(tieIn?.label ?? "A tie-in since removed");
}

function sayChanges(
  version: SplitVersion,
  now: SplitOutcome,
  changes: readonly ShareChange[],
): string {
  const parts = [
    now.total === version.total
      ? ""
      : `the total went from ${formatCents(version.total)} to ${formatCents(now.total)}`,
    sayJoined(
      changes.filter((change) => change.was === null),
      "is new",
      "are new",
    ),
    sayJoined(
      changes.filter((change) => change.now === null),
      "no longer pays",
      "no longer pay",
    ),
    sayAmounts(changes),
  ].filter((part) => part !== "");
  if (parts.length === 0)
    return "Out of date: facts behind the amounts changed; the amounts did not.";
  return `Out of date: ${parts.join("; ")}.`;
}

function sayJoined(changes: readonly ShareChange[], one: string, several: string): string {
  if (changes.length === 0) return "";
  const names = sayList(changes.map((change) => change.label));
  return `${names} ${changes.length === 1 ? one : several}`;
}

function sayAmounts(changes: readonly ShareChange[]): string {
  const words = changes.flatMap(({ label, was, now }) => {
    if (was === null || now === null) return [];
    const difference = formatCents(Math.abs(now - was));
    return [`${label} would pay ${difference} ${now > was ? "more" : "less"}`];
  });
  return sayList(words);
}

/** Whether a version no longer gives the amounts that the report works out by its rule. */
export function isStale({ splits }: Pick<Report, "splits">, version: SplitVersion): boolean {
  const outcome = splits.find(({ choice }) => choice.rule === version.rule);
  return outcome !== undefined && outcome.basis !== version.basis;
}
