import Link from "next/link";
import type { ReactNode } from "react";
import { ActionForm } from "#app/_components/action-form.client.tsx";
import { SubmitButton } from "#app/_components/button.tsx";
import { Choice } from "#app/_components/choice.tsx";
import { Field } from "#app/_components/field.tsx";
import { SeenField } from "#app/_components/seen-field.client.tsx";
import { beginWithReplier, type RepliedTo, repliedTo } from "#lib/domain/desk/replied-to.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Reply, ReplyKind } from "#lib/domain/facts/notice.ts";
import { DEALT_WORDS, REPLY_VERBS } from "#lib/domain/facts/notice-words.ts";
import { formatPhone } from "#lib/domain/party/phone.ts";
import { isDealtWith } from "#lib/domain/party/reply.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { seenOf } from "#lib/operations/seen.ts";
import { propertyName } from "../names.ts";
import { LETTER_WORDS, optionsOf } from "../terms.ts";
import { aboutWords } from "./about-words.ts";
import { dealWithReplyAction, reopenReplyAction } from "./actions.ts";
import { PaperLink } from "./paper-link.tsx";
import styles from "./reply-card.module.css";

interface CardProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly reply: Reply;
  readonly today: string;
  readonly work: boolean;
}

/** Replies to whatever they answer, in the order given, each with the form that deals with it. */
export function ReplyCards({
  replies,
  ...part
}: Omit<CardProps, "reply"> & { readonly replies: readonly Reply[] }) {
  return (
    <div className={styles["cards"]}>
      {replies.map((reply) => {
        const to = repliedTo(part.file, reply);
        return (
          <ReplyCard key={reply.id} {...part} reply={reply} to={to} open={replies.length === 1} />
        );
      })}
    </div>
  );
}

/** One reply as it came, and what was done about it. */
export function ReplyCard({
  to = null,
  open = true,
  ...part
}: CardProps & {
  /** The form that deals with it stands open. */
  readonly open?: boolean;
  /** What it answers, where the page is not about that letter alone. */
  readonly to?: RepliedTo | null;
}) {
  const { lineId, file, reply, today, work } = part;
  const { receivedOn, kind, suitsOn, words, takenBy, uploadId } = reply;
  const verb = REPLY_VERBS[kind];
  const said = to === null ? capital(verb) : `${beginWithReplier(file, to)} ${verb}`;
  const title = `${said}, ${formatDay(receivedOn, today)}`;
  return (
    <article className="stack-tight">
      <h3>{title}</h3>
      {to === null ? null : (
        <p className="muted">
          {to.notice === null ? (
            <>
              To <Link href={`/lines/${lineId}/cost/money#replies`}>{to.what}</Link>
              {to.propertyId === null ? "" : `, ${propertyName(file, to.propertyId)}`}
            </>
          ) : (
            <>
              To the letter{" "}
              <Link href={`/lines/${lineId}/notices/letter/${to.notice.id}`}>
                {LETTER_WORDS[to.notice.kind]}, {aboutWords(file, to.notice)}
              </Link>
            </>
          )}
          {to.partyIds.map((partyId) => (
            <Reach key={partyId} file={file} partyId={partyId} named={to.name === null} />
          ))}
        </p>
      )}
      {words === "" ? null : <p className="prewrap">“{words}”</p>}
      {suitsOn === null ? null : <p>A day that works for them: {formatDay(suitsOn, today)}.</p>}
      <p className="muted">Recorded by {takenBy}.</p>
      <PaperLink lineId={lineId} file={file} uploadId={uploadId} words="Document" />
      {isDealtWith(reply) ? (
        <DealtWith lineId={lineId} reply={reply} today={today} work={work} />
      ) : (
        <Waiting {...{ lineId, reply, title, today, work, open }} />
      )}
    </article>
  );
}

