import type { Metadata } from "next";
import { ButtonLink } from "#app/_components/button.tsx";
import { Empty } from "#app/_components/empty.tsx";
import { Section } from "#app/_components/section.tsx";
import { db } from "#app/db.ts";
import { listOutgoing } from "#db/queries/outgoing.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { waitingReplies } from "#lib/domain/party/reply.ts";
import { lineFileOf } from "../file.ts";
import { QuestionHead } from "../question-head.tsx";
import { ChaseTable } from "./chase-table.tsx";
import { ConsentTable } from "./consent-table.tsx";
import { DraftBatch } from "./draft-batch.tsx";
import { OutboxList } from "./outbox-list.tsx";
import { WaitingReplies } from "./reply-card.tsx";
import { ToldTable } from "./told-table.tsx";

export const metadata: Metadata = { title: "Who has been notified?" };

export default async function ToldPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, report, office, user, may } = await lineFileOf(lineId);
  const waiting = waitingReplies(file);
  const drafts = file.notices.filter((notice) => notice.state === "draft");
  const unsent = listOutgoing(db(), lineId).filter((message) => message.state !== "sent");
  const write = may("work-the-file") ? (
    <>
      <ButtonLink href={`/lines/${lineId}/notices/facts`}>What letters rest on</ButtonLink>
      <ButtonLink href={`/lines/${lineId}/notices/write`} main>
        Write letters
      </ButtonLink>
    </>
  ) : null;
  return (
    <>
      <QuestionHead lineId={lineId} question="notices" />
      {waiting.length === 0 ? null : (
        <Section
          title="Replies to deal with"
          id="replies"
          note="Whatever comes back waits here until somebody has dealt with it: called back, answered, changed the file, or seen that there is nothing to do."
        >
          <WaitingReplies
            lineId={lineId}
            file={file}
            replies={waiting}
            today={report.today}
            work={mayDo(user.role, "work-the-file")}
          />
        </Section>
      )}
      {drafts.length === 0 || office === null ? null : (
        <div className="screen-only">
          <Section
            title="Drafts"
            id="drafts"
            note="Read each one, print or send them, then record how they went. What is recorded as sent is frozen, word for word."
          >
            <DraftBatch
              lineId={lineId}
              file={file}
              drafts={drafts}
              report={report}
              office={office}
            />
          </Section>
        </div>
      )}
      {unsent.length === 0 ? null : (
        <Section
          title="In the outbox"
          id="outbox"
          note="E-mail leaves by itself and is tried again when a server is busy. What was refused for good stays here; send it another way."
        >
          <OutboxList messages={unsent} />
        </Section>
      )}
      <Section
        title="To go after"
        id="chase"
        note="What came back, what is overdue, what nothing shows to have arrived."
      >
        <ChaseTable lineId={lineId} file={file} today={report.today} />
      </Section>
      <Section title="Who was told what" actions={write}>
        {file.notices.length === 0 ? (
          <Empty
            title="Nobody was written to yet."
            example="Shared-line finding, to all owners and the owner of the crossed lot, reply by December 1"
          >
            <p>
              Start with the shared-line finding: what was seen, what is not known, and no blame.
              The letters are made from this file; you choose who gets one.
            </p>
          </Empty>
        ) : (
          <ToldTable lineId={lineId} file={file} report={report} />
        )}
      </Section>
      <Section
        title="Who has agreed"
        id="consents"
        note="Six consents, each on its own: somebody who lets you in has not agreed to pay."
        actions={
          <>
            <ButtonLink href={`/lines/${lineId}/notices/refusal`}>If somebody says no</ButtonLink>
            <ButtonLink href={`/lines/${lineId}/notices/consents`}>
              Record and read consents
            </ButtonLink>
          </>
        }
      >
        <ConsentTable lineId={lineId} file={file} report={report} />
      </Section>
    </>
  );
}
