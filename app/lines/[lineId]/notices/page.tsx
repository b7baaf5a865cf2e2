import type { Metadata } from "next";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { lettersDue } from "#lib/domain/desk/letters-due.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { awaitingResult } from "#lib/domain/notices/awaiting-result.ts";
import { remindersDue } from "#lib/domain/paper/reminder.ts";
import { waitingReplies } from "#lib/domain/party/reply.ts";
import { lineFileOf } from "../file.ts";
import { counted } from "../names.ts";
import { QuestionHead } from "../question-head.tsx";
import { ChaseTable } from "./chase-table.tsx";
import { DraftBatch } from "./draft-batch.tsx";
import { DueLetters } from "./due-letters.tsx";
import { OutboxList } from "./outbox-list.tsx";
import { RemindersButton } from "./reminders-button.tsx";
import { ReplyCards } from "./reply-card.tsx";
import { ToldTable } from "./told-table.tsx";

export const metadata: Metadata = { title: "Who has been notified?" };

export default async function NoticesPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office, user, may } = await lineFileOf(lineId);
  const waiting = waitingReplies(file);
  const drafts = file.notices.filter((notice) => notice.state === "draft");
  const unsent = listOutgoing(db(), lineId).filter((message) => message.state !== "sent");
  const work = may("work-the-file");
  const due = work ? lettersDue(file, report) : [];
  const open = awaitingResult(file).length;
  return (
    <>
      <QuestionHead lineId={lineId} question="notices" />
      {drafts.length === 0 || office === null ? null : (
        <div className="screen-only">
          <Section
            title="Drafts"
            id="drafts"
            note="Review each draft, print or send it, then record how it was delivered. Once recorded as sent, the text is locked."
          >
            <DraftBatch
              lineId={lineId}
              file={file}
              drafts={drafts}
              report={report}
              office={office}
              mayOverride={mayDo(user.role, "run-the-office")}
            />
          </Section>
        </div>
      )}
      {waiting.length === 0 ? null : (
        <Section
          title="Replies to answer"
          id="replies"
          note="Each reply stays here until someone has dealt with it."
        >
          <ReplyCards
            lineId={lineId}
            file={file}
            replies={waiting}
            today={report.today}
            work={mayDo(user.role, "work-the-file")}
          />
        </Section>
      )}
      {unsent.length === 0 ? null : (
        <Section
          title="Outbox"
          id="outbox"
          note="Email is sent automatically and retried if a mail server is busy. Rejected messages stay here; send those another way."
        >
          <OutboxList messages={unsent} />
        </Section>
      )}
      <Section
        title="Needs follow-up"
        id="chase"
        note="Returned mail, overdue replies and letters without proof of delivery."
        actions={
          work ? (
            <>
              <RemindersButton lineId={lineId} count={remindersDue(file, report).length} />
              {open === 0 ? null : (
                <ButtonLink href={`/lines/${lineId}/notices/deliveries`}>
                  Record {counted(open, "delivery", "deliveries")}
                </ButtonLink>
              )}
            </>
          ) : undefined
        }
      >
        <ChaseTable lineId={lineId} file={file} today={report.today} />
      </Section>
      <Section
        title="Letters by party"
        {...(file.notices.length === 0
          ? {}
          : { foldedOnPhone: counted(file.notices.length, "letter") })}
        actions={
          work ? (
            <ButtonLink href={`/lines/${lineId}/notices/write`} main={drafts.length === 0}>
              Write letters
            </ButtonLink>
          ) : undefined
        }
      >
        {due.length === 0 ? null : <DueLetters lineId={lineId} due={due} />}
        {file.notices.length === 0 ? (
          <Empty
            title="No letters sent yet."
            example="Shared-line finding, to all owners and the owner of the crossed lot, reply by December 1"
          >
            <p>
              Start with the shared-line finding: what was seen, what is not known, no blame. The
              letters are filled in from this file; you choose the recipients.
            </p>
          </Empty>
        ) : (
          <ToldTable lineId={lineId} file={file} report={report} />
        )}
      </Section>
    </>
  );
}
