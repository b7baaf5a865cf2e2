import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { LetterSheet } from "#app/_components/letter-sheet.tsx";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { cellOf } from "#lib/domain/notices/told.ts";
import { typedInEnglish } from "#lib/domain/paper/as-typed.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { frozenLetter } from "#lib/domain/paper/frozen-letter.ts";
import { letterGaps } from "#lib/domain/paper/gaps.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { lineFileOf } from "../../../file.ts";
import { partyName } from "../../../names.ts";
import { LETTER_WORDS, toldParts } from "../../../terms.ts";
import { aboutWords } from "../../about-words.ts";
import { GapList } from "../../gap-list.tsx";
import { Deliveries } from "./deliveries.tsx";
import { DraftForms } from "./draft-forms.tsx";
import styles from "./letter-page.module.css";
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
  const letter = letterOf({ file, report, office, notice });
  const typed = draft ? typedInEnglish({ file, report, office, notice }) : null;
  return (
    <>
      <div className="screen-only">
        <PageHead
          asked={`${LETTER_WORDS[notice.kind]} to ${partyName(file, notice.partyId)}, about ${aboutWords(file, notice)}`}
          answer={stateWords(file, notice, report.today)}
        >
          <p className="cluster">
            <Link href={`/lines/${lineId}/notices`}>Back to the letters</Link>
            <PrintThis lineId={lineId} notice={notice} />
          </p>
        </PageHead>
        {draft ? <GapsPart gaps={letterGaps({ file, report, office, notice })} /> : null}
        {typed === null ? null : <p>{typed}</p>}
        {draft && work ? <DraftForms lineId={lineId} notice={notice} /> : null}
        {draft ? null : (
          <div className={styles["sides"]}>
            <Section
              title="Replies"
              id="replies"
              note="Replies received by mail, phone or in person."
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
            <div>
              <Section
                title="Delivery"
                id="deliveries"
                note="Every attempt and its proof. An unclaimed certified letter needs a second attempt another way."
              >
                <Deliveries
                  lineId={lineId}
                  file={file}
                  notice={notice}
                  today={report.today}
                  work={work}
                />
              </Section>
              <Section
                title="Private link"
                id="link"
                note="Lets the reader open this letter on a phone, see their own share, reply, and sign what can be signed on screen."
              >
                <PrivateLinkPart lineId={lineId} notice={notice} zone={office.zone} work={work} />
              </Section>
            </div>
          </div>
        )}
      </div>
      <LetterPart draft={draft} note={lockedWords(notice)}>
        {letter === null ? (
          <NoticeBox kind="caution" title="This letter can’t be shown">
            <p>
              What was kept of it when it was sent can’t be read. Its PDF, where one was made, is as
              it went out. Restore a backup, or send the letter again.
            </p>
          </NoticeBox>
        ) : (
          <LetterSheet
            letter={letter}
            pictureHref={(uploadId) =>
              `/lines/${encodeURIComponent(lineId)}/uploads/${encodeURIComponent(uploadId)}`
            }
          />
        )}
      </LetterPart>
    </>
  );
}

/** A draft is read before it goes; what was sent is there to be opened. */
function LetterPart({
  draft,
  note,
  children,
}: {
  readonly draft: boolean;
  readonly note: string;
  readonly children: ReactNode;
}) {
  return draft ? (
    <Section title="Preview" id="letter" note={note}>
      {children}
    </Section>
  ) : (
    <Section title="Letter as sent" id="letter" note={note} folded="Read it here">
      {children}
    </Section>
  );
}

function GapsPart({ gaps }: { readonly gaps: readonly string[] }) {
  if (gaps.length === 0) return null;
  return (
    <Section title="Missing from this letter" id="gaps">
      <GapList gaps={gaps} />
    </Section>
  );
}

function letterOf(facts: {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly notice: Notice;
}): Letter | null {
  const { frozen } = facts.notice;
  return frozen === null ? composeLetter(facts) : frozenLetter(frozen);
}

function stateWords(file: LineFile, notice: Notice, today: string): string {
  const cell = cellOf(file, notice);
  if (cell.state === "draft") return "Draft, not sent.";
  const how = cell.method === null ? "" : `, ${METHOD_WORDS[cell.method]}`;
  const when = cell.on === null ? "" : ` ${formatDay(cell.on, today)}`;
  const { done, butNot } = toldParts(cell.state);
  const words = `${done}${when}${how}${butNot}.`;
  const reply = notice.replyBy === null || cell.reply !== null;
  const asked = reply ? "" : ` Reply by ${formatDay(notice.replyBy ?? today, today)}.`;
  return capital(words) + asked;
}

function lockedWords(notice: Notice): string {
  if (notice.frozenHash === null)
    return "Filled in from the file as it is now. Locked when you record it as sent.";
  return `Locked when sent; document ID ${notice.frozenHash.slice(0, 16)}.`;
}
