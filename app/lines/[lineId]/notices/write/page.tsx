import type { Metadata } from "next";
import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import { type LetterDue, lettersDue } from "#lib/domain/desk/letters-due.ts";
import { LETTER_KINDS, LETTERS } from "#lib/domain/facts/letter-kind.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { counted, lowered, partyName } from "../../names.ts";
import { LETTER_WORDS } from "../../terms.ts";
import { RecipientForm } from "./recipient-form.tsx";
import styles from "./write.module.css";

export const metadata: Metadata = { title: "Write letters" };

export default async function WritePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ kind?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report, office } = await lineFileOf(lineId);
  const asked = (await searchParams).kind;
  const kind = LETTER_KINDS.find((each) => each === asked) ?? null;
  const due = lettersDue(file, report);
  if (kind === null) return <ChooseKind lineId={lineId} file={file} report={report} due={due} />;
  return (
    <>
      <PageHead asked={LETTER_WORDS[kind]} answer={LETTERS[kind].purpose}>
        <p>
          <Link href={`/lines/${lineId}/notices/write`}>Choose another letter</Link>
        </p>
      </PageHead>
      <HoldBoxes lineId={lineId} holds={report.holds} stops={LETTERS[kind].stops ?? []} />
      <Section
        title="Recipients"
        note="Suggested from the file. Select or clear; a draft is created for each. Nothing is sent yet."
      >
        <RecipientForm lineId={lineId} file={file} report={report} office={office} kind={kind} />
      </Section>
    </>
  );
}

/** What is due now, first and with its reason; every other letter below. */
function ChooseKind({
  lineId,
  file,
  report,
  due,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly report: Report;
  readonly due: readonly LetterDue[];
}) {
  const others = LETTER_KINDS.filter((kind) => due.every((each) => each.kind !== kind));
  return (
    <>
      <PageHead asked="Write letters" answer={dueWords(due)} />
      {due.length === 0 ? null : (
        <Section title="Due now" id="due">
          <ul className={styles["due"]}>
            {due.map(({ kind, because, recipients }, at) => (
              <li key={kind}>
                <div>
                  <h3>{LETTER_WORDS[kind]}</h3>
                  <p>{because}.</p>
                  <p className="muted">
                    Not sent to{" "}
                    {sayList([
                      ...new Set(recipients.map(({ partyId }) => partyName(file, partyId))),
                    ])}
                  </p>
                </div>
                <ButtonLink href={`/lines/${lineId}/notices/write?kind=${kind}`} main={at === 0}>
                  Write {counted(recipients.length, "letter")}
                  <span className="hidden">: {LETTER_WORDS[kind]}</span>
                </ButtonLink>
              </li>
            ))}
          </ul>
        </Section>
      )}
      <Section
        title={due.length === 0 ? "All letters" : "Other letters"}
        {...(due.length === 0 ? {} : { foldedOnPhone: counted(others.length, "kind") })}
      >
        <ul className={styles["kinds"]}>
          {others.map((kind) => (
            <li key={kind}>
              <Link href={`/lines/${lineId}/notices/write?kind=${kind}`} className="strong">
                {LETTER_WORDS[kind]}
              </Link>
              <br />
              {LETTERS[kind].purpose}{" "}
              <span className="muted">
                {capital(counted(recipientsOf(file, report, kind).length, "suggested recipient"))}.
              </span>
            </li>
          ))}
        </ul>
      </Section>
    </>
  );
}

function dueWords(due: readonly LetterDue[]): string {
  const [first] = due;
  if (first === undefined) return "No letter is due now";
  const more = due.length === 1 ? "" : `, then ${counted(due.length - 1, "other")}`;
  return `Due now: ${lowered(LETTER_WORDS[first.kind])} to ${counted(first.recipients.length, "recipient")}${more}`;
}
