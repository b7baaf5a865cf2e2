import type { Hold } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { balanceOf } from "../ledger/balance.ts";
import { formatCents } from "../money/format-cents.ts";
import { permitStanding } from "../permit/say.ts";
import { hasWorkBegun, isGivenUp, permitStateOf } from "../permit/steps.ts";
import { tallyOf } from "../reconnection/tally.ts";
import { sayList } from "../say/say-list.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { latestSplit } from "../split/latest-split.ts";
import { deedsOfWork } from "../split/work-deeds.ts";
import { ASKS_FOR_MONEY, type Deed, holdsAgainst } from "../stops/stopped-by.ts";
import { unbuiltWork } from "./as-built.ts";

/** What a file is not closed without: a word of a named person stands in for each but the holds. */
export const CLOSING_WORDS = ["permit", "built", "branches", "money"] as const;
export type ClosingWord = (typeof CLOSING_WORDS)[number];

/** What still stands open on a file that is to be closed. */
export interface Closing {
  /** In one sentence each; null where nothing is open. */
  readonly gaps: Readonly<Record<ClosingWord, string | null>>;
  readonly holds: readonly Hold[];
  readonly deeds: readonly Deed[];
}

/**
 * What a file is not closed without: its permits final, what was built on record, the money book
 * settled, and no hold open on the work or on the money that was asked for. A file on which nothing
 * was ever begun or invoiced keeps its holds: nothing was done against them.
 */
export function closingOf(file: LineFile, report: Pick<Report, "holds" | "tieIns">): Closing {
  const isDone = file.permits.some((permit) => permitStateOf(file, permit) === "final");
  const hasWorked = isDone || hasWorkBegun(file) || file.built.length > 0;
  const deeds = [
    ...(hasWorked ? deedsOfWork(file, report.tieIns) : []),
    ...(file.ledger.some(({ kind }) => kind === "invoice") ? ASKS_FOR_MONEY : []),
  ];
  return {
    gaps: {
      permit: permitGap(file),
      built: builtGap(file),
      branches: hasWorked ? branchGap(file, report) : null,
      money: moneyGap(file),
    },
    holds: holdsAgainst(report.holds, deeds),
    deeds,
  };
}

function permitGap(file: LineFile): string | null {
  const permits = file.permits.filter((permit) => {
    return !isGivenUp(permitStateOf(file, permit));
  });
  if (permits.length === 0) return "No permit on file.";
  const open = permits.filter((permit) => permitStateOf(file, permit) !== "final");
  if (open.length === 0) return null;
  const words = open.map((permit) => permitStanding(file, permit)).join(", ");
  return `Not final: ${words}.`;
}

function builtGap(file: LineFile): string | null {
  const unbuilt = unbuiltWork(file);
  if (unbuilt.length === 0) return null;
  return `Not recorded as done: ${unbuilt.map(({ title }) => `“${title}”`).join(", ")}.`;
}

/** Branches that were closed or cut off, and that nobody saw open again. */
function branchGap(file: LineFile, { tieIns }: Pick<Report, "tieIns">): string | null {
  const closed = tallyOf(file, scopeInForce(file), tieIns).filter(
    ({ state }) => state !== "open-again",
  );
  if (closed.length === 0) return null;
  const names = sayList(closed.map(({ label }) => label));
  return `No record that ${names} ${closed.length === 1 ? "was" : "were"} seen open again after the work.`;
}

function moneyGap(file: LineFile): string | null {
  const { invoiced, open } = balanceOf(file.ledger);
  if (open > 0) return `Balance due on invoices: ${formatCents(open)}.`;
  if (open < 0) return `The neighbors still have a credit balance of ${formatCents(-open)}.`;
  const split = latestSplit(file);
  const due = (split?.shares ?? []).reduce((sum, { amount }) => sum + amount, 0);
  if (split === null || split.sentAt === null || invoiced >= due) return null;
  return `Of the ${formatCents(due)} of split version ${split.number}, ${formatCents(invoiced)} was invoiced.`;
}
