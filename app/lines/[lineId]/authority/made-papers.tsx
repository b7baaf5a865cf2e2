import Link from "next/link";
import { Heads } from "#app/_components/heads.tsx";
import { db } from "#app/db.ts";
import { listJobs } from "#db/queries/job.ts";
import type { JobKind } from "#lib/domain/facts/job.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { officeZone } from "#lib/operations/office-day.ts";

/** The papers of one kind that were made of this line, newest first; nothing before the first. */
export function MadePapers({
  lineId,
  today,
  kind,
  caption = "Made before, newest first",
}: {
  readonly lineId: string;
  readonly today: string;
  readonly kind: JobKind;
  readonly caption?: string;
}) {
  const zone = officeZone(db());
  const made = listJobs(db(), lineId).filter((job) => job.kind === kind);
  if (made.length === 0) return null;
  return (
    <table className="plain">
      <caption>{caption}</caption>
      <Heads of={["Created", "By", "Document"]} />
      <tbody>
        {made.map((job) => (
          <tr key={job.id}>
            <th scope="row">{formatDay(dayAt(job.createdAt, zone), today)}</th>
            <td>{job.by}</td>
            <td>
              {job.uploadId === null ? (
                <span className="muted">{job.state}</span>
              ) : (
                <Link href={`/lines/${lineId}/notices/paper/${job.uploadId}`}>Open it</Link>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
