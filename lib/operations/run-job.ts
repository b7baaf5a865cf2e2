import { jobQueue } from "#db/queries/job.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice } from "#db/queries/office.ts";
import { updateRow } from "#db/queries/row.ts";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { renderAgreements } from "#lib/documents/agreement-document.tsx";
import { renderClerkSheet } from "#lib/documents/clerk-sheet.tsx";
import { renderDeclarations } from "#lib/documents/declaration-document.tsx";
import { renderForm } from "#lib/documents/form-pages.tsx";
import { DocumentRefused } from "#lib/documents/printable.ts";
import { renderHangers } from "#lib/documents/render-hangers.tsx";
import { renderLabels } from "#lib/documents/render-labels.ts";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { renderStatements } from "#lib/documents/statement-document.tsx";
import type { Job, JobKind } from "#lib/domain/facts/job.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { doorHanger } from "#lib/domain/mailing/door-hanger.ts";
import { hungLetters } from "#lib/domain/mailing/hanging.ts";
import { labelSheet } from "#lib/domain/mailing/label-sheets.ts";
import { orderedNotices } from "#lib/domain/mailing/mailing-list.ts";
import { composeAsBuilt } from "#lib/domain/packet/as-built.ts";
import { composeCloseOut } from "#lib/domain/packet/close-out.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { planOf, setWords } from "#lib/domain/packet/sheets-form.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { agreementPaper, readingCopy } from "#lib/domain/paper/agreement-paper.ts";
import { correctionsAnswer } from "#lib/domain/paper/corrections-answer.ts";
import { declarationsOf } from "#lib/domain/paper/declaration.ts";
import { feeSheet } from "#lib/domain/paper/fee-sheet.ts";
import { statementsOf } from "#lib/domain/paper/statement.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { readStored } from "#lib/storage/store.ts";
import { tell } from "./change.ts";
import { enclosedPapers } from "./enclosed-papers.ts";
import { formBytes, formsOf } from "./forms-of.ts";
import { keepPdf } from "./keep-pdf.ts";
import { letterOf } from "./letter-of.ts";
import { makeMailing } from "./make-mailing.ts";
import { noticeWithoutPaper } from "./notice-without-paper.ts";
import { pictureBytes } from "./picture-bytes.ts";
import { actFor, minutesAfter, type Workplace, workOnNext } from "./workplace.ts";

const MOST_TRIES = 3;

/**
 * Takes the next job and makes its PDF; says whether there was one. What can't be printed fails at
 * once, with words; anything else is tried again, three times in all. A worker that was overtaken
 * writes nothing.
 */
export async function runNextJob(place: Workplace): Promise<boolean> {
  const work = (job: Job) => make(place, job).catch((error) => fail(place, job, error));
  return await workOnNext(place, jobQueue, { longestWait: MOST_TRIES, work });
}

async function make(place: Workplace, job: Job): Promise<void> {
  if (job.kind === "mailing") return await makeMailing(place, job);
  const file = getLineFile(place.db, job.lineId);
  const office = getOffice(place.db);
  if (file === null || office === null) throw new DocumentRefused("The office is not set up.");
  const { kind } = job;
  const { bytes, note, called } = await render(place, { job, kind, file, office });
  const act = actFor(place, place.db, job.by);
  const name = `${called ?? KIND_NAMES[kind]} ${act.today} ${file.line.name}.pdf`;
  const kept = await keepPdf(act, { lineId: job.lineId, name, bytes, note });
  place.db.transaction(
    (db) => {
      const end = { state: "done", uploadId: kept.upload.id, endedAt: act.now } as const;
      if (!jobQueue.end(db, { id: job.id, worker: place.worker }, end)) return;
      const inside = { ...act, db };
      kept.enter(inside);
      attachTo(inside, { job, uploadId: kept.upload.id });
      tell(inside, {
        lineId: job.lineId,
        action: "run-job",
        sentence: `Made ${name}.`,
        detail: { jobId: job.id, upload: kept.upload },
      });
    },
    { behavior: "immediate" },
  );
}

/** A PDF that was made. */
interface Made {
  readonly bytes: Uint8Array;
  /** What somebody should know of it. */
  readonly note: string;
  /** What it is called, where its kind does not say it. */
  readonly called?: string;
}

