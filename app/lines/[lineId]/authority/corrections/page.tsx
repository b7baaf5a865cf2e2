import type { Metadata } from "next";
import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Permit } from "#lib/domain/facts/permit.ts";
import {
  type CorrectionRound,
  type CorrectionState,
  correctionName,
  resubmissionBar,
  roundSentence,
  roundsOf,
} from "#lib/domain/permit/corrections.ts";
import { permitName } from "#lib/domain/permit/say.ts";
import { capital } from "#lib/domain/say/capital.ts";
import { lineFileOf } from "../../file.ts";
import { LineGrid } from "../../line-grid.tsx";
import { QuestionHead } from "../../question-head.tsx";
import { printCorrectionsAction } from "../actions.ts";
import { correctionColumns, roundChoices } from "./columns.ts";

export const metadata: Metadata = { title: "Corrections" };

/** What the reviewer asked for, comment by comment and round by round, and what is answered. */
export default async function CorrectionsPage({
  params,
}: {
  readonly params: Promise<{ lineId: string }>;
}) {
  const { lineId } = await params;
  const { file, may } = await lineFileOf(lineId);
  const rounds = file.permits.filter((permit) => roundsOf(file, permit).length > 0);
  const [newest] = roundChoices(file);
  return (
    <>
      <QuestionHead lineId={lineId} question="authority" />
      <Section
        title="Comments and answers"
        id="comments"
        note="One row for each comment of the corrections letter. The permit is resubmitted once each is answered, or has a reason why it is not changed."
      >
        {newest === undefined ? (
          <Empty title="No corrections required.">
            <p>
              When the authority asks for corrections, record that step under{" "}
              <Link href={`/lines/${lineId}/authority/permits`}>Permits and inspections.</Link>
            </p>
          </Empty>
        ) : (
          <LineGrid
            lineId={lineId}
            table="corrections"
            columns={correctionColumns(file)}
            blank={{ stepId: newest.value }}
            addWord="comment"
            label="Comments of the corrections letters"
            emptyWords="No comments entered. Paste them from the corrections letter, one a row."
          />
        )}
      </Section>
      {rounds.map((permit) => (
        <Section key={permit.id} title={permitName(permit)}>
          <Rounds lineId={lineId} file={file} permit={permit} work={may("work-the-file")} />
        </Section>
      ))}
    </>
  );
}

const STATE_WORDS: Record<CorrectionState, string> = {
  open: "not answered",
  answered: "answered",
  "not-changed": "not changed, with a reason",
  resubmitted: "resubmitted, not accepted yet",
  accepted: "accepted",
  "asked-again": "asked again in a later round",
};

function Rounds({
  lineId,
  file,
  permit,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly permit: Permit;
  readonly work: boolean;
}) {
  const bar = resubmissionBar(file, permit);
  return (
    <div className="stack">
      {bar === null ? null : <p>{bar}.</p>}
      {roundsOf(file, permit)
        .toReversed()
        .map((round) => (
          <article key={round.step.id} className="stack-tight">
            <h3>{roundSentence(round)}</h3>
            {round.items.length === 0 ? null : <Standings round={round} />}
            {work && round.items.length > 0 ? (
              <div className="screen-only">
                <JobButton
                  start={printCorrectionsAction.bind(null, lineId, [round.step.id])}
                  working="Making the answer sheet"
                  paper={`/lines/${lineId}/notices/paper`}
                >
                  Answer sheet as PDF
                </JobButton>
              </div>
            ) : null}
          </article>
        ))}
    </div>
  );
}

/** How many comments are how far, those that wait for somebody by name. */
function Standings({ round }: { readonly round: CorrectionRound }) {
  const states = [...new Set(round.items.map(({ state }) => state))];
  return (
    <ul className="plain-list">
      {states.map((state) => (
        <li key={state}>
          {capital(STATE_WORDS[state])}:{" "}
          {round.items
            .filter((item) => item.state === state)
            .map(({ correction }) => correctionName(correction))
            .join(", ")}
        </li>
      ))}
    </ul>
  );
}
