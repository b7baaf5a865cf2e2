import { JobButton } from "#app/_components/job-button.client.tsx";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { printLettersAction } from "../../actions.ts";

/** The letter as a PDF: the stored one where it was made already, else made now. */
export function PrintThis({
  lineId,
  notice,
}: {
  readonly lineId: string;
  readonly notice: Notice;
}) {
  const paper = `/lines/${lineId}/notices/paper`;
  if (notice.uploadId !== null) return <a href={`${paper}/${notice.uploadId}`}>Open the PDF</a>;
  return (
    <JobButton
      start={printLettersAction.bind(null, lineId, [notice.id])}
      working="Making the PDF"
      paper={paper}
    >
      Make the PDF
    </JobButton>
  );
}