async function render(
  place: Workplace,
  { job, kind, file, office }: { job: Job; kind: StoredKind; file: LineFile; office: Office },
): Promise<Made> {
  const report = reportOn(file, place.today());
  const made = await MAKERS[kind]({ place, job, facts: { file, report, office } });
  return made instanceof Uint8Array ? { bytes: made, note: "" } : made;
}

interface Making {
  readonly place: Workplace;
  readonly job: Job;
  readonly facts: { readonly file: LineFile; readonly report: Report; readonly office: Office };
}

/** What becomes a file of the line; a mailing has codes on it and does not. */
type StoredKind = Exclude<JobKind, "mailing">;

/** How each kind of document is made. */
const MAKERS: Record<StoredKind, (making: Making) => Promise<Uint8Array | Made>> = {
  letters: ({ place, job, facts }) => {
    const { notices } = facts.file;
    const asked = job.subjectIds.flatMap((id) => notices.find((each) => each.id === id) ?? []);
    if (asked.length === 0) throw new DocumentRefused("The letters are no longer in the file.");
    const sent = asked.map((notice) => ({ notice, letter: letterOf(notice, facts) }));
    const letters = sent.map(({ letter }) => letter);
    const pictures = pictureBytes(place.dataFolder, facts.file, letters);
    return renderLetters(letters, pictures, enclosedPapers(sent, facts));
  },
  labels: ({ job, facts }) => {
    const [sheetId, ...ids] = job.subjectIds;
    const sheet = labelSheet(sheetId);
    const notices = askedFor(ids, facts.file);
    if (sheet === null) throw new DocumentRefused("There is no such label sheet. Choose another.");
    const letters = orderedNotices(facts.file, notices).map((one) => letterOf(one, facts));
    const about = { title: `Labels, ${facts.file.line.name}`, day: facts.report.today };
    return renderLabels(onceEach(letters.map(({ to }) => to)), sheet, about);
  },
  "door-hangers": ({ job, facts }) => {
    const notices = askedFor(job.subjectIds, facts.file);
    const hung = hungLetters(facts.file, notices);
    if (hung.length === 0)
      throw new DocumentRefused("None of these letters may hang on a door: they are private.");
    const hangers = hung.map(({ notice, unit }) =>
      doorHanger(letterOf(notice, facts), unit?.name ?? ""),
    );
    const about = { title: `Door hangers, ${facts.file.line.name}`, day: facts.report.today };
    return renderHangers(hangers, about);
  },
  packet: ({ place, facts }) => {
    const forms = formsOf(place.db, facts.file);
    return renderPacket(
      composePacket({ ...facts, forms }),
      storedBytes(place, facts.file),
      formBytes(place.dataFolder, forms),
    );
  },
  "close-out": ({ place, facts }) =>
    renderPacket(composeCloseOut(facts), storedBytes(place, facts.file)),
  "as-built": ({ place, facts }) =>
    renderPacket(composeAsBuilt(facts), storedBytes(place, facts.file)),
  form: async ({ place, job, facts }) => {
    const form = formsOf(place.db, facts.file).find(({ id }) => job.subjectIds.includes(id));
    if (form === undefined) throw new DocumentRefused("The form is no longer in use.");
    const { fill } = planOf(form, facts);
    const made = await renderForm(fill, {
      bytes: formBytes(place.dataFolder, [form]).get(form.sha256),
      about: { lineName: facts.file.line.name, day: facts.report.today },
    });
    if (!made.ok)
      throw new DocumentRefused(`The form “${form.title}” could not be filled in: ${made.error}`);
    const note = [`Version ${form.version} of the form.`, ...setWords(made.value.set)].join(" ");
    return { bytes: made.value.bytes, note, called: form.title };
  },
  statements: ({ job, facts }) => {
    const statements = statementsOf(facts, job.subjectIds);
    if (statements.length === 0)
      throw new DocumentRefused("There is no split yet; choose a rule first.");
    return renderStatements(statements);
  },
  accounts: async ({ job, facts }) => {
    const papers = accountPapers({ ...facts, today: facts.report.today }, job.subjectIds);
    if (papers.length === 0)
      throw new DocumentRefused("There are no ledger entries for these properties yet.");
    const { bytes, withoutSlip } = await renderAccounts(papers);
    return { bytes, note: withoutSlip.map(noSlip).join(" ") };
  },
  agreement: async ({ job, facts }) => {
    const today = facts.report.today;
    const papers = job.subjectIds.flatMap((id) => {
      const agreement = facts.file.agreements.find((each) => each.id === id);
      if (agreement === undefined) return [];
      const copy = readingCopy({ ...facts, today }, agreement);
      const draft = agreementPaper({ ...facts, today }, agreement);
      return copy === null ? [draft] : [draft, copy];
    });
    if (papers.length === 0) throw new DocumentRefused("The agreement is no longer in the file.");
    const bytes = await renderAgreements(papers);
    return { bytes, note: papers.some(({ copy }) => copy !== null) ? COPY_INSIDE : "" };
  },
  corrections: ({ job, facts }) => {
    const today = facts.report.today;
    const sheet = correctionsAnswer({ ...facts, today }, job.subjectIds[0] ?? "");
    if (sheet === null) throw new DocumentRefused("No corrections were asked for by this step.");
    return renderClerkSheet(sheet);
  },
  fees: ({ job, facts }) => {
    const sheet = feeSheet(facts, job.subjectIds[0] ?? "");
    if (sheet === null) throw new DocumentRefused("The permit is no longer in the file.");
    return renderClerkSheet(sheet);
  },
  declaration: declarations,
};

