import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { JobButton } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { permitStateOf } from "#lib/domain/permit/steps.ts";
import { MadePapers } from "../authority/made-papers.tsx";
import { CloseForm } from "../close-form.tsx";
import { counted } from "../names.ts";
import { buildCloseOutAction } from "./actions.ts";

/** Once a permit is final: the last letters, and the file closed. */
export function CloseOut({
  file,
  today,
  may,
}: {
  readonly file: LineFile;
  readonly today: string;
  readonly may: boolean;
}) {
  const { line, permits } = file;
  const isFinal = permits.some((permit) => permitStateOf(file, permit) === "final");
  if (line.closedOn !== null) return <CloseOutFile file={file} today={today} may={may} />;
  if (!isFinal) return null;
  return (
    <Section
      title="Closeout"
      id="close"
      note="The last letter tells everyone what was done, what it cost and who maintains what from now on. Then close the file; it stays readable."
      actions={
        may ? (
          <ButtonLink href={`/lines/${line.id}/notices/write?kind=close-out`}>
            Write the closeout letters
          </ButtonLink>
        ) : null
      }
    >
      <p>
        {lettersWords(file)} <Link href={`/lines/${line.id}/notices`}>Who has been notified?</Link>
      </p>
      {may ? <CloseForm file={file} today={today} /> : null}
      <CloseOutPapers file={file} today={today} may={may} />
    </Section>
  );
}

/** Of a closed file: the one document and the one line file that settle the next argument. */
function CloseOutFile({ file, today, may }: Parameters<typeof CloseOut>[0]) {
  return (
    <Section
      title="Closeout file"
      id="close"
      note="One PDF with an index: as-built, record against camera, split and ledger, consents, letters with proof, history and papers. For the office, not for handing out."
    >
      <CloseOutPapers file={file} today={today} may={may} />
    </Section>
  );
}

function CloseOutPapers({ file, today, may }: Parameters<typeof CloseOut>[0]) {
  const lineId = file.line.id;
  return (
    <div className="stack screen-only">
      <p className="cluster">
        {may ? (
          <JobButton
            start={buildCloseOutAction.bind(null, lineId, [])}
            working="Making the closeout file"
            paper={`/lines/${lineId}/notices/paper`}
          >
            Make the closeout file
          </JobButton>
        ) : null}
        <a href={`/lines/${lineId}/export`}>Line file (JSON)</a>
      </p>
      <MadePapers lineId={lineId} today={today} kind="close-out" />
    </div>
  );
}

function lettersWords({ notices }: LineFile): string {
  const letters = notices.filter(({ kind }) => kind === "close-out");
  const drafts = letters.filter(({ state }) => state === "draft").length;
  const sent = letters.length - drafts;
  if (letters.length === 0) return "No closeout letters yet.";
  const parts = [
    sent === 0 ? "" : `${counted(sent, "closeout letter")} sent`,
    drafts === 0 ? "" : `${counted(drafts, "draft")} not sent yet`,
  ].filter((part) => part !== "");
  return `${parts.join(", ")}.`;
}
