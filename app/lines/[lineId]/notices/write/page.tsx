import type { Metadata } from "next";
import Link from "next/link";
import { PageHead } from "#app/_components/page-head.tsx";
import { Section } from "#app/_components/section.tsx";
import type { HoldStop } from "#lib/domain/facts/hold.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { lineFileOf } from "../../file.ts";
import { HoldBoxes } from "../../holds.tsx";
import { counted } from "../../names.ts";
import { LETTER_PURPOSES, LETTER_WORDS } from "../../terms.ts";
import { RecipientForm } from "./recipient-form.tsx";

export const metadata: Metadata = { title: "Write letters" };

/** What may be held of a letter before it goes. */
const STOPPED_BY: Partial<Record<LetterKind, readonly HoldStop[]>> = {
  "share-demand": ["demand"],
  "drain-pause": ["pause"],
  "test-visit": ["test-visit"],
};

export default async function WritePage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ lineId: string }>;
  readonly searchParams: Promise<{ kind?: string | string[] }>;
}) {
  const { lineId } = await params;
  const { file, report } = await lineFileOf(lineId);
  const asked = (await searchParams).kind;
  const kind = LETTER_KINDS.find((each) => each === asked) ?? null;
  return (
    <>
      <PageHead
        asked={kind === null ? "Which letter?" : LETTER_WORDS[kind]}
        answer={kind === null ? "Twelve letters, all made from this file." : LETTER_PURPOSES[kind]}
      >
        <p>
          <Link
            href={kind === null ? `/lines/${lineId}/notices` : `/lines/${lineId}/notices/write`}
          >
            {kind === null ? "Back to who has been told" : "Another kind of letter"}
          </Link>
        </p>
      </PageHead>
      {kind === null ? (
        <ul className="plain-list stack">
          {LETTER_KINDS.map((each) => (
            <li key={each}>
              <Link href={`/lines/${lineId}/notices/write?kind=${each}`} className="strong">
                {LETTER_WORDS[each]}
              </Link>{" "}
              <span className="muted">
                {counted(recipientsOf(file, report, each).length, "recipient")} proposed
              </span>
              <br />
              {LETTER_PURPOSES[each]}
            </li>
          ))}
        </ul>
      ) : (
        <>
          <HoldBoxes lineId={lineId} holds={report.holds} stops={STOPPED_BY[kind] ?? []} />
          <Section
            title="Who gets it"
            note="Proposed from who is on the line. Tick or clear; a draft is written to each, and nothing is sent yet."
          >
            <RecipientForm lineId={lineId} file={file} report={report} kind={kind} />
          </Section>
        </>
      )}
    </>
  );
}
