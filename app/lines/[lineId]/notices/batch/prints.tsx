import { JobStatus } from "#app/_components/job-button.client.tsx";
import { Section } from "#app/_components/section.tsx";
import type { Job } from "#lib/domain/facts/job.ts";
import { readEnv } from "#lib/env.ts";
import { hasMailing } from "#lib/storage/mailings.ts";
import { counted } from "../../names.ts";

/** Prints that are being made, can be opened, or failed; nothing where there is none. */
export function Prints({
  lineId,
  jobs,
  mayOpen,
}: {
  readonly lineId: string;
  readonly jobs: readonly Job[];
  readonly mayOpen: boolean;
}) {
  const { dataFolder } = readEnv();
  const shown = jobs.filter((job, at) => {
    if (job.state === "done") return hasMailing(dataFolder, job.id);
    return job.state !== "failed" || at === 0;
  });
  if (shown.length === 0) return null;
  return (
    <Section
      title="Prints"
      id="prints"
      note="In mailing order, with every letter on its own sheets for printing on both sides. Kept for a week, outside of backups, because of the codes on them."
    >
      <ul className="plain-list stack-tight">
        {shown.map((job) => (
          <li key={job.id}>
            {counted(job.subjectIds.length, "letter")}, requested by {job.by}:{" "}
            {job.state === "done" && mayOpen ? (
              <a
                href={`/lines/${lineId}/notices/batch/print/${encodeURIComponent(job.id)}`}
                target="_blank"
                rel="noreferrer"
              >
                Open the print
              </a>
            ) : null}
            {job.state === "done" && !mayOpen ? "made" : null}
            {job.state === "failed" ? <span className="mend">{job.problem}</span> : null}
            {job.state === "waiting" || job.state === "running" ? (
              <JobStatus jobId={job.id} />
            ) : null}
            {job.state === "done" && job.problem !== "" ? (
              <span className="muted"> {job.problem}</span>
            ) : null}
          </li>
        ))}
      </ul>
    </Section>
  );
}
