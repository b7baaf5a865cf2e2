import { JobButton } from "#app/_components/job-button.client.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { counted } from "../../names.ts";
import { printAccountsAction } from "./actions.ts";

/** The PDF of the invoices that were created last, as it is made and once it is there. */
export function LatestInvoices({
  lineId,
  file,
  work,
}: {
  readonly lineId: string;
  readonly file: LineFile;
  readonly work: boolean;
}) {
  const invoices = new Set(
    file.ledger.filter(({ kind }) => kind === "invoice").map(({ id }) => id),
  );
  const job = listJobs(db(), lineId).find(
    ({ kind, subjectIds }) =>
      kind === "accounts" && subjectIds.length > 0 && subjectIds.every((id) => invoices.has(id)),
  );
  if (!work || job === undefined) return null;
  return (
    <p className="cluster screen-only">
      <span>{counted(job.subjectIds.length, "invoice")}, ready to mail in window envelopes:</span>
      <JobButton
        key={job.id}
        start={printAccountsAction.bind(null, lineId, job.subjectIds)}
        working="Creating the invoices"
        paper={`/lines/${lineId}/notices/paper`}
        running={job.id}
      >
        Print again
      </JobButton>
    </p>
  );
}
