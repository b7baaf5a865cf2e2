import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { LetterSheet } from "#app/_components/letter-sheet.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { cellOf } from "#lib/domain/notices/told.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../../file.ts";
import { partyName } from "../../../names.ts";
import { LETTER_WORDS, METHOD_WORDS, TOLD_WORDS } from "../../../terms.ts";
import { aboutWords } from "../../about-words.ts";
import { GapList } from "../../gap-list.tsx";
import { Deliveries } from "./deliveries.tsx";
import { DraftForms } from "./draft-forms.tsx";
import { PrintThis } from "./print-this.tsx";
import { PrivateLinkPart } from "./private-link.tsx";
import { Replies } from "./replies.tsx";

export const metadata: Metadata = { title: "Letter" };

export default async function LetterPage({
  params,
}: {
  readonly params: Promise<{ lineId: string; noticeId: string }>;
}) {
  const { lineId, noticeId } = await params;
  const { file, report, office, may, user } = await lineFileOf(lineId);
  const notice = file.notices.find((each) => each.id === noticeId);
  if (notice === undefined || office === null) notFound();
  const draft = notice.state === "draft";
  const work = may("work-the-file");
  return (
    <>
      <div className="screen-only">
        <PageHead
          asked={`${LETTER_WORDS[notice.kind]} to ${partyName(file, notice.partyId)}, about ${aboutWords(file, notice)}`}
          answer={stateWords(file, notice, report.today)}
        >
          <p className="cluster">
            <Link href={`/lines/${lineId}/notices`}>Back to who has been told</Link>
            <PrintThis lineId={lineId} notice={notice} />
          </p>
        </PageHead>
        {draft ? <GapsPart gaps={letterGaps({ file, report, office, notice })} /> : null}
        {draft && work ? <DraftForms lineId={lineId} notice={notice} /> : null}
        {draft ? null : (
          <>
            <Section
              title="Replies"
              id="replies"
              note="What came back in any form: by mail, by phone, at the door."
            >
              <Replies
                lineId={lineId}
                file={file}
                notice={notice}
                today={report.today}
                work={work}
                deal={mayDo(user.role, "work-the-file")}
              />
            </Section>
            <Section
              title="Private link"
              id="link"
              note="With it the reader opens this letter on a telephone, sees their own share, answers, and signs what may be signed on screen."
            >
              <PrivateLinkPart lineId={lineId} notice={notice} zone={office.zone} work={work} />
            </Section>
            <Section
              title="How it went"
              id="deliveries"
              note="Every attempt with its proof. An unclaimed certified letter wants a second attempt in another way."
            >
              <Deliveries
                lineId={lineId}
                file={file}
                notice={notice}
                today={report.today}
                work={work}
              />
            </Section>
          </>
        )}
      </div>
      <Section title={draft ? "As it will read" : "As it was sent"} note={frozenWords(notice)}>
        <LetterSheet
          letter={letterOf({ file, report, office, notice })}
          pictureHref={(uploadId) =>
            `/lines/${encodeURIComponent(lineId)}/uploads/${encodeURIComponent(uploadId)}`
          }
        />
      </Section>
    </>
  );
}

function GapsPart({ gaps }: { readonly gaps: readonly string[] }) {
  if (gaps.length === 0) return null;
  return (
    <Section title="What it still lacks" id="gaps">
      <GapList gaps={gaps} />
    </Section>
  );
}

function letterOf(facts: {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly notice: Notice;
}): Letter {
  const { frozen } = facts.notice;
  return frozen === null ? composeLetter(facts) : (JSON.parse(frozen) as Letter);
}

function stateWords(file: LineFile, notice: Notice, today: string): string {
  const cell = cellOf(file, notice);
  if (cell.state === "draft") return "A draft; nobody has it yet.";
  const how = cell.method === null ? "" : `, ${METHOD_WORDS[cell.method]}`;
  const when = cell.on === null ? "" : ` ${formatDay(cell.on, today)}`;
  const words = `${TOLD_WORDS[cell.state]}${when}${how}.`;
  const reply = notice.replyBy === null || cell.reply !== null;
  const asked = reply ? "" : ` Reply by ${formatDay(notice.replyBy ?? today, today)}.`;
  return capital(words) + asked;
}

function frozenWords(notice: Notice): string {
  if (notice.frozenHash === null) {
    return "Made from the file as it stands now. It is frozen when you record it as sent.";
  }
  return `Frozen word for word when it was sent; its fingerprint is ${notice.frozenHash.slice(0, 16)}.`;
}
