import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type BatchCount, batchOf, countBatch, isOut } from "#lib/domain/mailing/batch.ts";
import { mayHang } from "#lib/domain/mailing/door-hanger.ts";
import { sayParts } from "#lib/domain/say/count.ts";
import { lineFileOf } from "../../file.ts";
import { counted } from "../../names.ts";
import { LETTER_WORDS } from "../../terms.ts";
import styles from "./batch.module.css";
import { Numbers } from "./numbers.tsx";
import { PrintAgain } from "./print-again.tsx";
import { Prints } from "./prints.tsx";
import { SendBatch } from "./send-batch.tsx";
import { Sheets } from "./sheets.tsx";
import { WriteRest } from "./write-rest.tsx";

export const metadata: Metadata = { title: "Batch" };

/** One kind of letter to everyone who gets it: written, printed in mailing order, sent, followed. */
export default async function BatchPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ kind?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, office, user, may } = await lineFileOf(lineId);
  const asked = (await searchParams).kind;
  const kind = LETTER_KINDS.find((each) => each === asked) ?? null;
  if (kind === null || office === null)
    return <ChooseKind lineId={lineId} file={file} report={report} />;
  const rows = batchOf({ file, report, office }, kind);
  const count = countBatch(rows);
  const out = rows.filter(isOut);
  const work = may("work-the-file");
  const jobs = listJobs(db(), lineId).filter((job) => job.kind === "mailing");
  const written = rows.flatMap(({ notice }) => (notice === null ? [] : [notice.id]));
  const part = { lineId, file, report, kind, rows };
  return (
    <>
      <PageHead asked={`Batch: ${LETTER_WORDS[kind]}`} answer={progress(count)}>
        <p className="screen-only">
          <Link href={`/lines/${lineId}/notices/batch`}>Choose another letter</Link>
        </p>
      </PageHead>
      {rows.length === 0 ? (
        <Empty title="No one gets this letter yet.">
          <p>Enter owners and occupants under “Who is on it?”, or choose recipients yourself.</p>
        </Empty>
      ) : null}
      {work && count.toWrite > 0 ? (
        <WriteRest {...part} office={office} count={count.toWrite} />
      ) : null}
      {rows.length === 0 ? null : (
        <Section
          title="Recipients, in mailing order"
          id="recipients"
          note={
            count.drafts === 0 || !work
              ? undefined
              : "Sending locks the text. The print is made from the locked letters, so what is mailed is what is on file. Take it to the post office the same day."
          }
        >
          <SendBatch
            {...part}
            work={work && count.drafts > 0}
            mayOverride={mayDo(user.role, "run-the-office")}
          />
        </Section>
      )}
      {work ? <Numbers {...part} /> : null}
      <Prints lineId={lineId} jobs={jobs} mayOpen={mayDo(user.role, "work-the-file")} />
      {work && out.length > 0 ? <PrintAgain {...part} rows={out} /> : null}
      {written.length === 0 ? null : (
        <Sheets lineId={lineId} kind={kind} noticeIds={written} hangers={mayHang(kind)} />
      )}
    </>
  );
}

function progress(count: BatchCount): string {
  if (count.all === 0) return "No one to write to yet";
  const incomplete = count.incomplete === 0 ? "" : ` (${count.incomplete} incomplete)`;
  const parts = [
    count.toWrite === 0 ? "" : `${count.toWrite} not written`,
    count.drafts === 0 ? "" : `${counted(count.drafts, "draft")}${incomplete}`,
    count.sent === 0 ? "" : `${count.sent} sent`,
    count.arrived === 0 ? "" : `${count.arrived} reached`,
    count.cameBack === 0 ? "" : `${count.cameBack} came back`,
    count.answered === 0 ? "" : `${count.answered} answered`,
    count.unreached === 0 ? "" : `${count.unreached} can’t be reached`,
  ];
  return `${counted(count.all, "letter")}: ${sayParts(parts).toLowerCase()}`;
}

/** Every kind that someone gets, what is due first. */
function ChooseKind({
  lineId,
  file,
  report,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
}) {
  const due = new Set(lettersDue(file, report).map(({ kind }) => kind));
  const written = new Set(file.notices.map(({ kind }) => kind));
  const order = (kind: LetterKind) => {
    if (due.has(kind)) return 0;
    return written.has(kind) ? 1 : 2;
  };
  const kinds = LETTER_KINDS.toSorted((one, other) => order(one) - order(other));
  return (
    <>
      <PageHead asked="Batch" answer="Which letter goes out?">
        <p>One letter to everyone who gets it: drafts, print in mailing order, labels, results.</p>
      </PageHead>
      <ul className={`plain-list ${styles["kinds"]}`}>
        {kinds.map((kind) => (
          <li key={kind}>
            <Link href={`/lines/${lineId}/notices/batch?kind=${kind}`} className="strong">
              {LETTER_WORDS[kind]}
            </Link>{" "}
            {due.has(kind) ? <span className="tag">due now</span> : null}
            {!due.has(kind) && written.has(kind) ? (
              <span className="muted">{writtenWords(file, kind)}</span>
            ) : null}
          </li>
        ))}
      </ul>
    </>
  );
}

function writtenWords(file: LineFile, kind: LetterKind): string {
  const notices = file.notices.filter((notice) => notice.kind === kind);
  const drafts = notices.filter(({ state }) => state === "draft").length;
  const sent = notices.length - drafts;
  return sayParts([
    sent === 0 ? "" : `${sent} sent`,
    drafts === 0 ? "" : counted(drafts, "draft"),
  ]).toLowerCase();
}
