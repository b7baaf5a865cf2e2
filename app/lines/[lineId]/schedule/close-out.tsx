import Link from "next/link";
import { ButtonLink } from "#app/_components/button.tsx";
import { Section } from "#app/_components/section.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { permitStateOf } from "#lib/domain/permit/steps.ts";
import { CloseForm } from "../close-form.tsx";
import { counted } from "../names.ts";

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
  if (!isFinal || line.closedOn !== null) return null;
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
    </Section>
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