/** Says which exhibits are not in it. */
async function declarations({ place, job, facts }: Making): Promise<Made> {
  const today = facts.report.today;
  const found = declarationsOf({ ...facts, today }, job.subjectIds);
  if (found.length === 0)
    throw new DocumentRefused("There is nothing to declare yet: these emails were not sent.");
  const { bytes, missing } = await renderDeclarations(found, storedBytes(place, facts.file));
  return { bytes, note: missing.join(" ") };
}

function askedFor(ids: readonly string[], file: LineFile): Notice[] {
  const asked = ids.flatMap((id) => file.notices.find((each) => each.id === id) ?? []);
  if (asked.length === 0) throw new DocumentRefused("The letters are no longer in the file.");
  return asked;
}

/** One label for each address: two letters to one reader go into one envelope. */
function onceEach(addresses: readonly (readonly string[])[]): (readonly string[])[] {
  const seen = new Map(addresses.map((lines) => [lines.join("\n"), lines]));
  return [...seen.values()];
}

const COPY_INSIDE =
  "A reading copy in Spanish follows the draft: hand it out beside it, and keep its pages out of what is signed and recorded.";

function noSlip(paper: string): string {
  return `${paper}: too long for one sheet with a payment slip, so it has none. It says how to pay.`;
}

function storedBytes(place: Workplace, file: LineFile): Map<string, Uint8Array> {
  return new Map(
    file.uploads.flatMap(({ id, sha256 }): [string, Uint8Array][] => {
      const bytes = readStored(place.dataFolder, sha256);
      return bytes === null ? [] : [[id, bytes]];
    }),
  );
}

const KIND_NAMES: Record<StoredKind, string> = {
  letters: "Letters",
  labels: "Labels",
  "door-hangers": "Door hangers",
  packet: "Packet",
  "as-built": "As-built",
  "close-out": "Closeout file",
  statements: "Statements",
  accounts: "Statements of account",
  agreement: "Agreement draft",
  form: "Form",
  corrections: "Answers to corrections",
  fees: "Permit fees",
  declaration: "Declaration of delivery",
};

/** The paper of a letter that was sent belongs to it. */
function attachTo(
  { db }: Pick<Workplace, "db">,
  { job, uploadId }: { job: Job; uploadId: string },
): void {
  const [only, ...others] = job.subjectIds;
  if (only === undefined || others.length > 0 || job.kind !== "letters") return;
  const notice = noticeWithoutPaper(db, { lineId: job.lineId, noticeId: only });
  if (notice !== null)
    updateRow(db, "notices", { lineId: job.lineId, row: { ...notice, uploadId } });
}

function fail(place: Workplace, job: Job, error: unknown): void {
  const words = error instanceof Error ? error.message : String(error);
  const now = place.now();
  const mine = { id: job.id, worker: place.worker };
  if (error instanceof DocumentRefused || job.attempts >= MOST_TRIES)
    jobQueue.end(place.db, mine, { state: "failed", problem: words, endedAt: now });
  else
    jobQueue.end(place.db, mine, {
      state: "waiting",
      problem: words,
      nextTryAt: minutesAfter(now, job.attempts),
    });
}
