import { asBuiltOf } from "#lib/domain/closing/built-parts.ts";
import { consentTable } from "#lib/domain/consent/table.ts";
import { QUESTIONS, type Question } from "#lib/domain/desk/answer.ts";
import { feeThings } from "#lib/domain/desk/fee-things.ts";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import { moneyThings } from "#lib/domain/desk/money-things.ts";
import { isLineUpOpen, isMatchOpen, isOwnershipOpen } from "#lib/domain/desk/reconcile-answer.ts";
import { refusalPaths } from "#lib/domain/desk/refusal-path.ts";
import { openRollCalls } from "#lib/domain/desk/roll-call-things.ts";
import type { HoldCause } from "#lib/domain/facts/hold.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { awaitingResult } from "#lib/domain/notices/awaiting-result.ts";
import { likelySame } from "#lib/domain/party/likely-same.ts";
import { stakeholdersOf } from "#lib/domain/party/stakeholders.ts";
import { resubmissionBar } from "#lib/domain/permit/corrections.ts";
import { moverOf } from "#lib/domain/permit/mover.ts";
import { hasWorkBegun, permitStateOf } from "#lib/domain/permit/steps.ts";
import { mustChooseOption } from "#lib/domain/sharing/scope-in-force.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { isStale } from "#lib/domain/split/stale.ts";
import { isOpenPaper, papersOn } from "#lib/domain/statutory/papers.ts";
import { resultsWanted } from "#lib/domain/testing/test-day-results.ts";
import { remembered } from "#lib/remembered.ts";

/** A page of its own under a question. */
interface Part {
  /** The folder under the question's; empty for the question's own page. */
  readonly slug: string;
  readonly name: string;
  /** It stands in the list only where it is used; another page leads to it before that. */
  readonly isUsed?: (file: LineFile) => boolean;
  /** Work is left there; none is on a closed file. */
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
  who: [
    { slug: "", name: "Properties and people" },
    {
      slug: "by-property",
      name: "By property",
      isOpen: (file) => stakeholdersOf(file).some(({ missing }) => missing.length > 0),
    },
    {
      slug: "duplicates",
      name: "Duplicates",
      isOpen: (file) => likelySame(file).length > 0,
    },
    {
      slug: "land",
      name: "Lots and land",
      isOpen: (_file, report) => isHeld(report, "land-unknown"),
    },
    {
      slug: "calls",
      name: "Call first",
      isOpen: (_file, report) => isHeld(report, "household-need"),
    },
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
    { slug: "", name: "Scope of work", isOpen: ({ scope }) => scope.length === 0 },
    {
      slug: "options",
      name: "Options and changes",
      isUsed: ({ options, changeOrders }) => options.length + changeOrders.length > 0,
      isOpen: (file) =>
        mustChooseOption(file) || file.changeOrders.some(({ state }) => state === "proposed"),
    },
    { slug: "compare", name: "Compare" },
    { slug: "choose", name: "Choose", isOpen: isRuleWanted },
    { slug: "statements", name: "Statements" },
    {
      slug: "money",
      name: "Ledger",
      isOpen: (file, report) => moneyThings(file, report).length > 0,
    },
  ],
  notices: [
    { slug: "", name: "Letters" },
    {
      slug: "write",
      name: "Write letters",
      isOpen: (file, report) => lettersDue(file, report).length > 0,
    },
    {
      slug: "batch",
      name: "Batch",
      isUsed: ({ notices, roles }) => notices.length + roles.length > 0,
    },
    {
      slug: "statutory",
      name: "Statutory papers",
      isUsed: ({ authority, contracts }) =>
        contracts.length + (authority?.statutoryPapers.length ?? 0) > 0,
      isOpen: (file) => file.line.closedOn === null && papersOn(file).some(isOpenPaper),
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
    { slug: "meeting", name: "Meetings" },
  ],
  authority: [
    { slug: "", name: "Requirements and packet" },
    { slug: "application", name: "Application" },
    { slug: "forms", name: "Forms", isUsed: ({ authority }) => authority !== null },
    { slug: "permits", name: "Permits and inspections", isOpen: isPermitOurs },
    {
      slug: "fees",
      name: "Fees",
      isUsed: ({ authority }) => authority !== null,
      isOpen: (file, report) => feeThings(file, report).length > 0,
    },
    {
      slug: "corrections",
      name: "Corrections",
      isUsed: ({ permitSteps }) => permitSteps.some(({ state }) => state === "corrections"),
      isOpen: (file) => file.permits.some((permit) => resubmissionBar(file, permit) !== null),
    },
    {
      slug: "as-built",
      name: "As-built",
      isUsed: (file) => file.built.length > 0 || hasWorkBegun(file),
      isOpen: (file, report) =>
        file.built.length > 0 &&
        file.line.closedOn === null &&
        asBuiltOf(file, report).open.length > 0,
    },
  ],
  schedule: [
    { slug: "", name: "Dates" },
    {
      slug: "roll-call",
      name: "Roll-call",
      isUsed: ({ events }) => events.some(({ event }) => event === "drains-paused"),
      isOpen: (file, report) => openRollCalls(file, report).length > 0,
    },
    { slug: "reconnections", name: "Reconnections" },
    {
      slug: "dig-card",
      name: "Dig card",
      isUsed: ({ locateTickets, scope }) => locateTickets.length > 0 || scope.length > 0,
    },
  ],
};

/** Whether what some run saw has no station. */
function isAdrift({ stations }: Report): boolean {
  return stations.some(({ station }) => station === null);
}

function hasEmptyLog({ runs, observations }: LineFile): boolean {
  return runs.some(({ id }) => observations.every(({ runId }) => runId !== id));
}

function isHeld({ holds }: Report, cause: HoldCause): boolean {
  return holds.some((hold) => hold.cause === cause && hold.waiver === null);
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
  return partsOfAll(report, file).get(question) ?? [];
}

const partsOfAll = remembered(
  (report: Report, file: LineFile) =>
    new Map(
      QUESTIONS.map((question): [Question, readonly PartLink[]] => [
        question,
        (PARTS[question] ?? [])
          .filter(({ isUsed }) => isUsed?.(file) ?? true)
          .map(({ slug, name, isOpen }) => ({
            slug,
            name,
            open: file.line.closedOn === null && (isOpen?.(file, report) ?? false),
          })),
      ]),
    ),
);

/** A permit waits for the office. */
function isPermitOurs(file: LineFile): boolean {
  return file.permits.some((permit) => {
    const state = permitStateOf(file, permit);
    return state !== "drafting" && moverOf(state) === "office";
  });
}

/** The work is priced, one way to do it is selected, and no rule is chosen on the facts as they are. */
function isRuleWanted(file: LineFile, report: Report): boolean {
  if (file.scope.length === 0 || mustChooseOption(file)) return false;
  const version = latestSplit(file);
  return version === null || isStale(report, version);
}
