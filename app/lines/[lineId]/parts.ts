import { consentTable } from "#lib/domain/consent/table.ts";
import type { Question } from "#lib/domain/desk/answer.ts";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import { isLineUpOpen, isMatchOpen, isOwnershipOpen } from "#lib/domain/desk/reconcile-answer.ts";
import { refusalPaths } from "#lib/domain/desk/refusal-path.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { awaitingResult } from "#lib/domain/notices/awaiting-result.ts";
import { resultsWanted } from "#lib/domain/testing/test-day-results.ts";

/** A page of its own under a question. */
interface Part {
  /** The folder under the question's; empty for the question's own page. */
  readonly slug: string;
  readonly name: string;
  /** Work is left there. */
  readonly isOpen?: (file: LineFile, report: Report) => boolean;
}

/**
 * The pages under each question, in the order in which they are worked on; the side list names them
 * under the question that is open. A question of one page has none.
 */
const PARTS: Partial<Record<Question, readonly Part[]>> = {
  camera: [
    { slug: "", name: "Runs", isOpen: ({ runs }, report) => runs.length === 0 || isAdrift(report) },
    { slug: "log", name: "Log", isOpen: hasEmptyLog },
    { slug: "narration", name: "Narration" },
    { slug: "tie-ins", name: "Tie-ins" },
    { slug: "pipe", name: "Pipe and landmarks", isOpen: ({ line }) => line.upperEnd === null },
    { slug: "plan", name: "Plan view" },
    { slug: "capacity", name: "Slope and load" },
  ],
  reconcile: [
    { slug: "", name: "Status" },
    { slug: "line-up", name: "Line up", isOpen: (_file, report) => isLineUpOpen(report) },
    { slug: "match", name: "Match", isOpen: isMatchOpen },
    {
      slug: "undocumented",
      name: "Undocumented",
      isOpen: (_file, report) => isOwnershipOpen(report),
    },
    { slug: "test-day", name: "Dye test day", isOpen: (file) => resultsWanted(file) },
  ],
  cost: [
    { slug: "", name: "Work and split" },
    { slug: "money", name: "Ledger" },
  ],
  notices: [
    { slug: "", name: "Letters" },
    {
      slug: "write",
      name: "Write letters",
      isOpen: (file, report) => lettersDue(file, report).length > 0,
    },
    {
      slug: "deliveries",
      name: "Deliveries",
      isOpen: (file) => awaitingResult(file).length > 0,
    },
    {
      slug: "consents",
      name: "Consents",
      isOpen: (file, report) => isConsentOpen(file, report),
    },
    {
      slug: "refusal",
      name: "If someone refuses",
      isOpen: (file, report) => refusalPaths(file, report).length > 0,
    },
    { slug: "facts", name: "Facts for letters" },
  ],
  schedule: [
    { slug: "", name: "Dates" },
    { slug: "reconnections", name: "Reconnections" },
  ],
};

/** Whether what some run saw has no station. */
function isAdrift({ stations }: Report): boolean {
  return stations.some(({ station }) => station === null);
}

function hasEmptyLog({ runs, observations }: LineFile): boolean {
  return runs.some(({ id }) => observations.every(({ runId }) => runId !== id));
}

export interface PartLink {
  readonly slug: string;
  readonly name: string;
  readonly open: boolean;
}

/** A consent that the work or the split needs is not on file. */
function isConsentOpen(file: LineFile, report: Report): boolean {
  return consentTable(file, report).some(({ cells }) =>
    Object.values(cells).some(({ needed, inHand }) => needed && !inHand),
  );
}

/** The pages of one question as the side list shows them. */
export function partsOf(question: Question, file: LineFile, report: Report): readonly PartLink[] {
  return (PARTS[question] ?? []).map(({ slug, name, isOpen }) => ({
    slug,
    name,
    open: isOpen?.(file, report) ?? false,
  }));
}
