import type { Db } from "#db/open.ts";
import { jobQueue } from "#db/queries/job.ts";
import { getLineFile } from "#db/queries/line-file.ts";
import { getOffice } from "#db/queries/office.ts";
import { updateRow } from "#db/queries/row.ts";
import { DocumentRefused } from "#lib/documents/printable.ts";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { type MailPiece, renderMailing } from "#lib/documents/render-mailing.ts";
import type { Job } from "#lib/domain/facts/job.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { orderedNotices } from "#lib/domain/mailing/mailing-list.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { forCount, sayCount } from "#lib/domain/say/count.ts";
import { keepMailing } from "#lib/storage/mailings.ts";
import { readStored } from "#lib/storage/store.ts";
import type { Act } from "./act.ts";
import { tell } from "./change.ts";
import { enclosedPapers } from "./enclosed-papers.ts";
import { keepPdf } from "./keep-pdf.ts";
import { letterOf } from "./letter-of.ts";
import { noticeWithoutPaper } from "./notice-without-paper.ts";
import { pictureBytes } from "./picture-bytes.ts";
import { forgetCodes, printedCode } from "./printed-codes.ts";
import { actFor, type Workplace } from "./workplace.ts";

interface Facts {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
}

/** A letter's paper, and how it enters the file where it was made only now. */
interface Paper {
  readonly bytes: Uint8Array;
  readonly enter: ((act: Act) => void) | null;
}

/**
 * Prints letters that were sent as one PDF in mailing order: the stored paper of each, made now where
 * it is not there yet, with the code of its private page. The PDF is kept beside the files of the line
 * and not among them; the codes are forgotten once it is there.
 */
export async function makeMailing(place: Workplace, job: Job): Promise<void> {
  const file = getLineFile(place.db, job.lineId);
  const office = getOffice(place.db);
  if (file === null || office === null) throw new DocumentRefused("The office is not set up.");
  const facts = { file, office, report: reportOn(file, place.today()) };
  const asked = job.subjectIds.flatMap((id) => file.notices.find((each) => each.id === id) ?? []);
  const notices = orderedNotices(
    file,
    asked.filter(({ state }) => state === "sent"),
  );
  if (notices.length === 0) throw new DocumentRefused("The letters are no longer in the file.");
  const act = actFor(place, place.db, job.by);
  const { dataFolder, db } = place;
  const pieces: MailPiece[] = [];
  const papers: Paper[] = [];
  for (const notice of notices) {
    const paper = await paperOf(act, facts, notice);
    const code = printedCode({ db, dataFolder, zone: office.zone }, notice.id);
    papers.push(paper);
    pieces.push(pieceOf(facts, { notice, bytes: paper.bytes, code }));
  }
  const bytes = await renderMailing(pieces, {
    title: `Mailing, ${file.line.name}`,
    office: office.name,
    day: facts.report.today,
  });
  keepMailing(dataFolder, job.id, bytes);
  const isMine = db.transaction(
    (one) => end({ ...act, db: one }, { place, job, papers, pieces, name: file.line.name }),
    { behavior: "immediate" },
  );
  if (isMine) forgetCodes(dataFolder, job.subjectIds);
}

function pieceOf(
  { file }: Facts,
  { notice, ...piece }: Pick<MailPiece, "bytes" | "code"> & { readonly notice: Notice },
): MailPiece {
  const name = file.parties.find(({ id }) => id === notice.partyId)?.name ?? "";
  const languages = [notice.language, ...(notice.alsoIn === null ? [] : [notice.alsoIn])];
  return { title: name, languages, ...piece };
}

interface Ending {
  readonly place: Workplace;
  readonly job: Job;
  readonly papers: readonly Paper[];
  readonly pieces: readonly MailPiece[];
  readonly name: string;
}

/** Ends the job with what was made; false where another worker took it over. */
function end(act: Act & { db: Db }, { place, job, papers, pieces, name }: Ending): boolean {
  const coded = pieces.filter(({ code }) => code !== null).length;
  const problem = coded === 0 || coded === pieces.length ? "" : withoutCode(pieces.length - coded);
  const mine = { id: job.id, worker: place.worker };
  const done = { state: "done", uploadId: null, problem, endedAt: act.now } as const;
  if (!jobQueue.end(act.db, mine, done)) return false;
  for (const { enter } of papers) enter?.(act);
  const codes = coded === 0 ? "" : `, ${coded} with the code of a private page`;
  tell(act, {
    lineId: job.lineId,
    action: "run-job",
    sentence: `Printed ${sayCount(pieces.length, "letter")} of ${name} in mailing order${codes}.`,
    detail: { jobId: job.id, noticeIds: job.subjectIds },
  });
  return true;
}

function withoutCode(count: number): string {
  return `${sayCount(count, "letter")} ${forCount(count, "has", "have")} no code: print ${forCount(count, "it", "them")} again to get one.`;
}

/** The paper that is stored with a letter; made now where there is none. */
async function paperOf(act: Act, facts: Facts, notice: Notice): Promise<Paper> {
  const { file } = facts;
  const stored = file.uploads.find(({ id }) => id === notice.uploadId);
  const there = stored ? readStored(act.dataFolder, stored.sha256) : null;
  if (there !== null) return { bytes: there, enter: null };
  if (notice.uploadId !== null)
    throw new DocumentRefused(
      "The PDF of one of these letters is no longer stored; restore it from a backup.",
    );
  const letter = letterOf(notice, facts);
  const pictures = pictureBytes(act.dataFolder, file, [letter]);
  const bytes = await renderLetters(
    [letter],
    pictures,
    enclosedPapers([{ notice, letter }], facts),
  );
  const lineId = file.line.id;
  const name = `${notice.kind} ${act.today}.pdf`;
  const kept = await keepPdf(act, { lineId, name, bytes, note: "As sent" });
  const enter = (inside: Act) => {
    const now = noticeWithoutPaper(inside.db, { lineId, noticeId: notice.id });
    if (now === null) return;
    kept.enter(inside);
    updateRow(inside.db, "notices", { lineId, row: { ...now, uploadId: kept.upload.id } });
  };
  return { bytes, enter };
}