function Reach({
  file,
  partyId,
  named,
}: {
  readonly file: LineFile;
  readonly partyId: string;
  /** Whether the name stands beside it: where it is one of several. */
  readonly named: boolean;
}) {
  const party = file.parties.find(({ id }) => id === partyId);
  if (party === undefined || (party.phone === "" && party.email === "")) return null;
  return (
    <>
      . Contact: {named ? `${party.name}, ` : null}
      {party.phone === "" ? null : (
        <a className="nowrap" href={`tel:${party.phone.replaceAll(/[^+\d]/g, "")}`}>
          {formatPhone(party.phone)}
        </a>
      )}
      {party.phone === "" || party.email === "" ? null : ", "}
      {party.email === "" ? null : <a href={`mailto:${party.email}`}>{party.email}</a>}
    </>
  );
}

type Part = Pick<CardProps, "lineId" | "reply" | "today" | "work">;

function DealtWith({ lineId, reply, today, work }: Part) {
  const { dealtHow, dealtOn, dealtBy, dealtWords } = reply;
  if (dealtHow === null || dealtOn === null) return null;
  return (
    <>
      <p>
        <span className="tag tag-done">{DEALT_WORDS[dealtHow]}</span> {dealtBy},{" "}
        {formatDay(dealtOn, today)}: {dealtWords}
      </p>
      {work ? (
        <details className="screen-only">
          <summary>Reopen this reply</summary>
          <ActionForm
            action={reopenReplyAction.bind(null, { lineId, replyId: reply.id })}
            label="Reopen the reply"
            className="stack-tight"
          >
            <Field label="Why" name="reason" required example="She calls it a misunderstanding" />
            <div>
              <SubmitButton quiet pendingWord="Reopening …">
                Reopen
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}

/** What a reply of its kind asks the office to do, with where to do it. */
function todo(lineId: string, { kind, noticeId }: Reply): ReactNode {
  const link = (href: string, words: string) => (
    <Link href={`/lines/${lineId}/${href}`}>{words}</Link>
  );
  const hints: Partial<Record<ReplyKind, ReactNode>> = {
    disagrees:
      noticeId === null ? null : (
        <>
          It counts as a refusal until someone has dealt with it:{" "}
          {link("notices/refusal", "what can proceed without them")}. If they do not change their
          mind, record the refusal under {link("notices/consents", "Consents")}.
        </>
      ),
    "books-a-test": (
      <>Plan it under {link("reconcile/test-day", "Dye test day")}, then notify them.</>
    ),
    "wants-another-day": (
      <>
        Change the day under {link("reconcile/test-day", "Dye test day")} or{" "}
        {link("schedule", "What happens next?")}, then notify them.
      </>
    ),
    "wants-paper":
      noticeId === null ? (
        <>Print {link("cost/money", "the invoice")} and mail it.</>
      ) : (
        <>Print {link(`notices/letter/${noticeId}`, "the letter")} and mail it.</>
      ),
    "offers-a-record": <>Get it, and enter it under {link("record", "What is on record?")}.</>,
  };
  return hints[kind] ?? null;
}

function Waiting({
  lineId,
  reply,
  title,
  today,
  work,
  open,
}: Part & { readonly title: string; readonly open: boolean }) {
  const hint = todo(lineId, reply);
  return (
    <>
      <p>
        <span className="tag strong">open</span> {hint ?? "No one has dealt with it yet."}
      </p>
      {work ? (
        <details className="screen-only" open={open}>
          <summary>Deal with it</summary>
          <ActionForm
            action={dealWithReplyAction.bind(null, { lineId, replyId: reply.id })}
            label={`Deal with this reply: ${title}`}
            className="stack-tight"
          >
            <SeenField value={seenOf(reply)} />
            <div className="form-grid">
              <Choice
                label="How you dealt with it"
                name="how"
                required
                options={[{ value: "", label: "select" }, ...optionsOf(DEALT_WORDS)]}
              />
              <Field
                label="Date"
                name="on"
                type="date"
                required
                min={reply.receivedOn}
                max={today}
                defaultValue={today}
              />
            </div>
            <Field
              label="What was said or done"
              name="words"
              rows={2}
              required
              example="Called her: she will bring the 1972 plan on Monday."
            />
            <div>
              <SubmitButton pendingWord="Recording …" quiet>
                Mark as dealt with
              </SubmitButton>
            </div>
          </ActionForm>
        </details>
      ) : null}
    </>
  );
}
